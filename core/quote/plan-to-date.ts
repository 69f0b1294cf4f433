import type { Unplannable } from "../plan/compile/compile-problem.ts";
import { feedstockNeeds } from "../plan/write/feedstock-needs.ts";
import { fixedBuilds } from "../plan/write/fixed-builds.ts";
import { openPlanSource } from "../plan/write/plan-source.ts";
import { writeBuilds } from "../plan/write/planned-builds.ts";
import { replanFacts } from "../plan/write/replan-facts.ts";
import { unplacedCopies } from "../plan/write/unplanned-reasons.ts";
import type { PlanProblem } from "../plan/plan-problem.ts";
import type { Schedule } from "../plan/schedule.ts";
import type { Shop } from "../shop/shop.ts";
import type { PlanAhead } from "./dates/placed-builds.ts";

/** A schedule and what it belongs to. */
export interface ScheduledWork {
  readonly shop: Shop;
  readonly problem: PlanProblem;
  readonly schedule: Schedule;
  readonly unplannable: readonly Unplannable[];
}

/**
 * What a simulation reads of a schedule's document and nothing else, so that dates need not wait until the whole document is
 * written and checked. Example: a schedule of 625 builds in 0.15 s, its checked document in 0.7 s; the dates of both are equal.
 */
export function planToDate({ shop, problem, schedule, unplannable }: ScheduledWork): PlanAhead {
  const source = openPlanSource(shop, problem, schedule);
  const planned = writeBuilds(source, replanFacts(source).kept);
  const builds = [...fixedBuilds(source), ...planned.map(({ document }) => document)];
  return {
    plannedFrom: source.instant(problem.startMin),
    builds,
    boughtOut: schedule.boughtOut.map(({ lineIndex, copies }) => {
      const line = problem.lines[lineIndex];
      if (!line?.buyOut) throw new RangeError(`line ${lineIndex} cannot be bought out`);
      return { orderId: line.orderId, copies, arriveAt: source.instant(line.buyOut.arriveMin) };
    }),
    unplanned: [...unplannable, ...unplacedCopies(source)],
    feedstockNeeds: feedstockNeeds(source, builds, problem.startMin),
  };
}
