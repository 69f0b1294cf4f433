/** A hot bead laid on a layer of the same polymer. */
export interface Weld {
  readonly depositC: number;
  readonly belowC: number;
  /** the interface bonds while it is hotter than this */
  readonly bondC: number;
  readonly layerHeightMm: number;
  readonly diffusivityM2PerS: number;
}

/**
 * Temperature at which a hot bead and the layer below it meet in the first moment, degC: the mean, both being one material
 * (Carslaw and Jaeger, from memory). Example: 230 on 40 degC gives 135 degC.
 */
export function contactC(depositC: number, belowC: number): number {
  return (depositC + belowC) / 2;
}

/**
 * How long the interface under a fresh bead stays above the temperature at which it bonds, s. The bead has a still top and a
 * deep layer under it: T(t) = Ts + (Td - Ts)/2 erf(d / sqrt(a t)). 0: never hot enough; Infinity: the layer below is still
 * hot enough by itself. Seppala and Migler (2016, Additive Manufacturing 12:71-76, abstract) measured about 1 s.
 * Example: ABS, 230 on 40 degC, bonds above 105, 0.2 mm, a = 1.17e-7 m2/s: 0.68 s.
 */
export function weldS(weld: Weld): number {
  const rise = weld.depositC - weld.belowC;
  if (weld.bondC <= weld.belowC) return Number.POSITIVE_INFINITY;
  const share = (2 * (weld.bondC - weld.belowC)) / rise;
  if (rise <= 0 || share >= 1) return 0;
  const layerHeightM = weld.layerHeightMm / 1000;
  return layerHeightM ** 2 / (weld.diffusivityM2PerS * inverseErf(share) ** 2);
}

/** Inverse error function for 0 < y < 1: Winitzki's closed form (2008, from memory) with two Newton steps on `erf`. */
function inverseErf(y: number): number {
  const logTerm = Math.log1p(-y * y);
  const half = 2 / (Math.PI * WINITZKI) + logTerm / 2;
  let x = Math.sqrt(Math.sqrt(half * half - logTerm / WINITZKI) - half);
  for (let step = 0; step < 2; step++) {
    x -= ((erf(x) - y) * Math.sqrt(Math.PI)) / (2 * Math.exp(-x * x));
  }
  return x;
}

/** Error function by its Maclaurin series, x from 0 to about 4. */
function erf(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 120 && Math.abs(term) > 1e-17 * Math.abs(sum); n++) {
    term *= (-x * x) / n;
    sum += term / (2 * n + 1);
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}

const WINITZKI = 0.147;
