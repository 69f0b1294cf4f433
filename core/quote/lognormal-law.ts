import { normalQuantile, normalShareBelow } from "./normal-law.ts";

/** A length of time that cannot be negative and is skewed to the long side: its logarithm is normal. */
export interface Lognormal {
  /** mean of the logarithm */
  readonly mu: number;
  /** standard deviation of the logarithm */
  readonly sigma: number;
}

/**
 * The lognormal law of a mean and a coefficient of variation (standard deviation over mean): sigma^2 = ln(1 + cv^2),
 * mu = ln(mean) - sigma^2 / 2. Example: mean 20 h and 0.3 give mu 2.952643 and sigma 0.293560.
 */
export function lognormalOf(mean: number, variation: number): Lognormal {
  if (!(mean > 0) || !(variation >= 0)) throw new RangeError(`no lognormal law of ${mean} and ${variation}`);
  const variance = Math.log1p(variation ** 2);
  return { mu: Math.log(mean) - variance / 2, sigma: Math.sqrt(variance) };
}

/** Time that is kept with a likelihood. Example: mean 20 h, variation 0.3, likelihood 0.9: 27.9064 h. */
export function lognormalQuantile({ mu, sigma }: Lognormal, likelihood: number): number {
  return Math.exp(mu + sigma * normalQuantile(likelihood));
}

/** Likelihood that the time is at most so long. Example: mean 20 h, variation 0.3, at most 24 h: 0.7787. */
export function lognormalShareBelow({ mu, sigma }: Lognormal, time: number): number {
  if (time <= 0) return 0;
  const above = Math.log(time) - mu;
  if (sigma === 0) return above >= 0 ? 1 : 0;
  return normalShareBelow(above / sigma);
}

/**
 * Mean time beyond a date, 0 counted where it is kept: m Phi(a) - d Phi(a - sigma), a = (mu + sigma^2 - ln d) / sigma.
 * Example: mean 20 h, variation 0.3, date 26 h: 0.6756 h.
 */
export function lognormalMeanExcess({ mu, sigma }: Lognormal, date: number): number {
  const mean = Math.exp(mu + sigma ** 2 / 2);
  if (date <= 0) return mean - date;
  if (sigma === 0) return Math.max(0, mean - date);
  const a = (mu + sigma ** 2 - Math.log(date)) / sigma;
  return mean * normalShareBelow(a) - date * normalShareBelow(a - sigma);
}

/**
 * One lognormal law with the mean and the variance of a sum of independent ones (Fenton 1960, The Sum of Log-Normal
 * Probability Distributions in Scatter Transmission Systems, from memory). Close near the middle, less so far out.
 * Example: two laws of mean 20 h and 0.3 give a mean of 40 h and a variation of 0.3 / sqrt(2).
 */
export function lognormalSum(laws: readonly Lognormal[]): Lognormal {
  if (laws.length === 0) throw new RangeError("a sum of no times has no law");
  let mean = 0;
  let variance = 0;
  for (const { mu, sigma } of laws) {
    const own = Math.exp(mu + sigma ** 2 / 2);
    mean += own;
    variance += own ** 2 * Math.expm1(sigma ** 2);
  }
  return lognormalOf(mean, Math.sqrt(variance) / mean);
}
