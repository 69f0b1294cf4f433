import { MIN_PER_H } from "../units/conversions.ts";
import { dayAndMonth, type LocalTime, weekdayName } from "./local-time.ts";

/**
 * A length of time in hours and minutes; of more than a day in days and hours, rounded to the hour.
 * Examples: 400 gives "6 h 40 min", 7500 gives "5 d 5 h".
 */
export function durationText(lengthMin: number): string {
  const whole = Math.round(Math.abs(lengthMin));
  const sign = lengthMin < 0 && whole > 0 ? MINUS : "";
  if (whole > H_PER_DAY * MIN_PER_H) {
    const hours = Math.round(whole / MIN_PER_H);
    return sign + joined(Math.floor(hours / H_PER_DAY), "d", hours % H_PER_DAY, "h");
  }
  const hours = Math.floor(whole / MIN_PER_H);
  return sign + (hours > 0 ? joined(hours, "h", whole % MIN_PER_H, "min") : `${whole} min`);
}

/**
 * Weekday, date and time as people say them; the year too where it is not the one given.
 * Example: 2026-12-07 at 15:07 gives "Mon 7 Dec 15:07" in a plan of 2026.
 */
export function dateTimeText(time: LocalTime, year: string): string {
  const [dayOfMonth = "", month = ""] = dayAndMonth(time.date).split(" ");
  const shown = `${weekdayName(time.date).slice(0, 3)} ${dayOfMonth} ${month.slice(0, 3)}`;
  const otherYear = time.date.startsWith(year) ? "" : ` ${time.date.slice(0, 4)}`;
  return `${shown}${otherYear} ${clockText(time)}`;
}

/** The time of day; in the hour that comes twice also which of the two. Example: "02:30 (+01:00)". */
export function clockText({ clock, whichOfTwo }: LocalTime): string {
  return whichOfTwo ? `${clock} (${whichOfTwo})` : clock;
}

const H_PER_DAY = 24;
const MINUS = "\u2212";

function joined(large: number, largeUnit: string, small: number, smallUnit: string): string {
  return small === 0 ? `${large} ${largeUnit}` : `${large} ${largeUnit} ${small} ${smallUnit}`;
}
