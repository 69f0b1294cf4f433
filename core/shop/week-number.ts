import { toDate } from "date-fns";

/*
 * Weeks are counted from the one that holds 1970-01-01 (a Thursday), Monday first as ISO 8601 has it: that week is number 0.
 * Days are days from 1970-01-01.
 */

const DAYS_PER_WEEK = 7;
/** From Monday, the first day, to Thursday, the day by which a week belongs to a year and a month. */
const TO_THURSDAY = 3;
const MS_PER_DAY = 86_400_000;

/** Number of the week that holds a day. Example: day 4, Monday 1970-01-05, is in week 1. */
export function weekOfDay(dayNumber: number): number {
  return Math.floor((dayNumber + TO_THURSDAY) / DAYS_PER_WEEK);
}

/** Day of the week: 0 Monday to 6 Sunday. Example: day 0, Thursday 1970-01-01, gives 3. */
export function dayOfWeek(dayNumber: number): number {
  return dayNumber + TO_THURSDAY - weekOfDay(dayNumber) * DAYS_PER_WEEK;
}

/** Month, 0 January to 11 December, in which the week's Thursday lies. Example: week 0 gives 0. */
export function monthOfWeek(week: number): number {
  return Number(dateText(week * DAYS_PER_WEEK).slice(5, 7)) - 1;
}

/**
 * Date of a day (0 Monday to 6 Sunday) of an ISO week; null where the year has no such week.
 * Example: year 2026, week 49, day 4 gives "2026-12-04"; week 53 of 2027 gives null.
 */
export function dayOfIsoWeek(year: number, week: number, day: number): string | null {
  if (week < 1 || week > 53) return null;
  // The 4th of January is always in week 1.
  const first = weekOfDay(Date.parse(`${String(year).padStart(4, "0")}-01-04T00:00:00Z`) / MS_PER_DAY);
  const number = first + week - 1;
  const thursday = dateText(number * DAYS_PER_WEEK);
  if (Number(thursday.slice(0, 4)) !== year) return null;
  return dateText(number * DAYS_PER_WEEK - TO_THURSDAY + day);
}

function dateText(dayNumber: number): string {
  return toDate(dayNumber * MS_PER_DAY)
    .toISOString()
    .slice(0, "1970-01-01".length);
}
