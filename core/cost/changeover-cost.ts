import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import { feedstockCost } from "./feedstock-cost.ts";
import { timeCost } from "./time-cost.ts";

/** Feedstock and nozzle in a machine. */
export interface LoadedState {
  readonly feedstockId: string;
  readonly nozzleId: string;
}

/** What one changeover takes. */
export interface Changeover {
  readonly minutes: number;
  /** new feedstock purged, kg */
  readonly purgeKg: number;
}

/**
 * Minutes and purge from what is loaded (null: nothing) to the next state. Another grade of the same family takes
 * sameFamilyMin, another family newFamilyMin, an empty machine sameFamilyMin; each purges purgeKg of the new feedstock.
 * Another nozzle adds nozzleMin; an empty machine gets its nozzle within the loading; a nozzle alone purges nothing.
 * Example: PLA to PETG with another nozzle, 20 + 15 min: 35 min and one purge.
 */
export function changeoverBetween(
  machine: Machine,
  from: LoadedState | null,
  to: LoadedState,
  familyOf: (feedstockId: string) => string,
): Changeover {
  const { sameFamilyMin, newFamilyMin, nozzleMin, purgeKg } = machine.changeover;
  if (from === null) return { minutes: sameFamilyMin, purgeKg };
  const nozzleChangeMin = from.nozzleId === to.nozzleId ? 0 : nozzleMin;
  if (from.feedstockId === to.feedstockId) return { minutes: nozzleChangeMin, purgeKg: 0 };
  const sameFamily = familyOf(from.feedstockId) === familyOf(to.feedstockId);
  return { minutes: (sameFamily ? sameFamilyMin : newFamilyMin) + nozzleChangeMin, purgeKg };
}

/** Rates that price a changeover. */
export interface ChangeoverRates {
  readonly machinePerH: number;
  readonly labourPerH: number;
}

/**
 * Cost of one changeover, without overhead: minutes x (machine rate + labour rate) and the purge at the price of the new
 * feedstock with its waste. Example: 20 min at 6 + 36 per h and 0.05 kg at 21 per kg cost 14 + 1.05 = 15.05.
 */
export function changeoverCost(changeover: Changeover, rates: ChangeoverRates, to: Feedstock): number {
  const time = timeCost(changeover.minutes, rates.machinePerH + rates.labourPerH);
  return changeover.purgeKg > 0 ? time + feedstockCost(changeover.purgeKg, to) : time;
}
