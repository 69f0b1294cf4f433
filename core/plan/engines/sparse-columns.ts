import type { LinearProgram } from "../linear-program.ts";

/** A row's share in a column. */
export interface Entry {
  readonly row: number;
  readonly value: number;
}

/** Rows of a linear program in the making: lower and upper limits. */
export class RowList {
  readonly lower: number[] = [];
  readonly upper: number[] = [];

  /** Adds a row and returns its index. */
  add(lower: number, upper: number): number {
    this.lower.push(lower);
    return this.upper.push(upper) - 1;
  }
}

/** Columns of a linear program in the making, compressed; only ever added to. */
export class ColumnList {
  readonly cost: number[] = [];
  private readonly upper: number[] = [];
  private readonly start: number[] = [0];
  private readonly index: number[] = [];
  private readonly value: number[] = [];

  /** Adds a column from 0 to `upper` and returns its index. Entries of value 0 are left out. */
  add(cost: number, upper: number, entries: readonly Entry[]): number {
    for (const entry of entries) {
      if (entry.value === 0) continue;
      this.index.push(entry.row);
      this.value.push(entry.value);
    }
    this.start.push(this.index.length);
    this.upper.push(upper);
    return this.cost.push(cost) - 1;
  }

  /** A list with the same columns, to add to. */
  copy(): ColumnList {
    const copy = new ColumnList();
    for (const cost of this.cost) copy.cost.push(cost);
    for (const upper of this.upper) copy.upper.push(upper);
    for (const start of this.start.slice(1)) copy.start.push(start);
    for (const row of this.index) copy.index.push(row);
    for (const value of this.value) copy.value.push(value);
    return copy;
  }

  /** The program of all columns so far and these rows. */
  program(rows: RowList): LinearProgram {
    const cols = this.cost.length;
    return {
      cols,
      rows: rows.lower.length,
      cost: Float64Array.from(this.cost),
      colLower: new Float64Array(cols),
      colUpper: Float64Array.from(this.upper),
      rowLower: Float64Array.from(rows.lower),
      rowUpper: Float64Array.from(rows.upper),
      start: Int32Array.from(this.start),
      index: Int32Array.from(this.index),
      value: Float64Array.from(this.value),
    };
  }
}

/**
 * A chain of rows, one for each bucket: use + left over - left over before = supply. What is left over goes on to later
 * buckets, so together they limit what is used up to each point. Returns the first row.
 */
export function addChain(rows: RowList, columns: ColumnList, supply: Float64Array): number {
  const first = rows.lower.length;
  for (const amount of supply) rows.add(amount, amount);
  for (let at = 0; at < supply.length; at++) {
    const goesOn = at + 1 < supply.length ? [{ row: first + at + 1, value: -1 }] : [];
    columns.add(0, Infinity, [{ row: first + at, value: 1 }, ...goesOn]);
  }
  return first;
}
