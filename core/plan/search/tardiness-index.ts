/** What the index of one waiting build is made of; times in one unit, cost by that unit. */
export interface WaitingBuild {
  /** cost of one unit of time late */
  readonly lateCost: number;
  readonly run: number;
  /** due date less run time less now */
  readonly slack: number;
  /** set-up it would need now */
  readonly setUp: number;
}

/** Look-ahead and scales of the index. */
export interface IndexScale {
  /** mean run time of the waiting builds */
  readonly meanRun: number;
  /** mean set-up; 0 where there are none */
  readonly meanSetUp: number;
  /** look-ahead for lateness, about 1 to 4 */
  readonly k1: number;
  /** look-ahead for set-ups, about 0.1 to 2 */
  readonly k2: number;
}

/**
 * Apparent tardiness cost with set-ups: (w / p) exp(-max(slack, 0) / (k1 mean p)) exp(-s / (k2 mean s)); the build with the
 * largest index goes next. Sources, from memory: Vepsalainen & Morton 1987 (without set-ups); Lee, Bhaskaran & Pinedo 1997
 * (with). Example: w 4, p 12, slack 4, mean p 11, k1 2, no set-ups: 0.277918.
 */
export function tardinessIndex(build: WaitingBuild, scale: IndexScale): number {
  const urgency = Math.exp(-Math.max(0, build.slack) / (scale.k1 * scale.meanRun));
  const ease = scale.meanSetUp > 0 ? Math.exp(-build.setUp / (scale.k2 * scale.meanSetUp)) : 1;
  return (build.lateCost / build.run) * urgency * ease;
}
