import type { PlanLine } from "../plan-problem.ts";

/** Copies that leave the machine, or arrive from elsewhere, at one time. */
export interface Delivery {
  readonly copies: number;
  readonly endMin: number;
}

/** When a line is finished and how late. */
export interface Lateness {
  /** last copy; null where no copy is planned */
  readonly finishedMin: number | null;
  /** last copy after the due date, min */
  readonly lateMin: number;
  /** what the line's cost per minute applies to: where copies count by themselves, their mean over all ordered */
  readonly chargedMin: number;
}

/**
 * Lateness of one line from its deliveries. Example: due at 100, 3 of 4 ordered copies at 90 and 1 at 140: late by 40 min,
 * charged 40 min, or 10 min where each copy counts by itself.
 */
export function latenessOf(line: PlanLine, deliveries: readonly Delivery[]): Lateness {
  if (deliveries.length === 0) return { finishedMin: null, lateMin: 0, chargedMin: 0 };
  const finishedMin = Math.max(...deliveries.map((delivery) => delivery.endMin));
  const lateMin = Math.max(0, finishedMin - line.dueMin);
  if (!line.perPiece) return { finishedMin, lateMin, chargedMin: lateMin };
  const copyMin = deliveries.reduce(
    (sum, { copies, endMin }) => sum + copies * Math.max(0, endMin - line.dueMin),
    0,
  );
  return { finishedMin, lateMin, chargedMin: copyMin / line.orderedCopies };
}
