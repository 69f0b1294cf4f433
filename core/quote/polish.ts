import type { PlanProblem } from "../plan/plan-problem.ts";
import { copiesLeftOut, type Schedule } from "../plan/schedule.ts";
import { Improver } from "../plan/search/improve.ts";
import { takeOutBroken } from "../plan/search/promises.ts";
import { toSchedule } from "../plan/search/saved-plan.ts";
import { SearchData } from "../plan/search/search-data.ts";
import { emptyPlan } from "../plan/search/start-plans.ts";
import { seededRandom } from "../units/random.ts";
import { freeze } from "./frozen-plan.ts";

/** How long to polish: steps of the search, the same for equal seeds, and who may stop it. */
export interface PolishEffort {
  readonly steps: number;
  readonly seed: number;
  readonly stopped?: () => boolean;
}

/**
 * Improves a schedule by so many steps of the search, from exactly where it stands. The answer never costs more, and equal seeds
 * and steps give equal answers. Example: 20 000 steps take a schedule of 623 builds from 54 357 to 54 301.
 */
export function polish(problem: PlanProblem, from: Schedule, effort: PolishEffort): Schedule {
  const trial = emptyPlan(new SearchData(problem));
  freeze(trial, from);
  if (trial.state.activeCount === 0) return from;
  let done = 0;
  const improver = new Improver(trial, seededRandom(effort.seed));
  const progress = (steps: number): number => {
    done += steps;
    return effort.stopped?.() === true ? 1 : done / Math.max(1, effort.steps);
  };
  improver.run(progress, 1, () => {});
  takeOutBroken(trial);
  const polished = toSchedule(trial.state);
  return copiesLeftOut(polished) <= copiesLeftOut(from) && polished.cost < from.cost ? polished : from;
}
