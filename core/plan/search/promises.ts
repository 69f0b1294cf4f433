import { Edits } from "./edits.ts";
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

function takeOut(trial: Trial, build: number): void {
  const { state } = trial;
  const edits = new Edits(state);
  const end = state.endAt[build]!;
  const stays = state.itemsOf(build).filter(({ optionIndex, copies }) => {
    const line = state.data.optionLine[optionIndex]!;
    if (state.data.hard[line] === 0 || end <= state.data.dueMin[line]!) return true;
    trial.setCounts(line, state.boughtOut[line]!, state.unplaced[line]! + copies);
    return false;
  });
  trial.drop(build);
  const rest = stays.length > 0 ? trial.addMixed(stays) : -1;
  if (rest >= 0) edits.replace(build, rest);
  else edits.remove(build);
  edits.apply(trial);
  if (trial.evaluate() === Infinity) throw new Error("taking a build out left the others without a place");
  trial.commit();
}
