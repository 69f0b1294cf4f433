import { normalQuantile } from "../quote/normal-law.ts";

/**
 * Smallest whole number below or at which more than a share of a Poisson law of a mean lies: how many orders come in a week when each
 * comes independently. It never falls when the share or the mean rises. Above a mean of 500 the normal law stands for it
 * (within 1 order or so). Example: mean 2, share 0.5 gives 2; share 0.13 gives 0, since e^-2 = 0.1353.
 */
export function poissonQuantile(share: number, mean: number): number {
  if (!(share >= 0 && share < 1) || !(mean >= 0))
    throw new RangeError(`no Poisson quantile at ${share} of mean ${mean}`);
  if (mean > LARGEST_MEAN) return normalApproximation(share, mean);
  let number = 0;
  let term = Math.exp(-mean);
  let sum = term;
  while (sum <= share && number < mean + MOST_DEVIATIONS * (Math.sqrt(mean) + 1)) {
    number += 1;
    term *= mean / number;
    sum += term;
  }
  return number;
}

function normalApproximation(share: number, mean: number): number {
  const clipped = Math.min(1 - TINY, Math.max(TINY, share));
  return Math.max(0, Math.round(mean + Math.sqrt(mean) * normalQuantile(clipped)));
}

const LARGEST_MEAN = 500;
const MOST_DEVIATIONS = 12;
const TINY = 1e-12;
