import { type DatedFlow, datedPresentValue, netPresentValue } from "./present-value.ts";

/**
 * Every rate above -100 % and below 100 000 % at which yearly cash flows are worth nothing, in ascending order; none: they have no internal
 * rate; several: it is not unique, use the modified rate. Roots are bracketed on a grid of ln(1 + rate) and bisected, so a
 * root that only touches zero may be missed. Numpy-financial's documentation: -250000, 100000, 150000, 200000, 250000,
 * 300000 give 0.5672303344358536. Lorie and Savage's pump (from memory): -1600, 10000, -10000 give 0.25 and 4.
 */
export function ratesOfReturn(flows: readonly number[]): number[] {
  if (flows.every((flow) => flow === 0)) return [];
  return zeros((rate) => netPresentValue(flows, rate));
}

/** The same for flows on days. The example of `datedPresentValue` gives 0.373363. */
export function datedRatesOfReturn(flows: readonly DatedFlow[]): number[] {
  return zeros((rate) => datedPresentValue(flows, rate));
}

function zeros(valueAt: (rate: number) => number): number[] {
  const found: number[] = [];
  let low = -LOWEST_LOG;
  let lowValue = valueAt(Math.expm1(low));
  for (let step = 1; step <= STEPS; step++) {
    const high = -LOWEST_LOG + (step / STEPS) * (LOWEST_LOG + HIGHEST_LOG);
    const highValue = valueAt(Math.expm1(high));
    if (lowValue === 0) found.push(Math.expm1(low));
    else if (lowValue * highValue < 0) found.push(Math.expm1(bisect(valueAt, low, high, lowValue)));
    low = high;
    lowValue = highValue;
  }
  return found;
}

function bisect(
  valueAt: (rate: number) => number,
  fromLog: number,
  toLog: number,
  fromValue: number,
): number {
  let low = fromLog;
  let high = toLog;
  for (let step = 0; step < BISECTIONS; step++) {
    const middle = (low + high) / 2;
    if (valueAt(Math.expm1(middle)) * fromValue > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** From ln(1 - 99.9 %) to ln(1 + 100 000 %). */
const LOWEST_LOG = Math.log(1000);
const HIGHEST_LOG = Math.log(1001);
const STEPS = 2000;
const BISECTIONS = 60;

/**
 * Modified rate of return: inflows reinvested at one rate until the end over outflows financed at another, as a yearly rate.
 * null without an outflow or an inflow. Brigham and Ehrhardt (from memory): -1000, 500, 400, 300, 100 at 10 % give 0.121063.
 */
export function modifiedRateOfReturn(
  flows: readonly number[],
  financeRate: number,
  reinvestRate: number,
): number | null {
  const years = flows.length - 1;
  const inflows = flows.map((flow) => Math.max(0, flow));
  const outflows = flows.map((flow) => Math.min(0, flow));
  const paid = -netPresentValue(outflows, financeRate);
  const gained = netPresentValue(inflows, reinvestRate) * (1 + reinvestRate) ** years;
  if (years < 1 || paid === 0 || gained === 0) return null;
  return (gained / paid) ** (1 / years) - 1;
}
