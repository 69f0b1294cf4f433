import { Edits } from "./edits.ts";
import type { MixedItem } from "./mixed-builds.ts";
import { MOST_ITEMS, type SearchState } from "./search-state.ts";
import type { Trial } from "./trial.ts";

/**
 * Takes copies that would break a promise out of the plan: copies of lines that must not be late and are. They stay without
 * a place. What comes after them is timed anew, which may break another promise, so it goes on until none is broken.
 */
export function takeOutBroken(trial: Trial): void {
  const { state } = trial;
  takeOutBought(trial);
  for (let build = brokenBuild(state); build >= 0; build = brokenBuild(state)) takeOut(trial, build);
}

/** True where a line that must not be late is. */
export function hasBroken(state: SearchState): boolean {
  for (let line = 0; line < state.data.lineCount; line++) if (isBroken(state, line)) return true;
  return false;
}

function isBroken({ data, lineEnd }: SearchState, line: number): boolean {
  return data.hard[line] === 1 && lineEnd[line]! >= 0 && lineEnd[line]! > data.dueMin[line]!;
}

function takeOutBought(trial: Trial): void {
  const { state } = trial;
  for (let line = 0; line < state.data.lineCount; line++) {
    const bought = state.boughtOut[line]!;
    const isLate = state.data.buyArriveMin[line]! > state.data.dueMin[line]!;
    if (bought === 0 || !isLate || state.data.hard[line] === 0) continue;
    trial.setCounts(line, 0, state.unplaced[line]! + bought);
    trial.evaluate();
    trial.commit();
  }
}

/** A build with a broken promise in it, or -1. */
function brokenBuild(state: SearchState): number {
  for (let line = 0; line < state.data.lineCount; line++) {
    if (!isBroken(state, line)) continue;
    for (let slot = state.firstItemOf(line); slot >= 0; slot = state.itemAfter(slot)) {
      const build = Math.floor(slot / MOST_ITEMS);
      if (state.endAt[build]! > state.data.dueMin[line]!) return build;
    }
  }
  return -1;
}

/**
 * Takes the broken items out of a build. Where the next build would then need so much longer a changeover that builds after it
 * find no place, the last build of the machine gives way first, as often as it takes.
 */
function takeOut(trial: Trial, build: number): void {
  const { state } = trial;
  const machine = state.machineOf[build]!;
  const isBrokenItem = ({ optionIndex }: MixedItem): boolean => {
    const line = state.data.optionLine[optionIndex]!;
    return state.data.hard[line] === 1 && state.endAt[build]! > state.data.dueMin[line]!;
  };
  while (!leaves(trial, build, isBrokenItem)) {
    const last = state.sequence[machine]![state.length[machine]! - 1]!;
    if (!leaves(trial, last, () => true))
      throw new Error("the last build of a machine could not be taken out");
    if (last === build) return;
  }
}

/** Takes items out of a build, the build with its last one; false, and nothing changed, where others lose their place. */
function leaves(trial: Trial, build: number, isLeaving: (item: MixedItem) => boolean): boolean {
  const { state } = trial;
  const edits = new Edits(state);
  const items = state.itemsOf(build);
  for (const item of items.filter(isLeaving)) {
    const line = state.data.optionLine[item.optionIndex]!;
    trial.setCounts(line, state.boughtOut[line]!, state.unplaced[line]! + item.copies);
  }
  const stays = items.filter((item) => !isLeaving(item));
  trial.drop(build);
  const rest = stays.length > 0 ? trial.addMixed(stays) : -1;
  if (stays.length > 0 && rest < 0)
    throw new Error("items that shared a platform could not go on sharing it");
  if (rest >= 0) edits.replace(build, rest);
  else edits.remove(build);
  edits.apply(trial);
  const hasPlaces = trial.evaluate() < Infinity;
  if (hasPlaces) trial.commit();
  else trial.discard();
  return hasPlaces;
}
