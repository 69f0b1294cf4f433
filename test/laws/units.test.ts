import { array, assert, constantFrom, double, integer, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { instantOf, minuteOf } from "../../core/shop/instants.ts";
import { inFromMm, kgFromLb, lbFromKg, mmFromIn } from "../../core/units/conversions.ts";
import { minorUnitDigits } from "../../core/units/currency.ts";
import { roundMoney, roundToTotal } from "../../core/units/money.ts";

const ROUNDING = 1e-14;
const amount = double({ min: -1e9, max: 1e9, noNaN: true });
const currency = constantFrom("EUR", "JPY", "KWD", "CLF", "HUF", "USD");

/** What two roundings may leave of a number: the last digits, or the smallest numbers that exist. */
function dust(value: number): number {
  return Math.max(ROUNDING * Math.abs(value), 64 * Number.MIN_VALUE);
}

describe("a number taken to another unit and back is the same", () => {
  test("length", () => {
    assert(
      property(amount, (lengthMm) => {
        expect(Math.abs(mmFromIn(inFromMm(lengthMm)) - lengthMm)).toBeLessThanOrEqual(dust(lengthMm));
      }),
      { seed: 1 },
    );
  });

  test("mass", () => {
    assert(
      property(amount, (massKg) => {
        expect(Math.abs(kgFromLb(lbFromKg(massKg)) - massKg)).toBeLessThanOrEqual(dust(massKg));
      }),
      { seed: 2 },
    );
  });

  test("an instant, through its text in any zone, summer time included", () => {
    const zone = constantFrom(
      "Europe/Berlin",
      "America/New_York",
      "Asia/Kolkata",
      "Australia/Lord_Howe",
      "UTC",
    );
    const minute = integer({ min: 26_000_000, max: 36_000_000 });
    assert(
      property(minute, zone, (epochMin, timeZone) => {
        expect(minuteOf(instantOf(epochMin, timeZone), timeZone)).toBe(epochMin);
      }),
      { seed: 3, numRuns: 500 },
    );
  });
});

describe("money", () => {
  test("rounded once is rounded for good", () => {
    assert(
      property(double({ min: -1e6, max: 1e6, noNaN: true }), currency, (value, code) => {
        const rounded = roundMoney(value, code);
        expect(roundMoney(rounded, code)).toBe(rounded);
        expect(Math.abs(rounded - value)).toBeLessThanOrEqual(0.5 * 10 ** -minorUnitDigits(code) + 1e-6);
      }),
      { seed: 4 },
    );
  });

  test("rounded in parts adds up to the rounded total, each part within one minor unit", () => {
    const parts = array(double({ min: -1e5, max: 1e5, noNaN: true }), { minLength: 1, maxLength: 12 });
    assert(
      property(parts, currency, (amounts, code) => {
        const rounded = roundToTotal(amounts, code);
        const minorUnit = 10 ** -minorUnitDigits(code);
        const sum = rounded.reduce((total, value) => total + value, 0);
        const total = amounts.reduce((all, value) => all + value, 0);
        expect(Math.abs(sum - roundMoney(total, code))).toBeLessThan(0.5 * minorUnit);
        rounded.forEach((value, index) => {
          expect(Math.abs(value - (amounts[index] ?? 0))).toBeLessThanOrEqual(minorUnit + 1e-6);
        });
      }),
      { seed: 5 },
    );
  });
});
