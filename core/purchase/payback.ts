/**
 * Years until the sum of yearly cash flows, each discounted at a rate (0: plain payback), reaches zero for good, even within
 * a year; Infinity: never. Brigham and Ehrhardt (from memory): -1000, 500, 400, 300, 100 are paid back after 2.3333 years,
 * after 2.9533 at 10 %.
 */
export function paybackYears(flows: readonly number[], rate = 0): number {
  let sum = 0;
  let years = Number.POSITIVE_INFINITY;
  for (const [year, flow] of flows.entries()) {
    const discounted = flow / (1 + rate) ** year;
    if (sum < 0 && sum + discounted >= 0) years = year - 1 - sum / discounted;
    sum += discounted;
    if (year === 0 && sum >= 0) years = 0;
    if (sum < 0) years = Number.POSITIVE_INFINITY;
  }
  return years;
}
