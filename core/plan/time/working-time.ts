import type { Calendar, Shift } from "../../shop/calendar.ts";
import { dayNumberOf, localDayNumber, minuteOfLocal } from "../../shop/instants.ts";
import { minuteOfDay } from "../../shop/week-of-shifts.ts";
import type { OperatorStretch, Stretch, WorkingTime } from "../plan-problem.ts";
import { joinTouching, withoutStretches } from "./stretches.ts";

/**
 * Lays a calendar out in epoch minutes from one instant to another. A shift runs from the instant its local start shows to
 * the instant its local end shows, so 22:00 to 06:00 is 7 h long in the night in which clocks go forward and 9 h where they
 * go back. Closed days are cut out by local date, also from a shift that began the evening before. Where shifts overlap,
 * the larger number of operators counts.
 * Example: Monday to Friday 06:00 to 14:00 over one week gives five windows of 480 min.
 */
export function workingTime(
  calendar: Calendar,
  timeZone: string,
  fromMin: number,
  toMin: number,
): WorkingTime {
  const closures = closureStretches(calendar, timeZone, fromMin, toMin);
  const shifts = shiftStretches(calendar, timeZone, fromMin, toMin);
  const operators = withoutStretches(mostOperators(shifts), closures);
  return { calendarId: calendar.id, windows: joinTouching(operators), operators, closures };
}

/** Closed days, clipped to the time asked for, sorted and joined. */
function closureStretches(calendar: Calendar, timeZone: string, fromMin: number, toMin: number): Stretch[] {
  const stretches = calendar.closures.map(({ from, to }) => ({
    startMin: Math.max(fromMin, minuteOfLocal(dayNumberOf(from), 0, timeZone)),
    endMin: Math.min(toMin, minuteOfLocal(dayNumberOf(to) + 1, 0, timeZone)),
  }));
  return joinTouching(stretches.filter(isLong).toSorted(byStart));
}

/** Every shift that touches the time asked for, clipped to it, sorted by start; they may overlap. */
function shiftStretches(
  calendar: Calendar,
  timeZone: string,
  fromMin: number,
  toMin: number,
): OperatorStretch[] {
  const stretches: OperatorStretch[] = [];
  // A shift lasts a day at most and may begin at 24:00, so it can reach in from two days before.
  const lastDay = localDayNumber(toMin, timeZone);
  for (let day = localDayNumber(fromMin, timeZone) - 2; day <= lastDay; day += 1) {
    for (const shift of calendar.shifts) {
      if (!shift.days.includes(isoWeekday(day))) continue;
      const { startMin, endMin } = shiftOnDay(shift, day, timeZone);
      stretches.push({
        startMin: Math.max(fromMin, startMin),
        endMin: Math.min(toMin, endMin),
        operators: shift.operators,
      });
    }
  }
  return stretches.filter(isLong).toSorted(byStart);
}

function shiftOnDay(shift: Shift, day: number, timeZone: string): Stretch {
  const startOfDayMin = minuteOfDay(shift.start);
  const endOfDayMin = minuteOfDay(shift.end);
  const endsNextDay = endOfDayMin <= startOfDayMin;
  return {
    startMin: minuteOfLocal(day, startOfDayMin, timeZone),
    endMin: minuteOfLocal(endsNextDay ? day + 1 : day, endOfDayMin, timeZone),
  };
}

/** Disjoint stretches with the largest number of operators among the shifts that cover them. */
function mostOperators(shifts: readonly OperatorStretch[]): OperatorStretch[] {
  const cuts = [...new Set(shifts.flatMap(({ startMin, endMin }) => [startMin, endMin]))].toSorted(
    (a, b) => a - b,
  );
  const stretches: OperatorStretch[] = [];
  let next = 0;
  let open: OperatorStretch[] = [];
  for (let index = 0; index + 1 < cuts.length; index += 1) {
    const startMin = cuts[index] ?? 0;
    const endMin = cuts[index + 1] ?? 0;
    for (let shift = shifts[next]; shift && shift.startMin <= startMin; shift = shifts[next]) {
      open.push(shift);
      next += 1;
    }
    open = open.filter((shift) => shift.endMin > startMin);
    if (open.length > 0) addStretch(stretches, startMin, endMin, Math.max(...open.map(operatorsOf)));
  }
  return stretches;
}

function addStretch(stretches: OperatorStretch[], startMin: number, endMin: number, operators: number): void {
  const last = stretches.at(-1);
  const goesOn = last && last.endMin === startMin && last.operators === operators;
  if (goesOn) stretches[stretches.length - 1] = { ...last, endMin };
  else stretches.push({ startMin, endMin, operators });
}

/** Day of the week by ISO 8601, Monday 1 to Sunday 7. Day 0, 1970-01-01, was a Thursday. */
function isoWeekday(dayNumber: number): number {
  const thursday = 3;
  return ((((dayNumber + thursday) % 7) + 7) % 7) + 1;
}

function operatorsOf(stretch: OperatorStretch): number {
  return stretch.operators;
}

function isLong(stretch: Stretch): boolean {
  return stretch.endMin > stretch.startMin;
}

function byStart(a: Stretch, b: Stretch): number {
  return a.startMin - b.startMin || a.endMin - b.endMin;
}
