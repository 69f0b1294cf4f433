/**
 * Share of a standard normal law below z: Phi(z) = 1/2 + phi(z) (z + z^3/3 + z^5/(3 5) + ...) (Marsaglia 2004, Evaluating
 * the Normal Distribution, from memory). Beyond 8 the share is 0 or 1 to all digits. Example: z 1.281552 gives 0.9.
 */
export function normalShareBelow(z: number): number {
  if (Number.isNaN(z)) throw new RangeError("the share below NaN does not exist");
  if (z < -FARTHEST) return 0;
  if (z > FARTHEST) return 1;
  let sum = z;
  let term = z;
  for (let n = 3; Math.abs(term) > 1e-17 * Math.abs(sum); n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return 0.5 + sum * normalDensity(z);
}

/** Density of a standard normal law. Example: at 0 it is 0.398942. */
function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * The z below which a share of a standard normal law lies, share strictly between 0 and 1: the rational start of Abramowitz
 * and Stegun (1964, 26.2.23, from memory), sharpened by Newton's steps. Example: share 0.9 gives 1.281552.
 */
export function normalQuantile(share: number): number {
  if (!(share > 0 && share < 1))
    throw new RangeError(`a quantile needs a share between 0 and 1, not ${share}`);
  const tail = Math.min(share, 1 - share);
  let z = -startQuantile(tail);
  for (let step = 0; step < 3; step++) z -= (normalShareBelow(z) - tail) / normalDensity(z);
  return share < 0.5 ? z : -z;
}

/** Within 4.5e-4 of the distance from the middle beyond which a tail of at most one half lies. */
function startQuantile(tail: number): number {
  const t = Math.sqrt(-2 * Math.log(tail));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return t - above / below;
}

const FARTHEST = 8;
