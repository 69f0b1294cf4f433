import { MIN_PER_DAY, MIN_PER_H } from "../units/conversions.ts";
import type { Calendar, Shift } from "./calendar.ts";

const MIN_PER_WEEK = 7 * MIN_PER_DAY;

/** One shift on one day, in minutes from Monday 00:00; the end may lie in the next week. */
interface WeekStretch {
  readonly startMin: number;
  readonly endMin: number;
  readonly shiftIndex: number;
}

/**
 * Pairs of shifts (by place in the list) that share time in an ordinary week; a shift that names a day twice pairs with
 * itself. Example: 06:00-14:00 and 13:00-22:00 on a Monday give one pair, 06:00-14:00 and 14:00-22:00 none.
 */
export function overlappingShifts(calendar: Calendar): readonly (readonly [number, number])[] {
  const pairs = new Map<string, readonly [number, number]>();
  const stretches = twoWeeks(calendar);
  for (const [index, stretch] of stretches.entries()) {
    for (let later = index + 1; later < stretches.length; later += 1) {
      const other = stretches[later];
      if (!other || other.startMin >= stretch.endMin) break;
      const pair = [stretch.shiftIndex, other.shiftIndex].toSorted((a, b) => a - b) as [number, number];
      pairs.set(pair.join(), pair);
    }
  }
  return [...pairs.values()];
}

/**
 * Longest time without a gap in which somebody is there in an ordinary week, min; Infinity where somebody always is, 0 where
 * nobody ever is. Shifts without operators do not count. Example: 06:00-14:00 and 14:00-22:00 give 960.
 */
export function longestStaffedMin(calendar: Calendar): number {
  const served = { ...calendar, shifts: calendar.shifts.filter((shift) => shift.operators > 0) };
  let longestMin = 0;
  let startMin = -1;
  let endMin = -1;
  for (const stretch of twoWeeks(served)) {
    if (stretch.startMin > endMin) startMin = stretch.startMin;
    endMin = Math.max(endMin, stretch.endMin);
    longestMin = Math.max(longestMin, endMin - startMin);
  }
  return longestMin >= MIN_PER_WEEK ? Infinity : longestMin;
}

/** Length of a shift in minutes, on a day without a change of clocks. Example: 22:00 to 06:00 gives 480. */
function shiftMin(shift: Shift): number {
  const length = minuteOfDay(shift.end) - minuteOfDay(shift.start);
  return length > 0 ? length : length + MIN_PER_DAY;
}

/** True where a shift ends when it starts and so lasts a whole day. */
export function lastsAllDay(shift: Shift): boolean {
  return shift.start === shift.end;
}

/** All shifts of one week and the next, by start, so that what passes Sunday midnight meets Monday. */
function twoWeeks(calendar: Calendar): WeekStretch[] {
  const week = calendar.shifts.flatMap((shift, shiftIndex) =>
    shift.days.map((day) => {
      const startMin = (day - 1) * MIN_PER_DAY + minuteOfDay(shift.start);
      return { startMin, endMin: startMin + shiftMin(shift), shiftIndex };
    }),
  );
  const next = week.map((stretch) => ({
    ...stretch,
    startMin: stretch.startMin + MIN_PER_WEEK,
    endMin: stretch.endMin + MIN_PER_WEEK,
  }));
  return [...week, ...next].toSorted((a, b) => a.startMin - b.startMin || a.endMin - b.endMin);
}

/** Minutes from midnight. Example: "06:30" gives 390. */
export function minuteOfDay(timeOfDay: string): number {
  return Number(timeOfDay.slice(0, 2)) * MIN_PER_H + Number(timeOfDay.slice(3, 5));
}
