import { tzOffset } from "@date-fns/tz";
import { toDate } from "date-fns";
import { MIN_PER_DAY, MIN_PER_H, MS_PER_MIN } from "../units/conversions.ts";

/**
 * Epoch minute of an instant, rounded down. With an offset or Z the time zone plays no part; without one the text is a local
 * time there: a time that the clocks skip moves forward by the skipped length, one that comes twice is the first of the two.
 * Example: "2026-03-29T02:30" in Europe/Berlin is 03:30 summer time, 01:30 UTC.
 */
export function minuteOf(instant: string, timeZone: string): number {
  const parts = partsOf(instant);
  if (!parts) throw new RangeError(`no such date and time: ${instant}`);
  if (parts.offsetMin !== null) return parts.wallMin - parts.offsetMin;
  return minuteOfWall(parts.wallMin, timeZone);
}

/**
 * The instant as ISO 8601 text with the zone's offset at that time.
 * Example: the epoch minute of 2026-11-30T05:00Z in Europe/Berlin gives "2026-11-30T06:00:00+01:00".
 */
export function instantOf(epochMin: number, timeZone: string): string {
  const wholeMin = Math.floor(epochMin);
  const offsetMin = offsetAt(wholeMin, timeZone);
  const wall = toDate((wholeMin + offsetMin) * MS_PER_MIN).toISOString();
  return wall.slice(0, "2026-11-30T06:00:00".length) + offsetText(offsetMin);
}

/** How often a clock on the wall shows a local time: skipped and twice happen where clocks change. */
export type LocalReading = "once" | "skipped" | "twice";

/**
 * Says whether a local time exists once, is skipped or comes twice. An instant with an offset is always "once".
 * Example: "2026-10-25T02:30" in Europe/Berlin is "twice".
 */
export function localReading(instant: string, timeZone: string): LocalReading {
  const parts = partsOf(instant);
  if (!parts) throw new RangeError(`no such date and time: ${instant}`);
  if (parts.offsetMin !== null) return "once";
  const count = realMinutes(parts.wallMin, timeZone).length;
  if (count === 0) return "skipped";
  return count === 1 ? "once" : "twice";
}

/** True where the text names a real date, time of day and offset. Example: "2026-02-30T08:00Z" gives false. */
export function isInstant(instant: string): boolean {
  return partsOf(instant) !== null;
}

/** True where the date exists. Examples: "2028-02-29" gives true, "2026-02-29" false. */
export function isDay(day: string): boolean {
  return isInstant(`${day}T00:00Z`);
}

/** True for a name of the IANA time zone database. Examples: "Europe/Berlin" gives true, "Berlin" and "+01:00" false. */
export function isTimeZone(timeZone: string): boolean {
  return /^[A-Za-z]/.test(timeZone) && Number.isFinite(tzOffset(timeZone, toDate(0)));
}

/** Days from 1970-01-01 to a date. Example: "1970-01-08" gives 7. */
export function dayNumberOf(day: string): number {
  return Math.floor(minuteOf(`${day}T00:00Z`, "UTC") / MIN_PER_DAY);
}

/** Local date of an epoch minute as days from 1970-01-01. Example: 1970-01-01T23:30Z in Europe/Berlin gives 1. */
export function localDayNumber(epochMin: number, timeZone: string): number {
  return Math.floor((epochMin + offsetAt(epochMin, timeZone)) / MIN_PER_DAY);
}

/**
 * Epoch minute at which a local clock shows so many minutes after the midnight that begins a day (given as days from
 * 1970-01-01). More than 1440 is the day after. Skipped and repeated times are read as `minuteOf` reads them.
 * Example: day 0 and 60 min in Europe/Berlin (then an hour ahead of UTC) gives 0.
 */
export function minuteOfLocal(dayNumber: number, minuteOfDay: number, timeZone: string): number {
  return minuteOfWall(dayNumber * MIN_PER_DAY + minuteOfDay, timeZone);
}

interface InstantParts {
  /** the date and time as written, as if it were UTC, whole min */
  readonly wallMin: number;
  readonly offsetMin: number | null;
}

const SHAPE = /^(\d{4}-\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2})(?:\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})?$/;

function partsOf(instant: string): InstantParts | null {
  const match = SHAPE.exec(instant);
  if (!match) return null;
  const [, month = "", day = "", hour = "", minute = "", second = "0", offset] = match;
  const monthStartMs = Date.parse(`${month}-01T00:00:00Z`);
  if (Number.isNaN(monthStartMs) || Number(day) < 1 || Number(day) > daysIn(month)) return null;
  const minuteOfDay = Number(hour) * MIN_PER_H + Number(minute);
  const isEndOfDay = minuteOfDay === MIN_PER_DAY && Number(second) === 0;
  if (Number(minute) > 59 || Number(second) > 59 || (minuteOfDay >= MIN_PER_DAY && !isEndOfDay)) return null;
  const offsetMin = offset === undefined ? null : offsetMinutes(offset);
  // Local times lie within a day of UTC everywhere.
  if (offsetMin !== null && Math.abs(offsetMin) >= MIN_PER_DAY) return null;
  const dayStartMin = monthStartMs / MS_PER_MIN + (Number(day) - 1) * MIN_PER_DAY;
  return { wallMin: dayStartMin + minuteOfDay, offsetMin };
}

/** Days of a month given as "2026-02". Example: "2028-02" gives 29. */
function daysIn(month: string): number {
  const [year = 0, number = 0] = month.split("-").map(Number);
  if (number !== 2) return [4, 6, 9, 11].includes(number) ? 30 : 31;
  const isLeapYear = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return isLeapYear ? 29 : 28;
}

function offsetMinutes(offset: string): number {
  if (offset === "Z") return 0;
  const minutes = Number(offset.slice(1, 3)) * MIN_PER_H + Number(offset.slice(4, 6));
  return offset.startsWith("-") ? -minutes : minutes;
}

function offsetText(offsetMin: number): string {
  const sign = offsetMin < 0 ? "-" : "+";
  const minutes = Math.abs(offsetMin);
  return `${sign}${twoDigits(Math.floor(minutes / MIN_PER_H))}:${twoDigits(minutes % MIN_PER_H)}`;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, "0");
}

function minuteOfWall(wallMin: number, timeZone: string): number {
  const [first] = realMinutes(wallMin, timeZone);
  return first ?? wallMin - offsetAt(wallMin - MIN_PER_DAY, timeZone);
}

/** The epoch minutes at which clocks show a wall time, earliest first. Zones lie within a day of UTC, so two offsets do. */
function realMinutes(wallMin: number, timeZone: string): number[] {
  const beforeMin = offsetAt(wallMin - MIN_PER_DAY, timeZone);
  const afterMin = offsetAt(wallMin + MIN_PER_DAY, timeZone);
  if (beforeMin === afterMin) return [wallMin - beforeMin];
  return [wallMin - beforeMin, wallMin - afterMin]
    .filter((epochMin) => epochMin + offsetAt(epochMin, timeZone) === wallMin)
    .toSorted((a, b) => a - b);
}

/**
 * Minutes that local clocks are ahead of UTC. Before about 1970 some zones had seconds: those are rounded. A zone is slow to
 * ask, so it is asked once for each midnight (UTC), and again only within a day on which its offset changes.
 */
function offsetAt(epochMin: number, timeZone: string): number {
  const day = Math.floor(epochMin / MIN_PER_DAY);
  const offsetMin = offsetAtMidnight(day, timeZone);
  return offsetMin === offsetAtMidnight(day + 1, timeZone) ? offsetMin : askedOffset(epochMin, timeZone);
}

const midnights = new Map<string, Map<number, number>>();

function offsetAtMidnight(day: number, timeZone: string): number {
  const known = midnights.get(timeZone) ?? new Map<number, number>();
  if (known.size === 0) midnights.set(timeZone, known);
  const before = known.get(day);
  if (before !== undefined) return before;
  const offsetMin = askedOffset(day * MIN_PER_DAY, timeZone);
  known.set(day, offsetMin);
  return offsetMin;
}

function askedOffset(epochMin: number, timeZone: string): number {
  const offsetMin = tzOffset(timeZone, toDate(epochMin * MS_PER_MIN));
  if (!Number.isFinite(offsetMin)) throw new RangeError(`no such time zone: ${timeZone}`);
  return Math.round(offsetMin);
}
