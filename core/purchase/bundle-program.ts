import { ColumnList, type Entry, RowList } from "../plan/engines/sparse-columns.ts";
import type { LinearProgram, LpEngine } from "../plan/linear-program.ts";

/** Which candidates a bundle may hold and what it is guessed to be worth: single values and what each pair adds to them. */
export interface BundleGuess {
  readonly outlays: readonly number[];
  readonly values: readonly number[];
  /** by candidate indices a < b: value of both together less the sum of their own values */
  readonly pairs: readonly { readonly a: number; readonly b: number; readonly more: number }[];
  /** pairs of indices that exclude each other */
  readonly excluded: readonly (readonly [number, number])[];
  /** bundles that are known already and not asked for again, by ascending indices */
  readonly known: readonly (readonly number[])[];
  readonly budget: number | null;
}

/**
 * The bundle that the guess says is worth most, by a small integer program: maximise sum of v_i x_i + sum of w_ij y_ij with
 * y_ij = x_i x_j by its three linear rows (McCormick 1976, from memory), outlay within the budget, and one row against each known
 * bundle. Null: no further bundle is allowed. Example: values 5, 4, 3, outlays 3, 2, 2, budget 4: the second and third.
 */
export function guessBundle(
  guess: BundleGuess,
  engine: LpEngine,
): { readonly members: number[]; readonly value: number } | null {
  const answer = engine.solve(bundleProgram(guess), SECONDS);
  if (answer.status !== "optimal") return null;
  const members = guess.values.flatMap((_, index) => ((answer.values[index] ?? 0) > 0.5 ? [index] : []));
  return { members, value: -answer.objective };
}

const SECONDS = 10;

function bundleProgram(guess: BundleGuess): LinearProgram {
  const rows = new RowList();
  const entries: Entry[][] = [...guess.values, ...guess.pairs].map(() => []);
  const addRow = (upper: number, shares: readonly (readonly [column: number, value: number])[]): void => {
    const row = rows.add(Number.NEGATIVE_INFINITY, upper);
    for (const [column, value] of shares) entries[column]?.push({ row, value });
  };
  if (guess.budget !== null) {
    addRow(
      guess.budget,
      guess.outlays.map((outlay, index) => [index, outlay] as const),
    );
  }
  for (const [a, b] of guess.excluded) {
    addRow(1, [
      [a, 1],
      [b, 1],
    ]);
  }
  addPairRows(guess, addRow);
  // At least one candidate must differ from each known bundle.
  for (const members of guess.known) {
    addRow(
      members.length - 1,
      guess.values.map((_, index) => [index, members.includes(index) ? 1 : -1] as const),
    );
  }
  const columns = new ColumnList();
  const worth = [...guess.values, ...guess.pairs.map(({ more }) => more)];
  for (const [column, value] of worth.entries()) columns.add(-value, 1, entries[column] ?? []);
  return { ...columns.program(rows), integer: new Uint8Array(worth.length).fill(1) };
}

/** y <= x_a, y <= x_b, y >= x_a + x_b - 1. */
function addPairRows(
  { values, pairs }: BundleGuess,
  addRow: (upper: number, shares: readonly (readonly [number, number])[]) => void,
): void {
  for (const [place, { a, b }] of pairs.entries()) {
    const y = values.length + place;
    addRow(0, [
      [a, -1],
      [y, 1],
    ]);
    addRow(0, [
      [b, -1],
      [y, 1],
    ]);
    addRow(1, [
      [a, 1],
      [b, 1],
      [y, -1],
    ]);
  }
}
