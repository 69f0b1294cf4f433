import type { PlanProblem } from "../plan/plan-problem.ts";
import type { Schedule } from "../plan/schedule.ts";
import { type Delivery, type Lateness, latenessOf } from "../plan/write/lateness.ts";

/** When every line of a schedule is finished and how late. Example: a line of which no copy is planned: null and 0. */
export function lineEnds(problem: PlanProblem, schedule: Pick<Schedule, "builds" | "boughtOut">): Lateness[] {
  const deliveries: Delivery[][] = problem.lines.map(() => []);
  for (const { items, unloadEndMin } of schedule.builds) {
    for (const { optionIndex, copies } of items) {
      const line = problem.options[optionIndex]?.lineIndex ?? -1;
      deliveries[line]?.push({ copies, endMin: unloadEndMin });
    }
  }
  for (const { lineIndex, copies } of schedule.boughtOut) {
    const arriveMin = problem.lines[lineIndex]?.buyOut?.arriveMin;
    if (arriveMin !== undefined) deliveries[lineIndex]?.push({ copies, endMin: arriveMin });
  }
  return problem.lines.map((line, index) => latenessOf(line, deliveries[index] ?? []));
}
