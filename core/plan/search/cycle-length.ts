import type { SearchState } from "./search-state.ts";

/** A cycle of annealing takes so much for each line, but no more than so much for each pair of places. */
const MS_A_LINE = 25;
const MS_A_PAIR_OF_PLACES = 1.2e-5;

/**
 * How long one cycle of annealing should last, ms: where builds have few places to go, many short cycles that start from the
 * best plan find more than a few long ones (measured). Places are builds x ways to make a line x builds on a machine.
 * Example: 50 jobs on one machine have 50 x 1 x 50 = 2500 places: 75 ms, not 1250.
 */
export function cycleMs(state: SearchState): number {
  const { data, activeCount } = state;
  const ways = data.optionMachines.reduce((sum, machines) => sum + machines.length, 0) / data.lineCount;
  const places = activeCount * ways * (activeCount / data.machineCount);
  return Math.min(MS_A_LINE * data.lineCount, MS_A_PAIR_OF_PLACES * places ** 2);
}
