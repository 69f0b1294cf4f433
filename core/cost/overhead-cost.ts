import type { Costing } from "../shop/costing.ts";

/**
 * Overhead on a cost of making (feedstock, machine, labour, engineering, changeover, finishing, expected failure). Buying
 * out and lateness carry none. Example: 10 % on 120 gives 12.
 */
export function overheadCost(makingCost: number, costing: Costing): number {
  return (makingCost * costing.overheadPct) / 100;
}
