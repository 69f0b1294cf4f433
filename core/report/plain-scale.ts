import { roundSteps } from "./log-scale.ts";

/** A scale on which equal steps are equally wide. */
export interface PlainScale {
  readonly low: number;
  readonly high: number;
  /** place of a value, 0 at `low`, 1 at `high` */
  at(value: number): number;
  /** round values to name on an axis, 0 among them */
  readonly ticks: readonly number[];
}

/**
 * A scale from round number to round number that holds all values and 0. Example: -30 and 95 with about 5 steps give -50 to 100
 * by 50; 0 is at a third of it.
 */
export function plainScale(values: readonly number[], steps: number): PlainScale {
  const least = Math.min(0, ...values);
  const most = Math.max(0, ...values);
  const span = most - least || 1;
  const step = roundSteps(span, steps)[1] ?? span;
  const low = Math.floor(least / step + DUST) * step;
  const high = Math.max(low + step, Math.ceil(most / step - DUST) * step);
  const count = Math.round((high - low) / step);
  return {
    low,
    high,
    at: (value) => (value - low) / (high - low),
    ticks: Array.from({ length: count + 1 }, (_, index) => Number((low + index * step).toPrecision(6))),
  };
}

const DUST = 1e-9;

/** The unit in which amounts of a chart are written. */
export interface AmountUnit {
  readonly divisor: number;
  /** "thousand EUR" */
  readonly words: string;
}

/** Whole units up to ten thousand, else thousands, else millions. Example: 250 000 EUR: thousands. */
export function amountUnit(values: readonly number[], currency: string): AmountUnit {
  const largest = Math.max(0, ...values.map(Math.abs));
  if (largest >= 10_000_000) return { divisor: 1_000_000, words: `million ${currency}` };
  if (largest >= 10_000) return { divisor: 1000, words: `thousand ${currency}` };
  return { divisor: 1, words: currency };
}
