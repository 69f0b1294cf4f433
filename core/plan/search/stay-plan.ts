import type { PlanProblem } from "../plan-problem.ts";
import type { Schedule } from "../schedule.ts";
import { placeEarlier } from "./as-before.ts";
import { takeOutBroken } from "./promises.ts";
import { ALWAYS } from "./recreate.ts";
import { toSchedule } from "./saved-plan.ts";
import { SearchData } from "./search-data.ts";
import { ANYWHERE, emptyPlan, placeAll } from "./start-plans.ts";

/**
 * The plan of somebody who leaves every build of an earlier plan where it is, as far as that can be, and puts the rest around
 * them line by line at the best of all positions: what moving builds is measured against.
 */
export function stayPlan(problem: PlanProblem): Schedule {
  const trial = emptyPlan(new SearchData(problem));
  placeEarlier(trial);
  placeAll(trial, ANYWHERE, ALWAYS);
  takeOutBroken(trial);
  return toSchedule(trial.state);
}
