import { latenessOf } from "./lateness.ts";
import type { Delivery, Lateness } from "./lateness.ts";
import type { PlanLine } from "../plan-problem.ts";
import { at } from "../at.ts";
import type { PlanSource } from "./plan-source.ts";

/** A line with its lateness in this plan. */
export interface LineOutcome {
  readonly line: PlanLine;
  readonly lateness: Lateness;
  readonly lateCost: number;
}

/** Lateness of every line of the problem and what it costs, by the schedule's builds and what is bought out. */
export function lineOutcomes({ problem, schedule }: PlanSource): LineOutcome[] {
  const deliveries: Delivery[][] = problem.lines.map(() => []);
  for (const { items, unloadEndMin } of schedule.builds) {
    for (const { optionIndex, copies } of items) {
      at(deliveries, at(problem.options, optionIndex).lineIndex).push({ copies, endMin: unloadEndMin });
    }
  }
  for (const { lineIndex, copies } of schedule.boughtOut) {
    const arriveMin = at(problem.lines, lineIndex).buyOut?.arriveMin;
    if (arriveMin !== undefined) at(deliveries, lineIndex).push({ copies, endMin: arriveMin });
  }
  return problem.lines.map((line, index) => {
    const lateness = latenessOf(line, at(deliveries, index));
    return { line, lateness, lateCost: lateness.chargedMin * line.lateCostPerMin };
  });
}
