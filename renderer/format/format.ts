import { localTime } from "../../core/shop/local-time.ts";
import { isInstant, minuteOf } from "../../core/shop/instants.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { dateTimeText, durationText } from "../../core/shop/time-words.ts";
import { inFromMm, kgFromLb, lbFromKg, mmFromIn } from "../../core/units/conversions.ts";
import { minorUnitDigits } from "../../core/units/currency.ts";
import { roundMoney } from "../../core/units/money.ts";
import { type DateOrder, readInstant } from "./date-reading.ts";
import { editedNumber, numberText, readNumber } from "./number-words.ts";

/** What decides how everything is written and read; one change of it changes every number on the screen at once. */
export interface FormatRules {
  readonly currency: string;
  readonly timeZone: string;
  readonly length: Shop["display"]["length"];
  readonly mass: Shop["display"]["mass"];
  /** BCP 47 tag for numbers */
  readonly language: string;
  readonly dateOrder: DateOrder;
  /** the year that dates need not show, such as "2026" */
  readonly year: string;
}

/**
 * How values are written for people and read from them. Only here values are rounded; everything else keeps full precision
 * and one unit (mm, kg, min, the shop's currency).
 */
export interface Format extends FormatRules {
  /** at most so many decimals, zeros at the end dropped: "1,234.5" */
  number(value: number, decimals: number): string;
  /** exactly so many decimals: "1,234.50" */
  fixed(value: number, decimals: number): string;
  /** "1,234.50 EUR" */
  money(amount: number): string;
  /** the same without the currency, for a column whose head names it */
  amount(amount: number): string;
  /** never shown smaller than it is: 4.41 with one decimal gives "4.5 %" */
  percentAtMost(valuePct: number, decimals: number): string;
  /** with unit: "0.80 mm" or "0.0315 in" */
  lengthText(lengthMm: number): string;
  /** with unit: "12.50 kg" or "27.56 lb" */
  massText(massKg: number): string;
  /** with unit: "12.5 cm²" or "1.94 in²" */
  areaText(areaMm2: number): string;
  /** with unit: "8 cm³" or "0.488 in³" */
  volumeText(volumeMm3: number): string;
  /** for a column whose head names the unit, and for a field */
  lengthNumber(lengthMm: number): string;
  massNumber(massKg: number): string;
  /** "Mon 30 Nov 06:40", in the works' zone */
  dateTime(instant: string): string;
  /** "2026-11-30 06:40", as it is edited */
  editedDateTime(instant: string): string;
  /** "6 h 40 min" */
  duration(lengthMin: number): string;
  /** all digits, as it is edited */
  edited(value: number): string;
  editedLength(lengthMm: number): string;
  editedMass(massKg: number): string;
  /** null: not a number */
  readNumber(text: string): number | null;
  readLengthMm(text: string): number | null;
  readMassKg(text: string): number | null;
  /** null: no date. A date without a time gets the usual one, such as "16:00" */
  readInstant(text: string, usualTime: string): string | null;
}

const MM_PER_CM = 10;
const NARROW_SPACE = "\u202f";
/** Far more dates than a screen shows, far fewer than fill the memory. */
const MOST_REMEMBERED = 20_000;

/** A format that follows the rules. Example: rules with length "in" write 25.4 mm as "1.000 in". */
export function makeFormat(rules: FormatRules): Format {
  const { language, timeZone, currency } = rules;
  const fixed = (value: number, decimals: number): string => numberText(value, decimals, decimals, language);
  const amount = (value: number): string => fixed(roundMoney(value, currency), minorUnitDigits(currency));
  const read = (text: string): number | null => readNumber(text, language);
  return {
    ...rules,
    number: (value, decimals) => numberText(value, 0, decimals, language),
    fixed,
    money: (value) => `${amount(value)}${NARROW_SPACE}${currency}`,
    amount,
    percentAtMost: (value, decimals) => `${fixed(roundedUp(value, decimals), decimals)}${NARROW_SPACE}%`,
    ...units(rules, fixed),
    dateTime: remembered((instant: string) =>
      isInstant(instant)
        ? dateTimeText(localTime(minuteOf(instant, timeZone), timeZone), rules.year)
        : instant,
    ),
    editedDateTime: (instant) => {
      if (!isInstant(instant)) return instant;
      const { date, clock } = localTime(minuteOf(instant, timeZone), timeZone);
      return `${date} ${clock}`;
    },
    duration: durationText,
    edited: (value) => editedNumber(value, language),
    readNumber: read,
    readInstant: rememberedDate((text, usualTime) =>
      readInstant(text, { order: rules.dateOrder, timeZone, usualTime }),
    ),
  };
}

/** Writing and reading of lengths and masses in the units shown. */
function units(rules: FormatRules, fixed: (value: number, decimals: number) => string) {
  const { length, mass, language } = rules;
  const shownLength = (lengthMm: number): number => (length === "mm" ? lengthMm : inFromMm(lengthMm));
  const shownMass = (massKg: number): number => (mass === "kg" ? massKg : lbFromKg(massKg));
  const lengthNumber = (lengthMm: number): string =>
    fixed(shownLength(lengthMm), decimalsFor(shownLength(lengthMm), length === "mm" ? 2 : 4));
  const massNumber = (massKg: number): string => fixed(shownMass(massKg), decimalsFor(shownMass(massKg), 3));
  const read = (text: string, toOwn: (value: number) => number): number | null => {
    const value = readNumber(text.replace(/(mm|in|kg|lb|")\.?\s*$/i, ""), language);
    return value === null ? null : toOwn(value);
  };
  return {
    lengthNumber,
    massNumber,
    lengthText: (lengthMm: number): string => `${lengthNumber(lengthMm)}${NARROW_SPACE}${length}`,
    areaText: (areaMm2: number): string => powerText(areaMm2, 2, rules),
    volumeText: (volumeMm3: number): string => powerText(volumeMm3, 3, rules),
    massText: (massKg: number): string => `${massNumber(massKg)}${NARROW_SPACE}${mass}`,
    editedLength: (lengthMm: number): string => editedNumber(shownLength(lengthMm), language),
    editedMass: (massKg: number): string => editedNumber(shownMass(massKg), language),
    readLengthMm: (text: string): number | null =>
      read(text, (unitIn(text, "in", "mm") ?? length === "mm") ? (value) => value : mmFromIn),
    readMassKg: (text: string): number | null =>
      read(text, (unitIn(text, "lb", "kg") ?? mass === "kg") ? (value) => value : kgFromLb),
  };
}

/** An area or a volume in cm or in; example: 8000 mm to the third gives "8 cm³". */
function powerText(value: number, power: 2 | 3, { length, language }: FormatRules): string {
  const side = length === "mm" ? MM_PER_CM : mmFromIn(1);
  const shown = value / side ** power;
  const unit = `${length === "mm" ? "cm" : "in"}${power === 2 ? "²" : "³"}`;
  return `${numberText(shown, 0, decimalsFor(shown, 3), language)}${NARROW_SPACE}${unit}`;
}

/** A unit written behind the number counts more than the unit shown: true for the metric one, null for none. */
function unitIn(text: string, inch: string, metric: string): boolean | null {
  const end = text.trim().toLowerCase();
  if (end.endsWith(metric)) return true;
  return end.endsWith(inch) || end.endsWith('"') ? false : null;
}

function decimalsFor(value: number, most: number): number {
  const size = Math.abs(value);
  if (size >= 100) return Math.max(0, most - 2);
  return size >= 1 ? Math.max(1, most - 1) : most;
}

function roundedUp(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return Math.ceil(value * scale - 1e-12) / scale;
}

/** A table names few days many times. */
function rememberedDate(
  of: (text: string, usualTime: string) => string | null,
): (text: string, usualTime: string) => string | null {
  const known = new Map<string, string | null>();
  return (text, usualTime) => {
    const key = `${usualTime} ${text}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = of(text, usualTime);
    if (known.size < MOST_REMEMBERED) known.set(key, made);
    return made;
  };
}

/** The same instants are shown again and again, and a time zone is slow to ask. */
function remembered(of: (key: string) => string): (key: string) => string {
  const known = new Map<string, string>();
  return (key) => {
    const value = known.get(key) ?? of(key);
    if (known.size < MOST_REMEMBERED) known.set(key, value);
    return value;
  };
}
