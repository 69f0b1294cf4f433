/**
 * Least of a changeover table (`MachineClass.changeoverMin` or `changeoverCost`) into one state from any other; from "nothing
 * loaded" only where asked. 0 where no change into it can happen.
 */
export function leastInto(table: Float64Array, states: number, state: number, fromNothing: boolean): number {
  let least = fromNothing ? table[states * states + state]! : Number.POSITIVE_INFINITY;
  for (let from = 0; from < states; from++) {
    if (from !== state) least = Math.min(least, table[from * states + state]!);
  }
  return Number.isFinite(least) ? least : 0;
}
