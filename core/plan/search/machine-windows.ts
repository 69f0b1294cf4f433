import { inCommon } from "../time/stretches.ts";
import { operatorMinutes, OperatorUse, servedStretches } from "./operator-use.ts";
import type { PlanMachine, PlanProblem, Stretch } from "../plan-problem.ts";

/**
 * Where every machine can be served and where it can print, as flat arrays of minutes from the start of the plan. Windows
 * of machine `m` are `[firstWindow[m], firstWindow[m + 1])`; those in which a print may start hold the segments
 * `[firstSegment[w], lastSegment[w])`.
 */
export class MachineWindows {
  readonly use: OperatorUse;
  readonly firstWindow: Int32Array;
  readonly windowStart: Int32Array;
  readonly windowEnd: Int32Array;
  readonly firstSegment: Int32Array;
  readonly lastSegment: Int32Array;
  /** start of the next time out of service, which no build may span */
  readonly nextBlock: Int32Array;
  readonly segmentStart: Int32Array;
  readonly segmentEnd: Int32Array;
  /** longest segment from this window's on: no longer print fits any more */
  readonly longestFrom: Int32Array;
  /** free operators by minute, of the machine's calendar; null where they can never be short */
  readonly free: readonly (Int16Array | null)[];
  readonly unloadMin: Int32Array;

  constructor(problem: PlanProblem) {
    const { minutes, rows } = layOut(problem);
    // The search takes operators off its minutes: each has its own.
    this.use = new OperatorUse(
      problem,
      minutes.map((list) => list.slice()),
    );
    const windows = rows.flatMap((row) => row.windows);
    const segments = rows.flatMap((row) => row.segments);
    this.firstWindow = startsOf(rows.map((row) => row.windows.length));
    const segmentsBefore = startsOf(rows.map((row) => row.segments.length));
    this.windowStart = Int32Array.from(windows, (window) => window.startMin);
    this.windowEnd = Int32Array.from(windows, (window) => window.endMin);
    this.nextBlock = Int32Array.from(windows, (window) => window.nextBlock);
    this.segmentStart = Int32Array.from(segments, (segment) => segment.startMin);
    this.segmentEnd = Int32Array.from(segments, (segment) => segment.endMin);
    const offset = rows.flatMap((row, index) => row.windows.map(() => segmentsBefore[index]!));
    this.firstSegment = Int32Array.from(windows, (window, index) => offset[index]! + window.firstSegment);
    this.lastSegment = Int32Array.from(windows, (window, index) => offset[index]! + window.lastSegment);
    this.longestFrom = Int32Array.from(rows.flatMap(longestFrom));
    const calendarOf = (machine: PlanMachine): number => problem.classes[machine.classIndex]!.calendarIndex;
    this.free = problem.machines.map((machine) => this.use.free[calendarOf(machine)] ?? null);
    this.unloadMin = Int32Array.from(
      problem.machines,
      (machine) => problem.classes[machine.classIndex]!.unloadMin,
    );
  }
}

/** The calendars of a problem minute by minute, and what they leave each machine. */
interface LaidOut {
  readonly minutes: readonly Int16Array[];
  readonly rows: readonly MachineRows[];
}

const laidOut = new WeakMap<PlanProblem, LaidOut>();

/**
 * Lets a problem that differs from another in its lines, options and set-up states alone use what was laid out for that one.
 * Example: 500 lines and one more: its calendars are not laid out again, which takes 0.05 s.
 */
export function layOutAs(problem: PlanProblem, other: PlanProblem): void {
  laidOut.set(problem, layOut(other));
}

/** Done once for each problem: several searches of one run begin with it. */
function layOut(problem: PlanProblem): LaidOut {
  const known = laidOut.get(problem);
  if (known) return known;
  const minutes = operatorMinutes(problem);
  const served = minutes.map(servedStretches);
  const rows = problem.machines.map((machine) => rowsOf(problem, machine, served));
  laidOut.set(problem, { minutes, rows });
  return { minutes, rows };
}

interface WindowRow extends Stretch {
  readonly firstSegment: number;
  readonly lastSegment: number;
  readonly nextBlock: number;
}

interface MachineRows {
  readonly windows: readonly WindowRow[];
  readonly segments: readonly Stretch[];
}

function rowsOf(
  problem: PlanProblem,
  machine: PlanMachine,
  servedByCalendar: readonly (readonly Stretch[])[],
): MachineRows {
  const origin = problem.startMin;
  const facts = problem.classes[machine.classIndex];
  const manned = servedByCalendar[facts?.calendarIndex ?? -1];
  if (!manned) throw new RangeError(`machine ${machine.machineId} has no calendar`);
  const segments = machine.segments.map(({ startMin, endMin }) => ({
    startMin: Math.max(startMin, machine.freeFromMin) - origin,
    endMin: endMin - origin,
  }));
  const open = machine.windows.map(({ startMin, endMin }) => ({
    startMin: Math.max(startMin, machine.freeFromMin) - origin,
    endMin: endMin - origin,
  }));
  const served = inCommon(open, manned);
  const blocks = machine.blocks.map((block) => block.startMin - origin);
  let first = 0;
  let block = 0;
  const windows = served.map((window): WindowRow => {
    while ((segments[first]?.endMin ?? NEVER) <= window.startMin) first++;
    while ((blocks[block] ?? NEVER) < window.startMin) block++;
    let last = first;
    while ((segments[last]?.startMin ?? NEVER) <= window.endMin) last++;
    return { ...window, firstSegment: first, lastSegment: last, nextBlock: blocks[block] ?? NEVER };
  });
  return { windows, segments };
}

/** Later than any minute of any plan. */
const NEVER = 0x3fffffff;

function longestFrom({ windows, segments }: MachineRows): number[] {
  let longest = 0;
  let segment = segments.length;
  return windows
    .toReversed()
    .map((window) => {
      while (segment > window.firstSegment) {
        segment--;
        const { startMin, endMin } = segments[segment]!;
        longest = Math.max(longest, endMin - startMin);
      }
      return longest;
    })
    .toReversed();
}

/** Running sums, one longer than the list. Example: 2, 3 give 0, 2, 5. */
function startsOf(counts: readonly number[]): Int32Array {
  const starts = new Int32Array(counts.length + 1);
  counts.forEach((count, index) => {
    starts[index + 1] = starts[index]! + count;
  });
  return starts;
}
