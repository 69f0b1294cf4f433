import { at } from "../at.ts";
import type { PlanLine, PlanProblem } from "../plan-problem.ts";

/** Copies that no builds of the sizes allowed add up to. */
export interface LeftOver {
  readonly copies: number;
  /** sizes of builds, "2" or "2 to 5", each once */
  readonly sizes: readonly string[];
  /** more copies in all that would leave none over */
  readonly more: number;
}

/**
 * What is left of a line when its builds are as many as can be: builds hold from the fewest to the most copies of their option.
 * Null where they can add up to the whole quantity. Example: 7 copies in builds of exactly 2 leave 1, and 1 more would leave none.
 */
export function leftOver(problem: PlanProblem, line: PlanLine): LeftOver | null {
  const ranges = line.optionIndices.map((index): Range => {
    const { copiesMin, platformCopies } = at(problem.options, index);
    return { least: Math.max(1, copiesMin), most: platformCopies };
  });
  if (line.buyOut || ranges.length === 0 || ranges.some(({ least }) => least === 1)) return null;
  const fewest = Math.min(...ranges.map(({ least }) => least));
  const canMake = totals(ranges, line.quantity + fewest);
  if (canMake[line.quantity] === 1) return null;
  let made = line.quantity;
  while (canMake[made] === 0) made--;
  let next = line.quantity;
  while (next < canMake.length && canMake[next] === 0) next++;
  return {
    copies: line.quantity - made,
    sizes: [...new Set(ranges.map(sizeText))],
    more: next - line.quantity,
  };
}

interface Range {
  readonly least: number;
  readonly most: number;
}

function sizeText({ least, most }: Range): string {
  return least === most ? String(least) : `${least} to ${most}`;
}

/** 1 for every number of copies up to `most` that builds add up to: one build of some size more than such a number. */
function totals(ranges: readonly Range[], most: number): Uint8Array {
  const canMake = new Uint8Array(most + 1);
  // Numbers up to and including an index that can be made.
  const counts = new Int32Array(most + 1);
  canMake[0] = 1;
  counts[0] = 1;
  for (let total = 1; total <= most; total++) {
    const isTotal = ranges.some(({ least, most: largest }) => {
      if (total < least) return false;
      const before = total - largest - 1;
      return counts[total - least]! > (before >= 0 ? counts[before]! : 0);
    });
    canMake[total] = isTotal ? 1 : 0;
    counts[total] = counts[total - 1]! + canMake[total]!;
  }
  return canMake;
}
