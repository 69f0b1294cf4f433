import { joinedItems } from "./platform-join.ts";
import type { Walk } from "./walk.ts";

/** Puts two builds that may share a platform into one, or takes one line's copies out of a shared one. */
export function mixOrPart(walk: Walk): boolean {
  if (!walk.data.hasMixing) return false;
  const build = walk.anyBuild();
  if (build < 0) return false;
  return walk.isMixed(build) && walk.random() < 0.5 ? part(walk, build) : mix(walk, build);
}

/** Builds tried for a key that fits. */
const TRIES = 12;

function mix(walk: Walk, build: number): boolean {
  const { state, data, trial, edits } = walk;
  const key = data.optionMixKey[walk.optionOf(build)]!;
  if (key < 0) return false;
  const host = hostFor(walk, build, key);
  if (host < 0) return false;
  const items = joinedItems(state, host, state.itemsOf(build));
  const shared = items === null ? -1 : trial.addMixed(items);
  if (shared < 0) return false;
  if (!walk.mayRun(shared, state.machineOf[host]!)) {
    trial.discard();
    return false;
  }
  trial.drop(build);
  trial.drop(host);
  edits.replace(host, shared);
  edits.remove(build);
  edits.apply(trial);
  return true;
}

/** A build near in time with the same key: on the same machine or another one of the class. */
function hostFor(walk: Walk, build: number, key: number): number {
  const { state, data } = walk;
  for (let turn = 0; turn < TRIES; turn++) {
    const machine = walk.machineFor(walk.optionOf(build));
    const length = machine < 0 ? 0 : state.length[machine]!;
    if (length === 0) continue;
    const near = walk.positionNear(machine, state.setUpStart[build]!);
    const host = state.sequence[machine]![Math.min(near, length - 1)]!;
    if (host !== build && data.optionMixKey[walk.optionOf(host)] === key) return host;
  }
  return -1;
}

function part(walk: Walk, build: number): boolean {
  const { state, data, trial, edits } = walk;
  const items = state.itemsOf(build);
  const taken = items.splice(walk.below(items.length), 1)[0];
  if (!taken) return false;
  const line = data.optionLine[taken.optionIndex]!;
  const machine = walk.machineFor(taken.optionIndex);
  const own = machine < 0 ? -1 : trial.addSingle(taken.optionIndex, taken.copies);
  const rest = own < 0 ? -1 : trial.addMixed(items);
  if (rest < 0) {
    trial.discard();
    return false;
  }
  trial.drop(build);
  const time = walk.goodTime(line, state.setUpStart[build]!, state.runOf[own]!);
  edits.replace(build, rest);
  edits.insert(machine, walk.positionNear(machine, time), own);
  edits.apply(trial);
  return true;
}
