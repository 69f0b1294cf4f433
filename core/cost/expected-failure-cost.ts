import { restartOutlook } from "../estimate/failure.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import { timeCost } from "./time-cost.ts";

/** A machine's failures per hour of running. Example: 5 failures in 1000 h give 0.005 per h. */
export function hazardPerH(failuresPer1000H: number): number {
  return failuresPer1000H / 1000;
}

/**
 * Mean number of failed attempts before one success, each begun again from nothing; the model is `restartOutlook`.
 * Example: 0.005 per h and a run of 40 h give 0.221403.
 */
export function expectedFailures(hazard: number, runH: number): number {
  return restartOutlook(hazard, runH).expectedFailures;
}

/**
 * Mean time lost to failed attempts, noticed at once, as a share of one good run. A failed attempt has laid down feedstock
 * in proportion to its time, so the same share prices scrap.
 * Example: 0.005 per h and a run of 40 h give 0.107014, so 44.2806 h in all.
 */
export function lostShare(hazard: number, runH: number): number {
  return runH > 0 ? restartOutlook(hazard, runH).expectedH / runH - 1 : 0;
}

/** What one build puts at risk. */
export interface BuildAtRisk {
  readonly hazardPerH: number;
  readonly runMin: number;
  /** set-up and unload that every failed attempt takes again, min */
  readonly operatorMin: number;
  readonly machinePerH: number;
  readonly labourPerH: number;
  /** feedstock of all its copies, money */
  readonly feedstockCost: number;
}

/**
 * Expected cost of failed attempts at one build, without overhead: lost machine time, set-up and unload again for every
 * failure (machine and operator), and scrapped feedstock with its waste.
 * Example: 0.005 per h, a run of 40 h, 15 min of operator, 6 and 36 per h, feedstock 21: lost 0.107014 x 240 = 25.6833,
 * again 0.221403 x 10.5 = 2.3247, scrap 0.107014 x 21 = 2.2473; in all 30.2553.
 */
export function expectedFailureCost(build: BuildAtRisk): number {
  const runH = build.runMin / MIN_PER_H;
  const again = timeCost(build.operatorMin, build.machinePerH + build.labourPerH);
  const run = timeCost(build.runMin, build.machinePerH);
  const lost = lostShare(build.hazardPerH, runH) * (run + build.feedstockCost);
  return lost + expectedFailures(build.hazardPerH, runH) * again;
}
