import { MIN_PER_DAY, MIN_PER_H } from "../units/conversions.ts";
import { dayNumberOf, instantOf, minuteOf } from "./instants.ts";

const WEEKDAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** What the clock on the wall shows at one minute. */
export interface LocalTime {
  /** "2026-11-30" */
  readonly date: string;
  /** "06:40" */
  readonly clock: string;
  /** offset from UTC where the clock shows this time twice in one night, such as "+02:00"; else empty */
  readonly whichOfTwo: string;
}

/**
 * The local time of one epoch minute. On the night on which clocks go back the same time comes twice: then the offset says
 * which one it is. Example: 2026-10-25T00:30Z in Berlin is 02:30, the first of two, "+02:00".
 */
export function localTime(epochMin: number, timeZone: string): LocalTime {
  const iso = instantOf(epochMin, timeZone);
  const wall = iso.slice(0, WALL_LENGTH);
  const twice = [-MIN_PER_H, MIN_PER_H].some((step) => instantOf(epochMin + step, timeZone).startsWith(wall));
  return { date: iso.slice(0, 10), clock: iso.slice(11, 16), whichOfTwo: twice ? offsetOf(iso) : "" };
}

/** One local day as a stretch of time: 23 or 25 hours long where the clocks change. */
export interface LocalDay {
  readonly date: string;
  readonly startMin: number;
  readonly endMin: number;
}

/**
 * Consecutive local days from the one that holds `fromMin`. Example: one day from 2026-10-25 in Berlin is 1500 min long.
 */
export function localDays(fromMin: number, days: number, timeZone: string): LocalDay[] {
  const first = dayNumberOf(localTime(fromMin, timeZone).date);
  return Array.from({ length: days }, (_, index) => {
    const date = dateOf(first + index);
    const startMin = minuteOf(`${date}T00:00`, timeZone);
    return { date, startMin, endMin: minuteOf(`${dateOf(first + index + 1)}T00:00`, timeZone) };
  });
}

/**
 * The first minute, not before an instant (epoch min, may be a fraction), at which local clocks show a full hour.
 * Example: 2026-11-30T05:10Z in Asia/Kolkata is 10:40; the next full hour there is 11:00, 05:30Z.
 */
export function nextFullHour(epochMin: number, timeZone: string): number {
  let minute = Math.ceil(epochMin);
  // Clocks that change by half an hour may pass a full hour over: two hours always hold one.
  while (localTime(minute, timeZone).clock.slice(3) !== "00") minute++;
  return minute;
}

/** Whole days from one local date to another. Example: 2026-11-30 to 2026-12-02 gives 2. */
export function daysBetween(fromDate: string, toDate: string): number {
  return dayNumberOf(toDate) - dayNumberOf(fromDate);
}

/** Day of the week of a date, ISO 8601. Example: 2026-11-30 is 1, a Monday. */
export function weekdayOf(date: string): number {
  const thursday = 3;
  return ((((dayNumberOf(date) + thursday) % 7) + 7) % 7) + 1;
}

/** Name of the day of the week. Example: 2026-11-30 gives Monday. */
export function weekdayName(date: string): string {
  return WEEKDAYS[weekdayOf(date) - 1] ?? "";
}

/** Day and month in words. Example: 2026-11-30 gives "30 November". */
export function dayAndMonth(date: string): string {
  const month = MONTHS[Number(date.slice(5, 7)) - 1] ?? "";
  return `${Number(date.slice(8, 10))} ${month}`;
}

/**
 * Week of a date by ISO 8601-1:2019: week 1 holds the year's first Thursday.
 * Example: 2027-01-03 is in week 53 of 2026.
 */
export function isoWeek(date: string): { readonly year: number; readonly week: number } {
  const thursday = dateOf(dayNumberOf(date) - weekdayOf(date) + 4);
  const year = Number(thursday.slice(0, 4));
  return { year, week: Math.floor(daysBetween(`${thursday.slice(0, 4)}-01-01`, thursday) / 7) + 1 };
}

const WALL_LENGTH = "2026-11-30T06:40".length;

function offsetOf(iso: string): string {
  return /(Z|[+-]\d{2}:\d{2})$/.exec(iso)?.[0] ?? "";
}

function dateOf(day: number): string {
  return instantOf(day * MIN_PER_DAY, "UTC").slice(0, 10);
}
