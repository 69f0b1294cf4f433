import type { GridColumn } from "./grid-column.ts";

export interface Sorting {
  readonly columnId: string;
  readonly isDown: boolean;
}

/** What each column must hold for a row to be shown, by column. */
export type Sifts = Readonly<Record<string, string>>;

/**
 * Places of the rows that are shown, in the order shown. Rows that are equal keep the order of the list; empty cells come
 * last either way. Example: amounts 3, 1, 2 sorted upwards give [1, 2, 0].
 */
export function orderOf<Row>(
  rows: readonly Row[],
  columns: readonly GridColumn<Row>[],
  sorting: Sorting | null,
  sifts: Sifts,
): number[] {
  const tests = columns.flatMap((column) => {
    const test = siftOf(column, sifts[column.id] ?? "");
    return test ? [test] : [];
  });
  const places = [...rows.keys()].filter((place) => {
    const row = rows[place];
    return row !== undefined && tests.every((test) => test(row));
  });
  const column = columns.find(({ id }) => id === sorting?.columnId);
  if (!column || !sorting) return places;
  const keys = rows.map((row) => sortKey(column, row));
  return places.toSorted((a, b) => compareKeys(keys[a] ?? null, keys[b] ?? null, sorting.isDown) || a - b);
}

/**
 * The order after an edit: rows stay where they are until somebody sorts again, new ones come last. `keyOf` tells rows apart.
 */
export function keptOrder<Row>(
  order: readonly number[],
  before: readonly Row[],
  after: readonly Row[],
  keyOf: (row: Row) => string,
): number[] {
  if (isInPlace(before, after, keyOf)) return [...order];
  const placesByKey = new Map<string, number[]>();
  for (const [place, row] of after.entries()) {
    const key = keyOf(row);
    const known = placesByKey.get(key);
    if (known) known.push(place);
    else placesByKey.set(key, [place]);
  }
  const known = new Set(before.map(keyOf));
  const kept = order.flatMap((place) => {
    const row = before[place];
    const next = row === undefined ? undefined : placesByKey.get(keyOf(row))?.shift();
    return next === undefined ? [] : [next];
  });
  const fresh = [...placesByKey.entries()].flatMap(([key, places]) => (known.has(key) ? [] : places));
  return [...kept, ...fresh.toSorted((a, b) => a - b)];
}

/** True where rows were edited or renamed but none was moved, added or removed. */
function isInPlace<Row>(before: readonly Row[], after: readonly Row[], keyOf: (row: Row) => string): boolean {
  if (before.length !== after.length) return false;
  const edited = before.flatMap((row, place) => (row === after[place] ? [] : [place]));
  const keysAfter = new Set(edited.flatMap((place) => after.slice(place, place + 1).map(keyOf)));
  return edited.every((place) => {
    const [old, now] = [before[place], after[place]];
    if (old === undefined || now === undefined) return false;
    return keyOf(old) === keyOf(now) || !keysAfter.has(keyOf(old));
  });
}

type SortKey = number | string | null;

function sortKey<Row>(column: GridColumn<Row>, row: Row): SortKey {
  if (column.amount) return column.amount(row);
  const text = column.text(row);
  return text === "" ? null : text;
}

const collator = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

function compareKeys(a: SortKey, b: SortKey, isDown: boolean): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  const upwards =
    typeof a === "number" && typeof b === "number" ? a - b : collator.compare(String(a), String(b));
  return isDown ? -upwards : upwards;
}

/** The test of one column. Numbers understand "> 5", "< 5", "= 5" and "5..10"; everything else is looked for in the text. */
function siftOf<Row>(column: GridColumn<Row>, sift: string): ((row: Row) => boolean) | null {
  const wanted = sift.trim().toLowerCase();
  if (wanted === "") return null;
  const amount = column.amount;
  const range = amount ? rangeOf(wanted) : null;
  if (amount && range) {
    return (row) => {
      const value = amount(row);
      return value !== null && range(value);
    };
  }
  return (row) => column.text(row).toLowerCase().includes(wanted);
}

function rangeOf(wanted: string): ((value: number) => boolean) | null {
  const span = /^(-?[\d.]+)\s*\.\.\s*(-?[\d.]+)$/.exec(wanted);
  if (span) return (value) => value >= Number(span[1]) && value <= Number(span[2]);
  const [, sign, digits] = /^(<=|>=|<|>|=)\s*(-?[\d.]+)$/.exec(wanted) ?? [];
  const limit = Number(digits);
  if (sign === undefined || Number.isNaN(limit)) return null;
  const tests: Readonly<Record<string, (value: number) => boolean>> = {
    "<": (value) => value < limit,
    "<=": (value) => value <= limit,
    ">": (value) => value > limit,
    ">=": (value) => value >= limit,
    "=": (value) => value === limit,
  };
  return tests[sign] ?? null;
}
