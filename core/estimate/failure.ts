/** What a build takes when each failure loses the work so far and it starts again from the first layer. */
export interface RestartOutlook {
  /** mean time until the build succeeds, failed attempts included, h */
  readonly expectedH: number;
  /** mean number of failed attempts */
  readonly expectedFailures: number;
  /** mean share of the build that a failed attempt has done when it fails, 0 to 1 */
  readonly lostShare: number;
  /** variance of the time until it succeeds, h2 */
  readonly varianceH2: number;
}

/**
 * Outlook of a build of `runH` hours with failures at random, `failuresPerH` a printing hour: E[T] = (e^(rt) - 1) / r,
 * e^(rt) - 1 failures, each after 1/r - t / (e^(rt) - 1) hours on average. The law is "restart" of Asmussen, Fiorini,
 * Lipsky, Rolski and Sheahan (2008, Math. Oper. Res. 33:932-944), abstract; formulas derived here from one line,
 * E = t e^(-rt) + integral of (x + E) r e^(-rx). Example: 0.01 per h and 100 h give 171.83 h and 1.718 failures.
 */
export function restartOutlook(failuresPerH: number, runH: number): RestartOutlook {
  const load = failuresPerH * runH;
  if (load < SMALL_LOAD) return smallOutlook(load, runH);
  const failures = Math.expm1(load);
  const meanToFailureH = 1 / failuresPerH - runH / failures;
  return {
    expectedH: failures / failuresPerH,
    expectedFailures: failures,
    lostShare: meanToFailureH / runH,
    varianceH2: (Math.exp(2 * load) - 2 * load * Math.exp(load) - 1) / failuresPerH ** 2,
  };
}

/** First terms of the series, where the closed forms lose all their digits. */
function smallOutlook(load: number, runH: number): RestartOutlook {
  return {
    expectedH: runH * (1 + load / 2),
    expectedFailures: load * (1 + load / 2),
    lostShare: 1 / 2 - load / 12,
    varianceH2: (load * runH ** 2) / 3,
  };
}

const SMALL_LOAD = 1e-4;

/**
 * Failures a printing hour that make a share of builds of one length fail, 1/h.
 * Example: 5 % of builds of 10 h give 0.0051293 per h.
 */
export function failuresPerHFromShare(failedShare: number, runH: number): number {
  return -Math.log1p(-failedShare) / runH;
}
