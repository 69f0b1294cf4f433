import { minorUnitDigits } from "./currency.ts";

/**
 * Rounds amounts to minor units so that the rounded parts add up to the rounded total (largest remainder).
 * Amounts are in major units; negative amounts are allowed; equal remainders go to the earlier part.
 * `total` is their unrounded sum; views of one total pass the same number, so that all round it alike.
 * Example: shares 1.005, 1.005, 1.005 of 3.015 in EUR give 1.01, 1.01, 1.00 (total 3.02).
 */
export function roundToTotal(
  amounts: readonly number[],
  currency: string,
  total: number = amounts.reduce((sum, amount) => sum + amount, 0),
): number[] {
  const perMajor = 10 ** minorUnitDigits(currency);
  const scaled = amounts.map((amount) => amount * perMajor);
  const floors = scaled.map((value) => Math.floor(value + TINY));
  const missing = roundHalfUp(total * perMajor) - floors.reduce((sum, value) => sum + value, 0);
  const order = scaled
    .map((value, index) => ({ index, remainder: value - (floors[index] ?? 0) }))
    .toSorted((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (const { index } of order.slice(0, missing)) floors[index] = (floors[index] ?? 0) + 1;
  return floors.map((value) => value / perMajor);
}

/**
 * Rounds one amount in major units half up to the currency's minor unit.
 * Example: 1.005 EUR gives 1.01 (the binary value lies just below; a tolerance of 1e-7 minor units closes it).
 */
export function roundMoney(amount: number, currency: string): number {
  const perMajor = 10 ** minorUnitDigits(currency);
  return roundHalfUp(amount * perMajor) / perMajor;
}

const TINY = 1e-7;

function roundHalfUp(value: number): number {
  return Math.floor(value + 0.5 + TINY);
}
