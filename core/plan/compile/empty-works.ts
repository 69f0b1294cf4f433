import type { PlanLine, PlanMachine, PlanOption, PlanProblem, Stretch } from "../plan-problem.ts";
import { inCommon, joinTouching } from "../time/stretches.ts";

/** One build of a line, as it could be made. */
export interface PossibleBuild {
  readonly option: PlanOption;
  readonly machineIndex: number;
  readonly copies: number;
  readonly finishMin: number;
}

/** The machines with nothing on them but fixed builds and what is taken here. Operators count as there or not there. */
export class EmptyWorks {
  private readonly problem: PlanProblem;
  private readonly freeMin: number[];
  private readonly state: number[];

  constructor(problem: PlanProblem) {
    this.problem = problem;
    this.freeMin = problem.machines.map((machine) => machine.freeFromMin);
    this.state = problem.machines.map((machine) => machine.startState);
  }

  /** The build of at most so many copies that would be finished first; null where none finds a place. */
  firstFinished(line: PlanLine, mostCopies: number): PossibleBuild | null {
    let best: PossibleBuild | null = null;
    for (const optionIndex of line.optionIndices) {
      const option = this.problem.options[optionIndex];
      const copies = Math.min(mostCopies, option?.copiesMax ?? 0);
      if (!option || copies < option.copiesMin) continue;
      for (const machineIndex of option.machineIndices) {
        const finishMin = this.finishOn(line, option, machineIndex, copies);
        if (finishMin !== null && (!best || finishMin < best.finishMin)) {
          best = { option, machineIndex, copies, finishMin };
        }
      }
    }
    return best;
  }

  take({ machineIndex, finishMin, option }: PossibleBuild): void {
    this.freeMin[machineIndex] = finishMin;
    this.state[machineIndex] = option.stateIndex;
  }

  private finishOn(line: PlanLine, option: PlanOption, machineIndex: number, copies: number): number | null {
    const machine = this.problem.machines[machineIndex];
    const facts = this.problem.classes[option.classIndex];
    if (!machine || !facts) throw new RangeError(`no such machine or class: ${machineIndex}`);
    const states = this.problem.states.length;
    const changeoverMin =
      facts.changeoverMin[(this.state[machineIndex] ?? states) * states + option.stateIndex];
    return placeOnEmpty(machine, servedTime(this.problem, machine, facts.calendarIndex), {
      fromMin: Math.max(line.releaseMin, this.freeMin[machineIndex] ?? 0),
      setUpMin: facts.setUpMin + (changeoverMin ?? 0),
      runMin: option.runMinByCopies[copies] ?? Number.POSITIVE_INFINITY,
      unloadMin: facts.unloadMin,
    });
  }
}

/** Remembered by machine: it is asked for again and again. */
const servedTimes = new WeakMap<PlanMachine, readonly Stretch[]>();

/** The machine's windows in which at least one operator is there. */
function servedTime(problem: PlanProblem, machine: PlanMachine, calendarIndex: number): readonly Stretch[] {
  const known = servedTimes.get(machine);
  if (known) return known;
  const manned = (problem.calendars[calendarIndex]?.operators ?? []).filter((s) => s.operators > 0);
  const windows = inCommon(machine.windows, joinTouching(manned));
  servedTimes.set(machine, windows);
  return windows;
}

/** Lengths of one build, min, and the earliest start of its set-up. */
interface Lengths {
  readonly fromMin: number;
  readonly setUpMin: number;
  readonly runMin: number;
  readonly unloadMin: number;
}

/** End of unloading of one build placed as early as can be, or null. */
function placeOnEmpty(machine: PlanMachine, windows: readonly Stretch[], lengths: Lengths): number | null {
  for (const window of windows) {
    const readyMin = Math.max(window.startMin, lengths.fromMin) + lengths.setUpMin;
    if (readyMin > window.endMin) continue;
    for (const segment of machine.segments) {
      const printMin = Math.max(readyMin, segment.startMin);
      if (printMin > window.endMin) break;
      if (printMin + lengths.runMin > segment.endMin) continue;
      const endMin = unloadEnd(windows, printMin + lengths.runMin, lengths.unloadMin);
      if (endMin !== null && isClear(machine.blocks, printMin - lengths.setUpMin, endMin)) return endMin;
    }
  }
  return null;
}

function unloadEnd(windows: readonly Stretch[], printEndMin: number, unloadMin: number): number | null {
  for (const window of windows) {
    const startMin = Math.max(window.startMin, printEndMin);
    if (startMin + unloadMin <= window.endMin) return startMin + unloadMin;
  }
  return null;
}

function isClear(blocks: readonly Stretch[], startMin: number, endMin: number): boolean {
  return blocks.every((block) => block.endMin <= startMin || block.startMin >= endMin);
}
