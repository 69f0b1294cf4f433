import { MIN_PER_H } from "../../units/conversions.ts";
import { boundPoints } from "./bound-points.ts";
import { unloadEnd } from "./earliest-completion.ts";
import { classGaps, type GapPattern } from "./gap-patterns.ts";
import { longestSharedRunMin } from "../packing/platform-share.ts";
import type { MachineClass, OperatorStretch, PlanMachine, PlanProblem, Stretch } from "../plan-problem.ts";

/** What the bound knows about one class of machines: capacities between the points of its calendar. */
export interface ClassFrame {
  readonly classIndex: number;
  readonly calendarIndex: number;
  readonly machines: number;
  readonly points: Float64Array;
  readonly setUpMin: number;
  /** set-up and unload of one build without changeover, min */
  readonly prepMin: number;
  /** staffed time of all its machines in each bucket, h */
  readonly staffedH: Float64Array;
  readonly patterns: readonly GapPattern[];
  /** gaps of each type that a build completing in a bucket, and in none before, may have used: [type][bucket] */
  readonly slots: readonly Float64Array[];
  /** earliest end of an unload after each point: [point + 1]; entry 0 is the earliest of all */
  readonly unloadAfterMin: Float64Array;
  /** longest stretch for one run, min */
  readonly longestRunMin: number;
  /** most hours in which one of its machines can be set up, print and be unloaded up to the last point */
  readonly longestUseH: number;
}

/** Frames of all classes, with the points of each calendar made once. */
export function classFrames(problem: PlanProblem): ClassFrame[] {
  const points = problem.calendars.map((_, index) => boundPoints(problem, index));
  return problem.classes.map((machineClass, classIndex) =>
    classFrame(problem, classIndex, machineClass, points[machineClass.calendarIndex] ?? new Float64Array(0)),
  );
}

function classFrame(
  problem: PlanProblem,
  classIndex: number,
  machineClass: MachineClass,
  points: Float64Array,
): ClassFrame {
  const machines = machineClass.machineIndices.flatMap((index) => problem.machines[index] ?? []);
  const lastMin = points[points.length - 1] ?? problem.startMin;
  const longestRunMin = longestRun(machineClass, machines);
  const gaps = classGaps(machineClass, problem.machines, lastMin, longestOptionRun(problem, classIndex));
  const staffedH = new Float64Array(points.length);
  for (const machine of machines) addOverlaps(staffedH, points, machine.windows);
  const slots = gaps.typesMin.map(() => new Float64Array(points.length));
  for (const { type, nextStartMin } of gaps.gaps) {
    const bucket = bucketOf(points, nextStartMin + machineClass.unloadMin);
    if (bucket < points.length) slots[type]![bucket]! += 1;
  }
  return {
    classIndex,
    calendarIndex: machineClass.calendarIndex,
    machines: machines.length,
    points,
    setUpMin: machineClass.setUpMin,
    prepMin: machineClass.setUpMin + machineClass.unloadMin,
    staffedH,
    patterns: gaps.patterns,
    slots,
    unloadAfterMin: unloadsAfter(points, machines, machineClass.unloadMin),
    longestRunMin,
    longestUseH: Math.max(0, ...machines.map((machine) => overlapMin(machine.segments, lastMin) / MIN_PER_H)),
  };
}

/** Index of the first point at or after an instant: the bucket in which it lies; the count of points when after all. */
export function bucketOf(points: Float64Array, instantMin: number): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (points[middle]! < instantMin) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Where nobody needs to be there set-up and run share the window, so the set-up's time is not left for the run. */
function longestRun(machineClass: MachineClass, machines: readonly PlanMachine[]): number {
  let longest = 0;
  for (const { segments } of machines) {
    for (const { startMin, endMin } of segments) longest = Math.max(longest, endMin - startMin);
  }
  return machineClass.unattended ? longest : longest - machineClass.setUpMin;
}

/** No option of the class runs longer: alone at most copies, or a platform full of it. */
function longestOptionRun(problem: PlanProblem, classIndex: number): number {
  const machineClass = problem.classes[classIndex]!;
  let longest = 0;
  for (const option of problem.options) {
    if (option.classIndex !== classIndex) continue;
    const aloneMin = option.runMinByCopies[option.copiesMax] ?? 0;
    longest = Math.max(longest, option.mixKey < 0 ? aloneMin : longestSharedRunMin(machineClass, option));
  }
  return longest;
}

function overlapMin(stretches: readonly Stretch[], untilMin: number): number {
  return stretches.reduce(
    (sum, { startMin, endMin }) => sum + Math.max(0, Math.min(endMin, untilMin) - startMin),
    0,
  );
}

/** Adds the hours of stretches to the buckets they lie in, times their weight. */
function addOverlaps(
  hours: Float64Array,
  points: Float64Array,
  stretches: readonly Stretch[],
  weight = 1,
): void {
  for (const { startMin, endMin } of stretches) {
    for (let bucket = bucketOf(points, startMin); bucket < points.length; bucket++) {
      const fromMin = Math.max(startMin, points[bucket - 1] ?? Number.NEGATIVE_INFINITY);
      if (fromMin >= endMin) break;
      hours[bucket]! += (weight * (Math.min(endMin, points[bucket]!) - fromMin)) / MIN_PER_H;
    }
  }
}

function unloadsAfter(
  points: Float64Array,
  machines: readonly PlanMachine[],
  unloadMin: number,
): Float64Array {
  const after = new Float64Array(points.length + 1).fill(Number.POSITIVE_INFINITY);
  for (const { windows } of machines) {
    for (let at = 0; at <= points.length; at++) {
      // An unload that ends after the point starts no earlier than one minute after point - unloadMin.
      const readyMin = at === 0 ? Number.NEGATIVE_INFINITY : points[at - 1]! + 1 - unloadMin;
      after[at] = Math.min(after[at]!, unloadEnd(windows, readyMin, unloadMin));
    }
  }
  return after;
}

/** Operator hours in each bucket of a calendar, without what committed builds take. */
export function operatorHours(
  problem: PlanProblem,
  calendarIndex: number,
  points: Float64Array,
): Float64Array {
  const hours = new Float64Array(points.length);
  const committed = problem.committedWork.filter((work) => work.calendarIndex === calendarIndex);
  const edges = committed.flatMap(({ stretch }) => [stretch.startMin, stretch.endMin]);
  for (const staffed of problem.calendars[calendarIndex]?.operators ?? []) {
    for (const piece of cutAt(afterStart(staffed, problem.startMin), edges)) {
      const busy = committed.filter(
        ({ stretch }) => stretch.startMin < piece.endMin && stretch.endMin > piece.startMin,
      ).length;
      addOverlaps(hours, points, [piece], Math.max(0, staffed.operators - busy));
    }
  }
  return hours;
}

function afterStart(staffed: OperatorStretch, startMin: number): Stretch {
  return { startMin: Math.max(staffed.startMin, startMin), endMin: Math.max(staffed.endMin, startMin) };
}

/** The stretch cut at those edges that lie inside it. */
function cutAt({ startMin, endMin }: Stretch, edges: readonly number[]): Stretch[] {
  const inside = edges.filter((edge) => startMin < edge && edge < endMin).toSorted((a, b) => a - b);
  const cuts = [startMin, ...new Set(inside), endMin];
  return cuts.slice(1).map((cut, at) => ({ startMin: cuts[at]!, endMin: cut }));
}
