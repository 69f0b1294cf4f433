import { instantOf, isDay, isInstant, minuteOf } from "../../core/shop/instants.ts";
import { MIN_PER_DAY } from "../../core/units/conversions.ts";

/** In which order day, month and year stand where a date does not say itself. */
export type DateOrder = "dmy" | "mdy" | "ymd";

export interface DateRules {
  readonly order: DateOrder;
  readonly timeZone: string;
  /** for a date without a time, such as "16:00" */
  readonly usualTime: string;
}

/**
 * Reads a date and time as people and spreadsheets write them and gives the instant with the zone's offset; null where it is
 * none. Points mean day, month, year; a year in front means year, month, day; with slashes or dashes the order decides.
 * Example: "1.12.2026 8:30" in Europe/Berlin gives "2026-12-01T08:30:00+01:00".
 */
export function readInstant(text: string, { order, timeZone, usualTime }: DateRules): string | null {
  const bare = text.trim().replace(/[\s\u00a0\u202f]+/g, " ");
  if (isInstant(bare)) return instantOf(minuteOf(bare, timeZone), timeZone);
  const spaced = bare.replace(/^(\d{4}-\d{1,2}-\d{1,2})T(?=\d)/, "$1 ");
  const time = timeIn(spaced);
  const day = dayIn(time.rest, order);
  if (day === null || !isDay(day) || time.clock === "wrong") return null;
  const local = `${day}T${time.clock ?? usualTime}`;
  return isInstant(local) ? instantOf(minuteOf(local, timeZone), timeZone) : null;
}

/** True where day and month could be exchanged: "03/04/2026" yes, "30/04/2026" and "3.4.2026" no. */
export function isAmbiguousDate(text: string): boolean {
  const match = /^\D{0,12}?(\d{1,2})([/-])(\d{1,2})\2\d{2,4}\b/.exec(text.trim());
  if (!match) return false;
  const [, first, , second] = match;
  return Number(first) <= 12 && Number(second) <= 12 && Number(first) !== Number(second);
}

/** The orders that all the texts allow: one with a day above 12 in a place rules an order out. */
export function possibleOrders(texts: readonly string[]): DateOrder[] {
  const orders: DateOrder[] = ["dmy", "mdy"];
  return orders.filter((order) =>
    texts.every((text) => !isTwoPlaced(text) || dayIn(timeIn(text.trim()).rest, order) !== null),
  );
}

function isTwoPlaced(text: string): boolean {
  return /^\D{0,12}?\d{1,2}[/-]\d{1,2}[/-]\d{2,4}\b/.test(text.trim());
}

interface TimeFound {
  /** "08:30"; null: none is given */
  readonly clock: string | null | "wrong";
  readonly rest: string;
}

function timeIn(text: string): TimeFound {
  const match =
    /(?:^|[ ,])(\d{1,2})(?::(\d{2}))?(?::\d{2}(?:\.\d+)?)? ?([ap])\.?m\.?$|[ ,](\d{1,2}):(\d{2})(?::\d{2}(?:\.\d+)?)?$/i.exec(
      text,
    );
  if (!match) return { clock: null, rest: text };
  const [whole, halfHour, halfMinute, half, hour, minute] = match;
  const rest = text.slice(0, text.length - whole.length).trim();
  if (half === undefined) return { clock: clockOf(Number(hour), Number(minute), 24), rest };
  const base = Number(halfHour) % 12;
  const isInRange = Number(halfHour) >= 1 && Number(halfHour) <= 12;
  const clock = clockOf(base + (half.toLowerCase() === "p" ? 12 : 0), Number(halfMinute ?? 0), 24);
  return { clock: isInRange ? clock : "wrong", rest };
}

function clockOf(hour: number, minute: number, most: number): string | "wrong" {
  if (hour > most || minute > 59 || (hour === most && minute > 0)) return "wrong";
  return `${String(hour).padStart(2, "0")}:${String(minute).padStart(2, "0")}`;
}

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"] as const;

/** The date as "2026-12-01", or null. A weekday in front is passed over. */
function dayIn(text: string, order: DateOrder): string | null {
  const american = /^([a-z]{3,9})\.? (\d{1,2}),? (\d{4})$/i.exec(text.replace(/,$/, ""));
  if (american && monthNumber(american[1]) !== "0")
    return dayText(american[3], monthNumber(american[1]), american[2]);
  const bare = text
    .replace(/^[a-z]{2,9}\.?,? (?=\d)/i, "")
    .replace(/,$/, "")
    .trim();
  const serial = /^\d{5}(?:\.\d+)?$/.exec(bare);
  if (serial) return serialDay(Number(bare));
  const year = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(bare);
  if (year) return dayText(year[1], year[2], year[3]);
  const words = /^(\d{1,2})[ .-]+([a-z]{3,9})\.?[ ,-]+(\d{2,4})$/i.exec(bare);
  if (words) return dayText(words[3], monthNumber(words[2]), words[1]);
  const three = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{2,4})$/.exec(bare);
  if (!three) return null;
  const isMonthFirst = three[2] !== "." && order === "mdy";
  return isMonthFirst ? dayText(three[4], three[1], three[3]) : dayText(three[4], three[3], three[1]);
}

/** Days of a spreadsheet, counted so that 1970-01-01 is 25569 (ECMA-376, 1900 date system). */
function serialDay(serial: number): string | null {
  const EPOCH_DAY = 25_569;
  if (serial < EPOCH_DAY || serial > 80_000) return null;
  return instantOf((Math.floor(serial) - EPOCH_DAY) * MIN_PER_DAY, "UTC").slice(0, 10);
}

function monthNumber(word = ""): string {
  return String(MONTHS.findIndex((month) => word.toLowerCase().startsWith(month)) + 1);
}

function dayText(year = "", month = "", day = ""): string | null {
  if (year.length === 3) return null;
  const whole = year.length === 2 ? `20${year}` : year;
  const text = `${whole}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && isDay(text) ? text : null;
}
