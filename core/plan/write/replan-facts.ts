import type { CostLine } from "../../cost/cost-line.ts";
import { moveLines } from "../../cost/move-cost.ts";
import { roundMoney } from "../../units/money.ts";
import type { PlanDocument } from "../plan-document.ts";
import { type KeptBuilds, keptBuilds } from "../replan/kept-builds.ts";
import { copiesLeftOut, type Schedule } from "../schedule.ts";
import { at } from "../at.ts";
import type { PlanSource } from "./plan-source.ts";

/** Which builds of an earlier plan stay, and the ids of those that do not, in the order of their starts. */
export interface ReplanFacts {
  readonly kept: KeptBuilds;
  readonly movedIds: readonly string[];
}

/** What a schedule does to the builds of an earlier plan. */
export function replanFacts({ problem, schedule }: PlanSource): ReplanFacts {
  const kept = keptBuilds(problem, schedule.builds);
  const stay = new Set(kept.values());
  const earlier = problem.replan?.builds.map(({ buildId }) => buildId) ?? [];
  return { kept, movedIds: earlier.filter((id) => !stay.has(id)) };
}

/** What moving those builds costs, line by line. */
export function movingLines({ shop, problem }: PlanSource, { movedIds }: ReplanFacts): CostLine[] {
  const builds = new Map(shop.builds.map((build, index) => [build.id, index]));
  return movedIds.flatMap((id) =>
    moveLines(at(shop.builds, builds.get(id) ?? -1), problem.replan?.costPerBuild ?? 0, shop.currency),
  );
}

/** The same as the document tells it; null where there was no earlier plan. `stay` is the plan that leaves all in place. */
export function replanDocument(
  { shop, problem, schedule }: PlanSource,
  { kept, movedIds }: ReplanFacts,
  stay: Schedule | null,
): PlanDocument["replan"] | null {
  const { replan } = problem;
  if (!replan) return null;
  const hasSame = stay !== null && copiesLeftOut(stay) === copiesLeftOut(schedule);
  return {
    costPerBuild: replan.costPerBuild,
    earlierBuilds: replan.builds.length,
    keptBuilds: kept.size,
    movedIds: [...movedIds],
    stayCost: hasSame ? roundMoney(stay.cost, shop.currency) : null,
  };
}
