import type { Calendar } from "../../../core/shop/calendar.ts";
import { minuteOfDay } from "../../../core/shop/week-of-shifts.ts";
import { MIN_PER_DAY } from "../../../core/units/conversions.ts";

/** A stretch of one weekday in which the same shifts go on. */
export interface StaffedPiece {
  /** Monday 1 to Sunday 7 */
  readonly day: number;
  readonly fromMin: number;
  readonly toMin: number;
  /** the most of the shifts that go on: they do not add up */
  readonly operators: number;
  /** places of the shifts in the calendar */
  readonly shifts: readonly number[];
}

const DAYS_PER_WEEK = 7;
const MIN_PER_WEEK = DAYS_PER_WEEK * MIN_PER_DAY;

/**
 * An ordinary week of a calendar by day, cut at midnight and wherever a shift starts or ends; what passes Sunday midnight comes
 * again on Monday. Example: one shift on Sunday 22:00 to 06:00: Monday 0 to 360 and Sunday 1320 to 1440.
 */
export function staffedPieces(calendar: Calendar): StaffedPiece[] {
  const stretches = calendar.shifts.flatMap((shift, place) =>
    [...new Set(shift.days)].flatMap((day) => {
      const start = (day - 1) * MIN_PER_DAY + minuteOfDay(shift.start);
      const length = minuteOfDay(shift.end) - minuteOfDay(shift.start);
      const end = start + (length > 0 ? length : length + MIN_PER_DAY);
      return [
        { start, end, place, operators: shift.operators },
        { start: start - MIN_PER_WEEK, end: end - MIN_PER_WEEK, place, operators: shift.operators },
      ];
    }),
  );
  const cuts = new Set(Array.from({ length: DAYS_PER_WEEK + 1 }, (_, day) => day * MIN_PER_DAY));
  for (const { start, end } of stretches) {
    for (const at of [start, end]) if (at > 0 && at < MIN_PER_WEEK) cuts.add(at);
  }
  const edges = [...cuts].toSorted((a, b) => a - b);
  return edges.slice(0, -1).flatMap((from, index): StaffedPiece[] => {
    const to = edges[index + 1] ?? from;
    const going = stretches.filter(({ start, end }) => start <= from && end >= to);
    if (going.length === 0) return [];
    const day = Math.floor(from / MIN_PER_DAY);
    return [
      {
        day: day + 1,
        fromMin: from - day * MIN_PER_DAY,
        toMin: to - day * MIN_PER_DAY,
        operators: Math.max(...going.map(({ operators }) => operators)),
        shifts: [...new Set(going.map(({ place }) => place))].toSorted((a, b) => a - b),
      },
    ];
  });
}

/** Staffed hours of the week: those with at least one operator. */
export function staffedHours(pieces: readonly StaffedPiece[]): number {
  return pieces.reduce(
    (sum, { fromMin, toMin, operators }) => (operators > 0 ? sum + (toMin - fromMin) / 60 : sum),
    0,
  );
}

/** Names of weekdays, Monday first. */
export const DAY_NAMES = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

/** Minutes of a day as a time of day. Example: 390 gives "06:30". */
export function clockOf(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
}
