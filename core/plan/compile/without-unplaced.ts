import type { PlanLine, PlanProblem } from "../plan-problem.ts";
import type { Schedule } from "../schedule.ts";

/**
 * The same problem for just the copies that a schedule holds, so that a bound for it can be compared with the schedule's
 * cost. Lines keep their number; a line with no copies left has quantity 0.
 */
export function withoutUnplaced(problem: PlanProblem, schedule: Schedule): PlanProblem {
  const missing = new Map(schedule.unplaced.map(({ lineIndex, copies }) => [lineIndex, copies]));
  const lines = problem.lines.map(
    (line): PlanLine => ({ ...line, quantity: line.quantity - (missing.get(line.index) ?? 0) }),
  );
  return { ...problem, lines };
}
