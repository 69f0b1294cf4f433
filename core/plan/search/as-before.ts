import type { EarlierBuild } from "../plan-problem.ts";
import type { SearchData } from "./search-data.ts";
import type { Trial } from "./trial.ts";

/**
 * Puts the builds of an earlier plan where they were, as far as they still can be made: machine by machine in the order of
 * their starts, each after the one before it. What finds no place, or is no longer wanted, is left out.
 */
export function placeEarlier(trial: Trial): void {
  for (const build of trial.state.data.problem.replan?.builds ?? []) place(trial, build);
}

/** Items of one build are of different lines and may stand on one platform, or there is only one. */
function mayShare(data: SearchData, items: EarlierBuild["items"]): boolean {
  const keys = new Set(items.map(({ optionIndex }) => data.optionMixKey[optionIndex]!));
  const lines = new Set(items.map(({ optionIndex }) => data.optionLine[optionIndex]!));
  return items.length === 1 || (lines.size === items.length && keys.size === 1 && !keys.has(-1));
}

function place(trial: Trial, { items, machineIndex }: EarlierBuild): void {
  const { state } = trial;
  const { data } = state;
  const lines = items.map(({ optionIndex }) => data.optionLine[optionIndex]!);
  const isWanted = items.every(({ copies }, index) => copies <= state.unplaced[lines[index]!]!);
  if (items.length === 0 || !isWanted || !mayShare(data, items)) return;
  if (items.some(({ optionIndex }) => data.mayRun[optionIndex * data.machineCount + machineIndex] === 0))
    return;
  const build = trial.addMixed(items);
  if (build < 0) return;
  items.forEach(({ copies }, index) => {
    const line = lines[index]!;
    trial.setCounts(line, state.boughtOut[line]!, state.unplaced[line]! - copies);
  });
  const end = state.length[machineIndex]!;
  trial.splices.open(machineIndex, end, end);
  trial.splices.put(build);
  if (trial.evaluate() === Infinity) trial.discard();
  else trial.commit();
}
