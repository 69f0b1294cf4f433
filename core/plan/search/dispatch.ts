import { buildSize } from "./recreate.ts";
import type { WholeShares } from "./rounding.ts";
import type { SearchState } from "./search-state.ts";
import { type IndexScale, tardinessIndex } from "./tardiness-index.ts";
import type { Trial } from "./trial.ts";

interface Waiting {
  readonly option: number;
  readonly copies: number;
  readonly line: number;
  readonly runMin: number;
  readonly lateCost: number;
}

/**
 * Makes builds of the given copies and dispatches them: the machine that is free first takes the waiting build with the
 * largest index (apparent tardiness cost with set-ups), again and again. Copies that find no place stay without one.
 */
export function dispatchShares(trial: Trial, whole: WholeShares): void {
  const { state } = trial;
  whole.boughtOut.forEach((copies, line) => {
    if (copies > 0) buy(trial, line, copies);
  });
  const waiting = waitingBuilds(state, whole);
  const scale = scaleOf(state, waiting);
  const open = new Set(state.length.keys());
  while (open.size > 0 && waiting.length > 0) {
    const machine = firstFree(state, open);
    const next = pick(state, machine, waiting, scale);
    if (next < 0) {
      open.delete(machine);
      continue;
    }
    const build = waiting[next]!;
    waiting[next] = waiting.at(-1)!;
    waiting.pop();
    appendBuild(trial, machine, build);
  }
}

function buy(trial: Trial, line: number, copies: number): void {
  const { state } = trial;
  trial.setCounts(line, state.boughtOut[line]! + copies, state.unplaced[line]! - copies);
  trial.evaluate();
  trial.commit();
}

function waitingBuilds(state: SearchState, whole: WholeShares): Waiting[] {
  const { data } = state;
  const waiting: Waiting[] = [];
  whole.ofOption.forEach((wanted, option) => {
    const line = data.optionLine[option]!;
    let left = wanted;
    for (;;) {
      const copies = buildSize(left, data.optionMin[option]!, data.optionMax[option]!);
      if (copies === 0) return;
      left -= copies;
      const rate = data.wholeRate[line]! + data.pieceRate[line]! * copies;
      const lateCost = data.hard[line] ? Math.max(rate, state.penalty) : rate;
      waiting.push({ option, copies, line, runMin: data.runOf(option, copies), lateCost });
    }
  });
  return waiting;
}

/** Look-aheads that did well over random works; Lee, Bhaskaran & Pinedo 1997 give ranges (from memory). */
const K1 = 2;
const K2 = 0.4;
/** Builds that cost nothing when late still go in some order. */
const LEAST_LATE_COST = 1e-9;

function scaleOf({ data }: SearchState, waiting: readonly Waiting[]): IndexScale {
  const meanRun = waiting.reduce((sum, build) => sum + build.runMin, 0) / Math.max(1, waiting.length);
  let sum = 0;
  let count = 0;
  for (const changes of data.changeoverMin) {
    for (const minutes of changes) {
      if (minutes > 0 && minutes < Infinity) {
        sum += minutes;
        count++;
      }
    }
  }
  return { meanRun: Math.max(1, meanRun), meanSetUp: count > 0 ? sum / count : 0, k1: K1, k2: K2 };
}

function freeAt(state: SearchState, machine: number): number {
  const length = state.length[machine]!;
  if (length > 0) return state.endAt[state.sequence[machine]![length - 1]!]!;
  const first = state.windows.firstWindow[machine]!;
  return first < state.windows.firstWindow[machine + 1]! ? state.windows.windowStart[first]! : Infinity;
}

function firstFree(state: SearchState, open: ReadonlySet<number>): number {
  let best = -1;
  let bestMin = Infinity;
  for (const machine of open) {
    const free = freeAt(state, machine);
    if (best < 0 || free < bestMin) {
      best = machine;
      bestMin = free;
    }
  }
  return best;
}

function pick(state: SearchState, machine: number, waiting: readonly Waiting[], scale: IndexScale): number {
  const { data } = state;
  const nowMin = freeAt(state, machine);
  const length = state.length[machine]!;
  const loaded =
    length > 0 ? state.stateOf[state.sequence[machine]![length - 1]!]! : data.machineStart[machine]!;
  const changes = data.changeoverMin[data.machineClass[machine]!]!;
  let best = -1;
  let bestIndex = -1;
  waiting.forEach((build, index) => {
    if (data.mayRun[build.option * data.machineCount + machine] === 0) return;
    const waitMin = Math.max(0, data.releaseMin[build.line]! - nowMin);
    const value = tardinessIndex(
      {
        lateCost: Math.max(LEAST_LATE_COST, build.lateCost),
        run: build.runMin + waitMin,
        slack: data.dueMin[build.line]! - build.runMin - nowMin,
        setUp: changes[loaded * data.stateCount + data.optionState[build.option]!]!,
      },
      scale,
    );
    if (value > bestIndex) {
      best = index;
      bestIndex = value;
    }
  });
  return best;
}

function appendBuild(trial: Trial, machine: number, waiting: Waiting): void {
  const { state } = trial;
  const build = trial.addSingle(waiting.option, waiting.copies);
  if (build < 0) return;
  const { line, copies } = waiting;
  trial.setCounts(line, state.boughtOut[line]!, state.unplaced[line]! - copies);
  trial.splices.open(machine, state.length[machine]!, state.length[machine]!);
  trial.splices.put(build);
  if (trial.evaluate() === Infinity) trial.discard();
  else trial.commit();
}
