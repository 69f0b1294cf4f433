import { depositionMin } from "../estimate/print-time.ts";
import type { RouteCopies } from "../estimate/print-time.ts";

/**
 * Each item's share of what a build takes as a whole (time, set-up, unload, failure): its own deposition time over that of
 * all items. Parts are laid down one after another, so an item is charged its own time, and what all have in common
 * (warm-up, cool-down, set-up, unload) in the same proportion. Shares add up to 1.
 * Example: depositions of 6, 3 and 1 h share 120 as 72, 36 and 12.
 */
export function buildShares(items: readonly RouteCopies[]): number[] {
  const minutes = items.map(depositionMin);
  const total = minutes.reduce((sum, value) => sum + value, 0);
  if (!(total > 0)) throw new RangeError("a build without deposition time cannot be shared among its items");
  return minutes.map((value) => value / total);
}
