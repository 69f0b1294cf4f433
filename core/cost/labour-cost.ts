import type { Costing } from "../shop/costing.ts";
import type { Machine } from "../shop/machine.ts";
import { timeCost } from "./time-cost.ts";

/** An operator's work on one build besides any changeover: set-up and unload, min. Example: 10 + 5 min give 15 min. */
export function operatorMin(machine: Machine): number {
  return machine.setUpMin + machine.unloadMin;
}

/**
 * Cost of the operator's work on one build: (set-up + unload) x labour rate. The machine's own rate holds no wage, since
 * it runs with nobody at it. Example: 10 + 5 min at 36 per h cost 9.
 */
export function labourCost(machine: Machine, costing: Costing): number {
  return timeCost(operatorMin(machine), costing.labourPerH);
}
