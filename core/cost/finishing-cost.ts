import type { Costing } from "../shop/costing.ts";
import type { Part } from "../shop/part.ts";
import { timeCost } from "./time-cost.ts";

/**
 * Cost of finishing one good copy: labour minutes at the labour rate and machining minutes at the machining rate.
 * Failed copies are not finished. Example: 6 min at 36 per h and 12 min at 50 per h cost 3.6 + 10 = 13.6.
 */
export function finishingCostPerCopy(part: Part, costing: Costing): number {
  const { labourMin, machiningMin, machiningPerH } = part.finishing;
  return timeCost(labourMin, costing.labourPerH) + timeCost(machiningMin, machiningPerH);
}
