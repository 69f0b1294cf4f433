import type { Move } from "./moves-order.ts";
import type { Walk } from "./walk.ts";

/** Moves tried, and rises of money among them that are enough. */
const MOST_TRIED = 2000;
const ENOUGH = 200;
/** The rise below which so many of all rises are. */
const QUANTILE = 0.25;

/**
 * A small but usual rise of the plan's money by one move: the lower quartile over some hundred moves tried and forgotten.
 * Temperatures are measured by it, so that they suit a plan whatever its money. 0 where no move makes it dearer.
 */
export function usualRise(walk: Walk, moves: readonly Move[]): number {
  const rises: number[] = [];
  for (let tried = 0; tried < MOST_TRIED && rises.length < ENOUGH; tried++) {
    const move = moves[walk.below(moves.length)]!;
    if (!move(walk)) continue;
    const rise = walk.trial.evaluate();
    walk.trial.discard();
    if (rise > 0 && rise < Infinity) rises.push(rise);
  }
  return rises.toSorted((a, b) => a - b)[Math.floor(rises.length * QUANTILE)] ?? 0;
}
