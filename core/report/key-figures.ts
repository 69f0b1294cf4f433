/** What one machine did in a period: times in hours, quantities in pieces. Terms and letters of ISO 22400-2. */
export interface WorkUnitRecord {
  /** planned busy time (PBT): planned operation time less planned down time */
  readonly plannedBusyH: number;
  /** actual unit busy time (AUBT): in use for an order */
  readonly busyH: number;
  /** actual production time (APT): adding value */
  readonly productionH: number;
  /** actual unit set-up time (ASUT) */
  readonly setUpH: number;
  /** actual unit delay time (ADET): malfunctions and stops within an order */
  readonly delayH: number;
  /** planned run time per piece (PRU) */
  readonly plannedRunPerPieceH: number;
  /** produced quantity (PQ) */
  readonly produced: number;
  /** good quantity (GQ) */
  readonly good: number;
}

/** Key figures as ratios; null where there is nothing to divide by. */
export interface KeyFigures {
  readonly allocationEfficiency: number | null;
  readonly utilizationEfficiency: number | null;
  readonly availability: number | null;
  readonly effectiveness: number | null;
  readonly qualityRatio: number | null;
  /** availability x effectiveness x quality ratio */
  readonly oeeIndex: number | null;
  /** as the OEE index, with set-up counted as time in use */
  readonly neeIndex: number | null;
  readonly setUpRatio: number | null;
  readonly technicalEfficiency: number | null;
}

/**
 * Key figures of one work unit after ISO 22400-2:2014 (formulas as in the ISO22400-2 ontology of Helmut Schmidt
 * University). Effectiveness, and with it the indices, may exceed 1. On-time delivery is not among the standard's figures.
 * Example: planned busy 120 h, busy 96, production 84, set-up 6, delay 6; 1.9 h a piece, 40 made, 38 good: allocation 0.8,
 * utilization 0.875, availability 0.7, OEE 0.601667.
 */
export function keyFigures(record: WorkUnitRecord): KeyFigures {
  const { plannedBusyH, busyH, productionH, setUpH, delayH, plannedRunPerPieceH, produced, good } = record;
  const availability = ratio(productionH, plannedBusyH);
  const effectiveness = ratio(plannedRunPerPieceH * produced, productionH);
  const qualityRatio = ratio(good, produced);
  const processingH = productionH + setUpH;
  return {
    allocationEfficiency: ratio(busyH, plannedBusyH),
    utilizationEfficiency: ratio(productionH, busyH),
    availability,
    effectiveness,
    qualityRatio,
    oeeIndex: product(availability, effectiveness, qualityRatio),
    neeIndex: product(ratio(processingH, plannedBusyH), effectiveness, qualityRatio),
    setUpRatio: ratio(setUpH, processingH),
    technicalEfficiency: ratio(productionH, productionH + delayH),
  };
}

function ratio(part: number, whole: number): number | null {
  return whole > 0 ? part / whole : null;
}

function product(...factors: readonly (number | null)[]): number | null {
  return factors.reduce((result, factor) => (result === null || factor === null ? null : result * factor), 1);
}
