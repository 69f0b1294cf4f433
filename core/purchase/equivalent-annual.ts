import { netPresentValue } from "./present-value.ts";

/**
 * Share of a sum to pay each year for so many years to pay it off with interest: i / (1 - (1 + i)^-n), 1/n without interest.
 * Example: 10 % and 10 years: 0.162745.
 */
export function capitalRecovery(rate: number, years: number): number {
  if (!(rate > -1) || !(years > 0))
    throw new RangeError(`no capital recovery at ${rate} over ${years} years`);
  if (rate === 0) return 1 / years;
  return rate / -Math.expm1(-years * Math.log1p(rate));
}

/**
 * The same amount at each year's end that is worth as much as flows one year apart: compares machines of unequal lives that
 * are replaced by their like. Brealey, Myers and Allen (from memory): costs 15, 5, 5, 5 at 6 % are 10.61 a year, 10, 6, 6
 * are 11.45.
 */
export function equivalentAnnual(flows: readonly number[], rate: number): number {
  return netPresentValue(flows, rate) * capitalRecovery(rate, flows.length - 1);
}
