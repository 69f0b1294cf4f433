import type { PlanMachine } from "../plan/plan-problem.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";

/** A week cut into stretches of whole days, each with time in which somebody is there. */
export interface WeekSlots {
  /** minute in the week at which each slot ends */
  readonly endMin: Float64Array;
  /** length of each slot, days */
  readonly lengthDays: readonly number[];
  /** slot of each day of the week, Monday first */
  readonly ofDay: readonly number[];
}

const DAYS = 7;

/**
 * One slot for each day with staffed time on some machine; days without join the one before, or the first such day.
 * Example: staffed Monday to Friday: five slots, the last one Friday to Sunday.
 */
export function weekSlots(machines: readonly PlanMachine[], startMin: number): WeekSlots {
  const isStaffed = Array.from({ length: DAYS }, (_, day) =>
    machines.some(({ windows }) => windows.some((window) => overlaps(window, startMin + day * MIN_PER_DAY))),
  );
  const firstDays = isStaffed.flatMap((staffed, day) => (staffed ? [day] : []));
  const starts = [0, ...firstDays.slice(1)];
  const ends = [...starts.slice(1), DAYS];
  return {
    endMin: Float64Array.from(ends, (day) => day * MIN_PER_DAY),
    lengthDays: ends.map((end, at) => end - starts[at]!),
    ofDay: isStaffed.map((_, day) => ends.findIndex((end) => day < end)),
  };
}

function overlaps(window: { startMin: number; endMin: number }, dayStartMin: number): boolean {
  return window.startMin < dayStartMin + MIN_PER_DAY && window.endMin > dayStartMin;
}
