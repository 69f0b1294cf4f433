import type { CostLine } from "./cost-line.ts";

/** A cost line with its share of a total that it is part of. */
export interface OpenLine extends CostLine {
  /** amount / total, from 0 to 1 */
  readonly share: number;
}

/**
 * An amount's share of a total; 0 where the total is nothing. Example: 15 of 60 gives 0.25.
 */
export function shareOf(amount: number, total: number): number {
  return total === 0 ? 0 : amount / total;
}

/**
 * Opens a total into its lines with their shares, largest first; equal ones stay in order.
 * Example: lines of 5 and 15 give 15 (0.75), 5 (0.25).
 */
export function openTotal(lines: readonly CostLine[]): OpenLine[] {
  const total = lines.reduce((sum, line) => sum + line.amount, 0);
  return lines
    .map((line) => ({ ...line, share: shareOf(line.amount, total) }))
    .toSorted((a, b) => b.amount - a.amount);
}
