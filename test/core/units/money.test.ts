import { expect, test } from "vitest";
import { minorUnitDigits } from "../../../core/units/currency.ts";
import { roundMoney, roundToTotal } from "../../../core/units/money.ts";

function sumOf(amounts: readonly number[]): number {
  return amounts.reduce((sum, amount) => sum + amount, 0);
}

test("minor units follow ISO 4217, also where Intl does not (list from memory)", () => {
  for (const code of ["EUR", "USD", "GBP", "CHF", "HUF", "MGA"]) expect(minorUnitDigits(code)).toBe(2);
  for (const code of ["JPY", "KRW", "CLP", "ISK", "UGX", "VND"]) expect(minorUnitDigits(code)).toBe(0);
  for (const code of ["KWD", "BHD", "TND", "IQD"]) expect(minorUnitDigits(code)).toBe(3);
  for (const code of ["CLF", "UYW"]) expect(minorUnitDigits(code)).toBe(4);
});

test("1.005 rounds half up to 1.01, where rounding the binary value gives 1", () => {
  expect(Math.round(1.005 * 100) / 100).toBe(1);
  expect(roundMoney(1.005, "EUR")).toBe(1.01);
});

test("rounding is half up just below, at and just above the half", () => {
  expect(roundMoney(2.4999, "JPY")).toBe(2);
  expect(roundMoney(2.5, "JPY")).toBe(3);
  expect(roundMoney(2.5001, "JPY")).toBe(3);
  expect(roundMoney(-2.5, "JPY")).toBe(-2);
  expect(roundMoney(0.0005, "KWD")).toBe(0.001);
  expect(roundMoney(0.00049, "KWD")).toBe(0);
});

test("parts that are rounded add up to the rounded total", () => {
  expect(roundToTotal([1.005, 1.005, 1.005], "EUR")).toEqual([1.01, 1.01, 1]);
  expect(roundToTotal([100 / 3, 100 / 3, 100 / 3], "EUR")).toEqual([33.34, 33.33, 33.33]);
  expect(roundToTotal([10, 20], "EUR")).toEqual([10, 20]);
  expect(roundToTotal([], "EUR")).toEqual([]);
});

test("the missing minor units go to the largest remainders", () => {
  expect(roundToTotal([0.3, 0.6, 0.1], "JPY")).toEqual([0, 1, 0]);
  expect(roundToTotal([0.9, 0.7, 0.4], "JPY")).toEqual([1, 1, 0]);
});

test("seats by largest remainder (Hare quota): the common textbook example 47, 16, 15.8, 12, 6.1, 3.1 of 10 gives 5, 2, 1, 1, 1, 0", () => {
  const votes = [47, 16, 15.8, 12, 6.1, 3.1];
  expect(
    roundToTotal(
      votes.map((share) => share / 10),
      "JPY",
    ),
  ).toEqual([5, 2, 1, 1, 1, 0]);
});

test("negative parts are rounded to their total too", () => {
  const rounded = roundToTotal([-1.555, 3.333, -0.5], "EUR");
  expect(sumOf(rounded)).toBeCloseTo(1.28, 10);
  expect(rounded[0]).toBeCloseTo(-1.55, 10);
});

test("views of one total that sits on the half round alike when they pass the same total", () => {
  const oneWay = roundToTotal([0.1, 0.2, 0.705], "EUR", 1.005);
  const other = roundToTotal([0.705, 0.3], "EUR", 1.005);
  expect(sumOf(oneWay)).toBeCloseTo(1.01, 10);
  expect(sumOf(other)).toBeCloseTo(1.01, 10);
});
