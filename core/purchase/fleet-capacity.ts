import { operatorHours } from "../plan/bound/class-frame.ts";
import { classGaps, type GapPattern } from "../plan/bound/gap-patterns.ts";
import type { PlanMachine, PlanProblem, Stretch } from "../plan/plan-problem.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import type { WeekSlots } from "./week-slots.ts";

/** What one class of machines offers in a week without closed days. */
export interface ClassWeek {
  readonly classIndex: number;
  readonly calendarIndex: number;
  readonly machines: number;
  /** set-up and unload of one build without changeover, h */
  readonly prepH: number;
  /** staffed hours of all its machines by slot */
  readonly staffedH: Float64Array;
  /** unstaffed gaps that one build each can print into: [type][slot in which it is unloaded] */
  readonly gaps: readonly Float64Array[];
  /** which gaps one run can span; the first spans none */
  readonly patterns: readonly GapPattern[];
  /** most hours in which one of its machines can be used */
  readonly longestUseH: number;
}

/** What a fleet offers in a week: machines by class, and people by calendar. */
export interface FleetWeek {
  readonly slots: WeekSlots;
  readonly classes: readonly ClassWeek[];
  /** operator hours by calendar and slot */
  readonly operatorH: readonly Float64Array[];
}

/**
 * Counts what a week offers. `problem` starts on a Monday and has no closed days. A gap counts in the slot in which people
 * are back; one that ends after the week counts in the last slot, so that the weekend is filled by the week before it.
 */
export function fleetWeek(problem: PlanProblem, slots: WeekSlots): FleetWeek {
  const points = slots.endMin.map((endMin) => problem.startMin + endMin);
  return {
    slots,
    classes: problem.classes.map((_, classIndex) => classWeek(problem, classIndex, points)),
    operatorH: problem.calendars.map((_, index) => operatorHours(problem, index, points)),
  };
}

function classWeek(problem: PlanProblem, classIndex: number, points: Float64Array): ClassWeek {
  const machineClass = problem.classes[classIndex]!;
  const machines = machineClass.machineIndices.map((index) => problem.machines[index]!);
  const weekEndMin = points[points.length - 1]!;
  const found = classGaps(machineClass, problem.machines, weekEndMin, longestRunMin(problem, classIndex));
  const gaps = found.typesMin.map(() => new Float64Array(points.length));
  for (const { type, nextStartMin } of found.gaps) gaps[type]![slotAt(points, nextStartMin)]! += 1;
  const useH = machines.map(({ segments }) => hoursBetween(segments, problem.startMin, weekEndMin));
  return {
    classIndex,
    calendarIndex: machineClass.calendarIndex,
    machines: machines.length,
    prepH: (machineClass.setUpMin + machineClass.unloadMin) / MIN_PER_H,
    staffedH: staffedHours(machines, points, problem.startMin),
    gaps,
    patterns: found.patterns,
    longestUseH: Math.max(0, ...useH),
  };
}

function slotAt(points: Float64Array, instantMin: number): number {
  const slot = points.findIndex((endMin) => instantMin < endMin);
  return slot < 0 ? points.length - 1 : slot;
}

function staffedHours(
  machines: readonly PlanMachine[],
  points: Float64Array,
  startMin: number,
): Float64Array {
  return points.map((endMin, slot) =>
    machines.reduce(
      (sum, { windows }) => sum + hoursBetween(windows, points[slot - 1] ?? startMin, endMin),
      0,
    ),
  );
}

/** Hours of stretches that lie between two instants. Example: 60 to 180 between 0 and 120: 1 h. */
export function hoursBetween(stretches: readonly Stretch[], fromMin: number, toMin: number): number {
  let minutes = 0;
  for (const { startMin, endMin } of stretches) {
    minutes += Math.max(0, Math.min(endMin, toMin) - Math.max(startMin, fromMin));
  }
  return minutes / MIN_PER_H;
}

function longestRunMin(problem: PlanProblem, classIndex: number): number {
  return problem.options
    .filter((option) => option.classIndex === classIndex)
    .reduce((longest, { runMinByCopies }) => Math.max(longest, runMinByCopies.at(-1) ?? 0), 0);
}
