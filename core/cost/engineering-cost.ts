import type { Costing } from "../shop/costing.ts";
import type { Process } from "../shop/machine.ts";

/** Hours to prepare tool paths once for a new part. Example: filament 0.5 h, pellet 2 h, as the shop has set them. */
export function engineeringH(process: Process, costing: Costing): number {
  return process === "filament" ? costing.engineeringFilamentH : costing.engineeringPelletH;
}

/**
 * Cost of the tool paths of one new part for one process, paid once whichever orders use them, without overhead:
 * hours x engineering rate. Example: 2 h at 60 per h cost 120.
 */
export function engineeringCost(process: Process, costing: Costing): number {
  return engineeringH(process, costing) * costing.engineeringPerH;
}
