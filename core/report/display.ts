import type { Shop } from "../shop/shop.ts";
import { minuteOf } from "../shop/instants.ts";
import { dayAndMonth, localTime, weekdayName } from "../shop/local-time.ts";
import { clockText, dateTimeText } from "../shop/time-words.ts";
import { inFromMm, lbFromKg } from "../units/conversions.ts";
import { minorUnitDigits } from "../units/currency.ts";
import { roundMoney } from "../units/money.ts";
import { remembered } from "../units/remembered.ts";

/**
 * How numbers are written for people. Everything else in the program keeps full precision; here, and only here, values are
 * rounded, and every value carries its one unit. Digits are grouped by a narrow space (ISO 80000-1), the decimal sign is a
 * point, the minus sign a real one.
 */
export interface Display {
  /** "1 234.50 EUR" */
  money(amount: number): string;
  /** the same without the currency, for a column whose head names it */
  amount(amount: number): string;
  /** "12.50 kg" or "27.56 lb" */
  mass(massKg: number): string;
  /** "0.80 mm" or "0.0315 in" */
  length(lengthMm: number): string;
  /** a number with at most so many decimals, zeros at the end dropped */
  number(value: number, decimals: number): string;
  /** "Mon 30 Nov 06:40"; the year too where it is not the year of the plan */
  dateTime(epochMin: number): string;
  /** "06:40" */
  clock(epochMin: number): string;
  /** "Monday 30 November 2026" */
  day(date: string): string;
  /** "2026-11-30" */
  date(epochMin: number): string;
  /** epoch minute of an instant as documents write it */
  minute(instant: string): number;
}

/**
 * A display that follows one shop: its currency, units and time zone, and the year in which the plan starts. With no plan
 * every date shows its year.
 */
export function displayOf(
  shop: Pick<Shop, "currency" | "timeZone" | "display">,
  plannedFrom?: string,
): Display {
  const { currency, timeZone } = shop;
  // The same times are shown again and again, and a time zone is slow to ask.
  const timeAt = remembered((epochMin: number) => localTime(epochMin, timeZone));
  const minute = remembered((instant: string) => minuteOf(instant, timeZone));
  const year = plannedFrom === undefined ? NO_YEAR : timeAt(minute(plannedFrom)).date.slice(0, 4);
  return {
    money: (amount) => `${moneyDigits(amount, currency)}${NARROW_SPACE}${currency}`,
    amount: (amount) => moneyDigits(amount, currency),
    mass: (massKg) => massText(massKg, shop.display.mass),
    length: (lengthMm) => lengthText(lengthMm, shop.display.length),
    number: numberText,
    dateTime: (epochMin) => dateTimeText(timeAt(epochMin), year),
    clock: (epochMin) => clockText(timeAt(epochMin)),
    day: (date) => `${weekdayName(date)} ${dayAndMonth(date)} ${date.slice(0, 4)}`,
    date: (epochMin) => timeAt(epochMin).date,
    minute,
  };
}

/**
 * A number with a fixed count of decimals, rounded half away from zero, digits grouped from the thousands on.
 * Example: 12345.675 with 2 decimals gives "12 345.68".
 */
export function fixedText(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return value > 0 ? "unlimited" : "unknown";
  const scale = 10 ** decimals;
  const scaled = Math.floor(Math.abs(value) * scale * (1 + RELATIVE_DUST) + 0.5);
  const [whole = "0", fraction] = (scaled / scale).toFixed(decimals).split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, NARROW_SPACE);
  return (value < 0 && scaled > 0 ? MINUS : "") + grouped + (fraction ? `.${fraction}` : "");
}

/** A share in per cent that is never shown smaller than it is. Example: 4.41 with one decimal gives "4.5 %". */
export function percentAtMost(valuePct: number, decimals: number): string {
  const scale = 10 ** decimals;
  return `${fixedText(Math.ceil(valuePct * scale - RELATIVE_DUST) / scale, decimals)}${NARROW_SPACE}%`;
}

/** A count with its noun. Example: 1, "order" gives "1 order"; 3 gives "3 orders". */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${fixedText(count, 0)} ${count === 1 ? one : many}`;
}

/** The end of a span for people: the clock alone where it ends on the day it starts, else the day as well. */
export function untilText(fromMin: number, toMin: number, display: Display): string {
  const isSameDay = display.date(fromMin) === display.date(toMin);
  return isSameDay ? display.clock(toMin) : display.dateTime(toMin);
}

const NARROW_SPACE = "\u202f";
const MINUS = "\u2212";
const NO_YEAR = "none";
/** Binary fractions such as 1.005 lie a hair below what was meant. */
const RELATIVE_DUST = 1e-12;

function moneyDigits(amount: number, currency: string): string {
  return fixedText(roundMoney(amount, currency), minorUnitDigits(currency));
}

/** Three significant digits or more at every size that a works weighs: grams for a clip, whole kilograms for a mould. */
function massText(massKg: number, unit: "kg" | "lb"): string {
  const mass = unit === "kg" ? massKg : lbFromKg(massKg);
  return `${fixedText(mass, decimalsFor(mass, 3))}${NARROW_SPACE}${unit}`;
}

function lengthText(lengthMm: number, unit: "mm" | "in"): string {
  const length = unit === "mm" ? lengthMm : inFromMm(lengthMm);
  return `${fixedText(length, decimalsFor(length, unit === "mm" ? 2 : 4))}${NARROW_SPACE}${unit}`;
}

function decimalsFor(value: number, most: number): number {
  const size = Math.abs(value);
  if (size >= 100) return Math.max(0, most - 2);
  return size >= 1 ? Math.max(1, most - 1) : most;
}

function numberText(value: number, decimals: number): string {
  const text = fixedText(value, decimals);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}
