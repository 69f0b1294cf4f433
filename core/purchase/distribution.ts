import { likelihoodError, sampleQuantile } from "../quote/sample-quantile.ts";

/** What a figure may come to over scenarios. */
export interface Distribution {
  readonly count: number;
  readonly mean: number;
  /** standard error of the mean; 0 of a single scenario, which says nothing about it */
  readonly meanError: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  /** share of scenarios below 0 */
  readonly lossChance: number;
  readonly lossChanceError: number;
}

/**
 * Summary of a value over scenarios: quantiles as `sampleQuantile` has them, chance of loss as the share below 0.
 * Example: -10, 0, 10, 20, 30: P50 10, mean 10, chance of loss 0.2.
 */
export function distributionOf(values: readonly number[]): Distribution {
  const count = values.length;
  if (count === 0) throw new RangeError("no scenario, no distribution");
  const ascending = values.toSorted((a, b) => a - b);
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const lossChance = values.filter((value) => value < 0).length / count;
  return {
    count,
    mean,
    meanError: count < 2 ? 0 : Math.sqrt(squares / (count - 1) / count),
    p10: sampleQuantile(ascending, 0.1),
    p50: sampleQuantile(ascending, 0.5),
    p90: sampleQuantile(ascending, 0.9),
    lossChance,
    lossChanceError: likelihoodError(lossChance, count),
  };
}
