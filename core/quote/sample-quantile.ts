/**
 * Quantile of a sample in ascending order by linear interpolation: h = (n - 1) p, x[floor h] + (h - floor h) times the step
 * to the next ("type 7" of Hyndman and Fan 1996, Sample Quantiles in Statistical Packages, from memory).
 * Example: 1, 2, 3, 4, 10 at 0.9 give 7.6.
 */
export function sampleQuantile(ascending: ArrayLike<number>, share: number): number {
  if (!(share >= 0 && share <= 1)) throw new RangeError(`a quantile needs a share from 0 to 1, not ${share}`);
  const place = (ascending.length - 1) * share;
  const low = ascending[Math.floor(place)];
  const high = ascending[Math.ceil(place)];
  if (low === undefined || high === undefined) throw new RangeError("an empty sample has no quantile");
  return low + (place - Math.floor(place)) * (high - low);
}

/**
 * Standard error of a likelihood that was counted in a number of independent runs: sqrt(p (1 - p) / n).
 * Example: 0.9 in 2000 runs: 0.0067.
 */
export function likelihoodError(likelihood: number, runs: number): number {
  return Math.sqrt((likelihood * (1 - likelihood)) / runs);
}
