import type { Walk } from "./walk.ts";

/** A change of the plan, written into the walk's trial; false where it cannot be made, which leaves nothing behind. */
export type Move = (walk: Walk) => boolean;

/** Share of moves to another place that look for a neighbour with the same state. */
const SAME_STATE_SHARE = 0.75;
const LONGEST_SWAP = 8;
/** Now and then builds far apart are swapped. */
const FAR_SWAP_SHARE = 0.2;
const FARTHEST_SWAP = 64;
const LONGEST_BLOCK = 6;

/** Takes one build to another position, machine or option, mostly beside a build of the same state. */
export function relocate(walk: Walk): boolean {
  const build = walk.anyBuild();
  if (build < 0) return false;
  const { state, data } = walk;
  const line = walk.lineOf(build);
  const isMixed = walk.isMixed(build);
  const option = isMixed ? walk.optionOf(build) : walk.anyOption(line);
  const machine = option < 0 ? -1 : walk.machineFor(option);
  if (machine < 0 || (isMixed && !walk.mayRun(build, machine))) return false;
  const time = walk.goodTime(line, state.setUpStart[build]!, state.runOf[build]!);
  let position = walk.positionNear(machine, time);
  let target = option;
  if (walk.random() < SAME_STATE_SHARE) {
    if (isMixed) position = besideState(walk, machine, position, data.optionState[option]!);
    else target = stateOption(walk, line, machine, position, walk.copiesOf(build), option);
  }
  return moveTo(walk, build, machine, position, target);
}

/** The option whose state a neighbour of the position has, else the given one. */
function stateOption(
  walk: Walk,
  line: number,
  machine: number,
  position: number,
  copies: number,
  option: number,
): number {
  const { state } = walk;
  const length = state.length[machine]!;
  const first = walk.random() < 0.5 ? 0 : 1;
  for (let turn = 0; turn < 2; turn++) {
    const at = position - (turn ^ first);
    if (at < 0 || at >= length) continue;
    const found = walk.optionInState(line, machine, state.stateOf[state.sequence[machine]![at]!]!, copies);
    if (found >= 0) return found;
  }
  return option;
}

const STATE_REACH = 4;

/** A position at most a few off that has a neighbour in the state, else the given one. */
function besideState(walk: Walk, machine: number, position: number, wanted: number): number {
  const { state } = walk;
  const sequence = state.sequence[machine]!;
  const length = state.length[machine]!;
  for (let off = 0; off <= STATE_REACH; off++) {
    const after = position + off;
    if (after < length && state.stateOf[sequence[after]!] === wanted) return after;
    const before = position - off - 1;
    if (before >= 0 && before < length && state.stateOf[sequence[before]!] === wanted) return before + 1;
  }
  return position;
}

/** Writes a build's way to a place into the trial, as it is or with another option. */
function moveTo(walk: Walk, build: number, machine: number, position: number, option: number): boolean {
  const { state, trial, edits } = walk;
  const isSame = option === walk.optionOf(build);
  if (state.machineOf[build] === machine && isSame) {
    const own = state.positionOf[build]!;
    if (position === own || position === own + 1) return false;
  }
  if (!isSame && (walk.isMixed(build) || !walk.takes(option, walk.copiesOf(build)))) return false;
  const moved = isSame ? build : trial.addSingle(option, walk.copiesOf(build));
  if (moved < 0) return false;
  if (!isSame) trial.drop(build);
  edits.remove(build);
  edits.insert(machine, position, moved);
  edits.apply(trial);
  return true;
}

/** Swaps two builds of one machine. */
export function swapInMachine(walk: Walk): boolean {
  const { state, edits } = walk;
  const one = walk.anyBuild();
  if (one < 0) return false;
  const machine = state.machineOf[one]!;
  const position = state.positionOf[one]!;
  const reach = walk.random() < FAR_SWAP_SHARE ? FARTHEST_SWAP : LONGEST_SWAP;
  const other = position + 1 + walk.below(reach);
  if (other >= state.length[machine]!) return false;
  const two = state.sequence[machine]![other]!;
  edits.replace(one, two);
  edits.replace(two, one);
  edits.apply(walk.trial);
  return true;
}

/** Swaps two builds of different machines that stand at about the same time, each by an option for its new machine. */
export function swapAcross(walk: Walk): boolean {
  const { state, edits, trial } = walk;
  const one = walk.anyBuild();
  if (one < 0) return false;
  const option = walk.isMixed(one) ? walk.optionOf(one) : walk.anyOption(walk.lineOf(one));
  const machine = option < 0 ? -1 : walk.machineFor(option);
  const own = state.machineOf[one]!;
  if (machine < 0 || machine === own || state.length[machine] === 0) return false;
  const near = walk.positionNear(machine, state.setUpStart[one]!);
  const two = state.sequence[machine]![Math.min(near, state.length[machine]! - 1)]!;
  const oneOption = optionThere(walk, one, machine, two);
  const twoOption = optionThere(walk, two, own, one);
  if (oneOption < 0 || twoOption < 0) return false;
  const newOne = asOption(walk, one, oneOption);
  const newTwo = asOption(walk, two, twoOption);
  if (newOne < 0 || newTwo < 0) {
    trial.discard();
    return false;
  }
  edits.replace(one, newTwo);
  edits.replace(two, newOne);
  edits.apply(trial);
  return true;
}

/** An option for a build on another machine: its own, the one with the state that the machine has there, or any. */
function optionThere(walk: Walk, build: number, machine: number, there: number): number {
  const own = walk.optionOf(build);
  if (walk.isMixed(build)) return walk.mayRun(build, machine) ? own : -1;
  const copies = walk.copiesOf(build);
  const sameState = walk.optionInState(walk.lineOf(build), machine, walk.state.stateOf[there]!, copies);
  if (sameState >= 0 && walk.random() < SAME_STATE_SHARE) return sameState;
  if (walk.mayRun(build, machine)) return own;
  const any = walk.anyOption(walk.lineOf(build));
  const mayRun = walk.data.mayRun[any * walk.data.machineCount + machine] === 1;
  return mayRun && walk.takes(any, copies) ? any : -1;
}

function asOption(walk: Walk, build: number, option: number): number {
  if (option === walk.optionOf(build)) return build;
  const made = walk.trial.addSingle(option, walk.copiesOf(build));
  if (made >= 0) walk.trial.drop(build);
  return made;
}

/** Makes a build by another option where it stands. */
export function changeOption(walk: Walk): boolean {
  const { state, data, edits, trial } = walk;
  const build = walk.anyBuild();
  if (build < 0 || walk.isMixed(build)) return false;
  const option = walk.anyOption(walk.lineOf(build));
  const machine = state.machineOf[build]!;
  if (option === walk.optionOf(build) || data.mayRun[option * data.machineCount + machine] === 0)
    return false;
  if (!walk.takes(option, walk.copiesOf(build))) return false;
  const made = trial.addSingle(option, walk.copiesOf(build));
  if (made < 0) return false;
  trial.drop(build);
  edits.replace(build, made);
  edits.apply(trial);
  return true;
}

/** Takes a run of neighbours of one state together to another place of the same machine or one like it. */
export function moveBlock(walk: Walk): boolean {
  const { state, data, edits } = walk;
  const first = walk.anyBuild();
  if (first < 0) return false;
  const own = state.machineOf[first]!;
  const from = state.positionOf[first]!;
  const sequence = state.sequence[own]!;
  const wanted = 2 + walk.below(LONGEST_BLOCK - 1);
  let to = from + 1;
  const length = state.length[own]!;
  while (to < length && to - from < wanted && state.stateOf[sequence[to]!] === state.stateOf[first]) to++;
  if (to - from < 2) return false;
  const machine = walk.random() < 0.5 ? own : walk.machineFor(walk.optionOf(first));
  if (machine < 0 || data.machineClass[machine] !== data.machineClass[own]) return false;
  for (let at = from; at < to; at++) if (!walk.mayRun(sequence[at]!, machine)) return false;
  const near = walk.positionNear(machine, state.setUpStart[first]!);
  const position = besideState(walk, machine, near, state.stateOf[first]!);
  if (machine === own && position >= from && position <= to) return false;
  for (let at = from; at < to; at++) {
    edits.remove(sequence[at]!);
    edits.insert(machine, position, sequence[at]!);
  }
  edits.apply(walk.trial);
  return true;
}
