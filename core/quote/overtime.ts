import { compileProblem } from "../plan/compile/compile-problem.ts";
import type { PlanProblem } from "../plan/plan-problem.ts";
import { withEarlierPlan } from "../plan/replan/with-earlier-plan.ts";
import type { Calendar, Shift } from "../shop/calendar.ts";
import { localDays, weekdayOf } from "../shop/local-time.ts";
import type { Shop } from "../shop/shop.ts";
import { minuteOfDay, overlappingShifts } from "../shop/week-of-shifts.ts";
import { MIN_PER_DAY, MIN_PER_H } from "../units/conversions.ts";
import { frozenSchedule, type QuoteDesk } from "./quote-desk.ts";

/** One more shift of one person on some days of a calendar. */
export interface Overtime {
  readonly calendarId: string;
  readonly shift: Shift;
  readonly words: string;
  /** hours of people from the start of the plan to a date */
  readonly hoursUntil: (untilMin: number) => number;
}

const LONGER_H = 3;
const WEEKEND: Shift = { days: [6], start: "06:00", end: "14:00", operators: 1 };

/**
 * Overtime that a calendar has room for: three hours after the last shift of its working days with one person, and a shift of
 * eight hours on Saturday where nobody works then. Example: Monday to Friday 06:00-14:00: 14:00-17:00 on these days, or Saturday.
 */
export function overtimesOf(shop: Shop, calendar: Calendar, fromMin: number): Overtime[] {
  const served = calendar.shifts.filter(({ operators }) => operators > 0);
  const days = [...new Set(served.flatMap((shift) => shift.days))].toSorted((a, b) => a - b);
  if (days.length === 0) return [];
  const last = served.toSorted((a, b) => minuteOfDay(b.end) - minuteOfDay(a.end))[0]!;
  const longer: Shift = { days: last.days, start: last.end, end: later(last.end, LONGER_H), operators: 1 };
  return [
    { shift: longer, words: `${LONGER_H} hours of overtime after ${last.end}` },
    { shift: WEEKEND, words: `a Saturday shift from ${WEEKEND.start} to ${WEEKEND.end}` },
  ]
    .filter(({ shift }) => hasRoom(calendar, shift))
    .map(({ shift, words }) => ({
      calendarId: calendar.id,
      shift,
      words: `${words} with one person (${calendar.name})`,
      hoursUntil: (untilMin) => hoursOf(shop, shift, fromMin, untilMin),
    }));
}

/**
 * The desk as it would be with that overtime: the same builds where they stand, more staffed time around them. Prices of the
 * linear program stay those without it. Example: a desk of 500 lines is opened again like this in 0.2 s.
 */
export function deskWith(desk: QuoteDesk, overtime: Overtime): QuoteDesk {
  const calendars = desk.shop.calendars.map((calendar) =>
    calendar.id === overtime.calendarId
      ? { ...calendar, shifts: [...calendar.shifts, overtime.shift] }
      : calendar,
  );
  const builds = desk.shop.builds.filter(({ state }) => state !== "planned");
  const shop = withEarlierPlan({ ...desk.shop, calendars, builds }, desk.standingPlan);
  const { problem, unplannable } = compileProblem(shop, desk.request);
  const open = { shop, request: desk.request, problem, unplannable };
  const standing = frozenSchedule(open, desk.standingPlan);
  return { ...desk, ...open, standing, bound: withoutPrices(desk, problem) };
}

/** Row prices belong to the classes and calendars of the problem that they were found for. */
function withoutPrices({ bound }: QuoteDesk, problem: PlanProblem): QuoteDesk["bound"] {
  const none = new Float64Array(problem.lines.length);
  return { ...bound, value: 0, model: null, linePrices: none, orderPrices: none };
}

function later(timeOfDay: string, hours: number): string {
  const minute = (minuteOfDay(timeOfDay) + hours * MIN_PER_H) % MIN_PER_DAY;
  return `${two(Math.floor(minute / MIN_PER_H))}:${two(minute % MIN_PER_H)}`;
}

function two(value: number): string {
  return String(value).padStart(2, "0");
}

function hasRoom(calendar: Calendar, shift: Shift): boolean {
  return overlappingShifts({ ...calendar, shifts: [...calendar.shifts, shift] }).length === 0;
}

/** Whole shifts that begin between two minutes. */
function hoursOf({ timeZone }: Shop, shift: Shift, fromMin: number, untilMin: number): number {
  const days = Math.max(1, Math.ceil((untilMin - fromMin) / MIN_PER_DAY) + 1);
  const worked = localDays(fromMin, days, timeZone).filter(({ date, startMin }) => {
    const beginMin = startMin + minuteOfDay(shift.start);
    return shift.days.includes(weekdayOf(date)) && beginMin >= fromMin && beginMin < untilMin;
  });
  const lengthMin = (minuteOfDay(shift.end) - minuteOfDay(shift.start) + MIN_PER_DAY) % MIN_PER_DAY;
  return (worked.length * (lengthMin || MIN_PER_DAY)) / MIN_PER_H;
}
