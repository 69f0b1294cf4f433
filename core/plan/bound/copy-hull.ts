/** One quantity of a build as a function of its copies, and the largest chord error that needs no further vertex. */
interface HullTable {
  readonly of: (copies: number) => number;
  readonly tolerance: number;
}

/** Copies that stand for all others: vertex copies, and by table the values there, lowered where chords lie too high. */
interface CopyHull {
  readonly copies: readonly number[];
  /** [table][vertex] */
  readonly values: readonly Float64Array[];
}

/**
 * Chooses few copies so that every number of copies in between is at least as dear, in every table, as the mixture of its
 * two neighbours: chords of a convex table lie above it, so vertices are added until they lie hardly above, and each vertex
 * is lowered by the largest error left beside it. Thus the mixture never over-counts. Tables may have any shape.
 * Example: 1 to 4 copies at 1, 2, 3.1, 4 and tolerance 1: vertices 1 and 4, nothing to lower (chords lie below or on it).
 */
export function copyHull(
  fewest: number,
  most: number,
  wanted: readonly number[],
  tables: readonly HullTable[],
): CopyHull {
  const inside = wanted.filter((copies) => copies > fewest && copies < most);
  const seeds = [...new Set([fewest, ...inside, most])].toSorted((a, b) => a - b);
  const copies: number[] = [fewest];
  for (let at = 1; at < seeds.length; at++) refine(seeds[at - 1]!, seeds[at]!, tables, copies);
  const values = tables.map((table) => lowered(copies, table));
  return { copies, values };
}

/** Appends the vertices after `from` up to `to`. */
function refine(from: number, to: number, tables: readonly HullTable[], copies: number[]): void {
  const worst = worstCopies(from, to, tables);
  if (worst < 0) {
    copies.push(to);
    return;
  }
  refine(from, worst, tables, copies);
  refine(worst, to, tables, copies);
}

/** The copies where a chord errs most against its tolerance, or -1 where all are within it. */
function worstCopies(from: number, to: number, tables: readonly HullTable[]): number {
  let worst = -1;
  let most = 1;
  for (const table of tables) {
    const [low, high] = [table.of(from), table.of(to)];
    for (let copies = from + 1; copies < to; copies++) {
      const ratio = (chord(from, low, to, high, copies) - table.of(copies)) / table.tolerance;
      if (ratio > most) [most, worst] = [ratio, copies];
    }
  }
  return worst;
}

function lowered(copies: readonly number[], table: HullTable): Float64Array {
  const values = Float64Array.from(copies, table.of);
  const drop = new Float64Array(copies.length);
  for (let at = 1; at < copies.length; at++) {
    const [from, to] = [copies[at - 1]!, copies[at]!];
    let error = 0;
    for (let between = from + 1; between < to; between++) {
      error = Math.max(error, chord(from, values[at - 1]!, to, values[at]!, between) - table.of(between));
    }
    drop[at - 1] = Math.max(drop[at - 1]!, error);
    drop[at] = error;
  }
  return values.map((value, at) => value - drop[at]!);
}

function chord(from: number, low: number, to: number, high: number, copies: number): number {
  return low + ((high - low) * (copies - from)) / (to - from);
}
