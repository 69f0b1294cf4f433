import type { Costing } from "../shop/costing.ts";
import type { Process } from "../shop/machine.ts";

/**
 * Hours to prepare tool paths once for a new part; `factor` times as long for one whose paths are hard to lay.
 * Example: filament 0.5 h, pellet 2 h, as the shop has set them; 3 h at a factor of 1.5.
 */
export function engineeringH(process: Process, costing: Costing, factor: number): number {
  return factor * (process === "filament" ? costing.engineeringFilamentH : costing.engineeringPelletH);
}

/**
 * Cost of the tool paths of one new part for one process, paid once whichever orders use them, without overhead:
 * hours x engineering rate. Example: 2 h at 60 per h cost 120.
 */
export function engineeringCost(process: Process, costing: Costing, factor: number): number {
  return engineeringH(process, costing, factor) * costing.engineeringPerH;
}
