import { MOST_ITEMS } from "./search-state.ts";
import type { Walk } from "./walk.ts";

const MERGE_SHARE = 0.6;

/** Moves copies from one build of a line to another one of it; often all, which leaves one build less. */
export function transferCopies(walk: Walk): boolean {
  const { data, edits, trial } = walk;
  const from = walk.anyBuild();
  if (from < 0 || walk.isMixed(from)) return false;
  const to = otherBuild(walk, from);
  if (to < 0) return false;
  const room = data.optionMax[walk.optionOf(to)]! - walk.copiesOf(to);
  const copies = walk.copiesOf(from);
  const moved =
    copies <= room && walk.random() < MERGE_SHARE ? copies : 1 + walk.below(Math.min(room, copies));
  if (room <= 0 || (moved < copies && copies - moved < data.optionMin[walk.optionOf(from)]!)) return false;
  const more = trial.addSingle(walk.optionOf(to), walk.copiesOf(to) + moved);
  const less = moved < copies ? trial.addSingle(walk.optionOf(from), copies - moved) : -1;
  if (more < 0 || (less < 0 && moved < copies)) {
    trial.discard();
    return false;
  }
  trial.drop(from);
  trial.drop(to);
  edits.replace(to, more);
  if (less >= 0) edits.replace(from, less);
  else edits.remove(from);
  edits.apply(trial);
  return true;
}

/** Another build of the same line with nothing else in it, or -1. */
function otherBuild(walk: Walk, build: number): number {
  const { state } = walk;
  const line = walk.lineOf(build);
  let found = -1;
  let seen = 0;
  for (let slot = state.firstItemOf(line); slot >= 0; slot = state.itemAfter(slot)) {
    const other = (slot / MOST_ITEMS) | 0;
    if (other === build || walk.isMixed(other)) continue;
    seen++;
    if (walk.below(seen) === 0) found = other;
  }
  return found;
}

/** Takes some copies out of a build into a new one elsewhere. */
export function splitBuild(walk: Walk): boolean {
  const { state, data, edits, trial } = walk;
  const build = walk.anyBuild();
  if (build < 0 || walk.isMixed(build) || walk.copiesOf(build) < 2) return false;
  const line = walk.lineOf(build);
  const copies = walk.copiesOf(build);
  const moved = 1 + walk.below(copies - 1);
  const option = walk.random() < 0.5 ? walk.optionOf(build) : walk.anyOption(line);
  const machine = walk.machineFor(option);
  const least = data.optionMin[walk.optionOf(build)]!;
  if (machine < 0 || !walk.takes(option, moved) || copies - moved < least) return false;
  const rest = trial.addSingle(walk.optionOf(build), copies - moved);
  const part = trial.addSingle(option, moved);
  if (rest < 0 || part < 0) {
    trial.discard();
    return false;
  }
  trial.drop(build);
  const time = walk.goodTime(line, state.setUpStart[build]!, state.runOf[part]!);
  const position = walk.positionNear(machine, time);
  edits.replace(build, rest);
  edits.insert(machine, position, part);
  edits.apply(trial);
  return true;
}

/** Buys the copies of a build out, or makes copies in that are bought out now. */
export function buyOrMake(walk: Walk): boolean {
  const { data } = walk;
  if (!data.hasBuyOut) return false;
  const line = walk.below(data.lineCount);
  if (data.buyPrice[line] === Infinity) return false;
  return walk.state.boughtOut[line]! > 0 && walk.random() < 0.5 ? makeIn(walk, line) : buyOut(walk, line);
}

function buyOut(walk: Walk, line: number): boolean {
  const { state, trial, edits } = walk;
  const slot = state.firstItemOf(line);
  if (slot < 0) return false;
  const build = (slot / MOST_ITEMS) | 0;
  if (walk.isMixed(build)) return false;
  trial.setCounts(line, state.boughtOut[line]! + walk.copiesOf(build), state.unplaced[line]!);
  trial.drop(build);
  edits.remove(build);
  edits.apply(trial);
  return true;
}

function makeIn(walk: Walk, line: number): boolean {
  const { state, data, trial, edits } = walk;
  const option = walk.anyOption(line);
  const machine = option < 0 ? -1 : walk.machineFor(option);
  const bought = state.boughtOut[line]!;
  const copies = Math.min(bought, option < 0 ? 0 : data.optionMax[option]!);
  if (machine < 0 || !walk.takes(option, copies)) return false;
  const build = trial.addSingle(option, copies);
  if (build < 0) return false;
  trial.setCounts(line, bought - copies, state.unplaced[line]!);
  const time = walk.goodTime(line, data.dueMin[line]! - state.runOf[build]!, state.runOf[build]!);
  edits.insert(machine, walk.positionNear(machine, time), build);
  edits.apply(trial);
  return true;
}
