import type { PlanLine, PlanProblem } from "../plan-problem.ts";
import type { RowList } from "../engines/sparse-columns.ts";

/** One condition that builds of a line are whole: sum of `countOf(copies)` over its builds >= builds of `most` needed. */
export interface WholeBuilds {
  readonly row: number;
  /** copies in one build that the condition is made for */
  readonly most: number;
  /** copies left for the last build, 1 to most - 1 */
  readonly rest: number;
}

/** A line has at most so many of these conditions, those of its largest builds. */
const MOST_WHOLE = 3;

/**
 * Conditions of a line: for each largest build that some option allows and that does not divide the quantity evenly. Lines
 * that may share a platform need no build of their own, so they have none.
 */
export function addWholeBuilds(problem: PlanProblem, line: PlanLine, rows: RowList): WholeBuilds[] {
  const options = line.optionIndices.map((index) => problem.options[index]!);
  if (options.some((option) => option.mixKey >= 0)) return [];
  const sizes = [...new Set(options.map((option) => option.copiesMax))];
  return sizes
    .filter((most) => most < line.quantity && line.quantity % most > 0)
    .toSorted((a, b) => b - a)
    .slice(0, MOST_WHOLE)
    .map((most) => ({
      row: rows.add(Math.ceil(line.quantity / most), Infinity),
      most,
      rest: line.quantity % most,
    }));
}

/**
 * How much a build of so many copies counts: whole multiples of the size, and the remainder as a part of the rest, at most 1
 * (mixed-integer rounding of "sum of copies >= quantity"; Nemhauser & Wolsey 1988, from memory). Also for one copy bought or
 * missing. Example: quantity 20 with builds of 15 (rest 5): 15 copies count 1, 5 count 1, 3 count 0.6; two are needed.
 */
export function countOf({ most, rest }: WholeBuilds, copies: number): number {
  return Math.floor(copies / most) + Math.min(1, (copies % most) / rest);
}
