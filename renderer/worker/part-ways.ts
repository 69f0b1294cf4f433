import { type BuildCosting, makeBuildCosting } from "../../core/cost/build-cost.ts";
import { rankWays } from "../../core/cost/rank-ways.ts";
import { findEveryRoute } from "../../core/estimate/find-routes.ts";
import { runMin } from "../../core/estimate/print-time.ts";
import type { Route, RouteAnswer } from "../../core/estimate/route.ts";
import { groupAlike } from "../../core/plan/compile/machine-classes.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { groupBy } from "../store/group-by.ts";
import type { PricedBuild, PricedRoute, Way } from "./body-messages.ts";

/**
 * Every way to make a part, with what a copy costs by copies in a build, and every reason where there is none: one entry for
 * each kind of machine, nozzle and feedstock. Ways come first, the cheapest on top. Example: 2 kinds of machine with 2 nozzles
 * and 3 feedstocks give 12 entries.
 */
export function partWays(shop: Shop, partId: string, wanted: number): Way[] {
  const part = shop.parts.find(({ id }) => id === partId);
  if (!part) return [];
  const costing = makeBuildCosting(shop);
  const ways = groupAlike(shop.machines).flatMap((group) => {
    const machines = group.flatMap((index) => shop.machines[index] ?? []);
    const [machine] = machines;
    if (!machine) return [];
    const answers = findEveryRoute(part, machine, shop.feedstocks, { withOtherForms: true });
    const machineIds = machines.map(({ id }) => id);
    return [...groupBy(answers, keyOf).values()].map((same) =>
      wayOf(same, machineIds, machine, costing, wanted),
    );
  });
  return ways.toSorted((a, b) => costOf(a) - costOf(b) || a.reasons.length - b.reasons.length);
}

function costOf({ routes: [best] }: Way): number {
  return best ? Math.min(best.costPerCopy, Number.MAX_VALUE / 2) : Number.MAX_VALUE;
}

function keyOf(answer: RouteAnswer): string {
  const { nozzleId, feedstockId } = answer.status === "route" ? answer.route : answer;
  return JSON.stringify([nozzleId, feedstockId]);
}

function wayOf(
  answers: readonly RouteAnswer[],
  machineIds: readonly string[],
  machine: Machine,
  costing: BuildCosting,
  wanted: number,
): Way {
  const [first] = answers;
  if (!first) throw new RangeError("no answers for a nozzle");
  const { nozzleId, feedstockId } = first.status === "route" ? first.route : first;
  const found = answers.flatMap((answer) => (answer.status === "route" ? [{ route: answer.route }] : []));
  const routes = rankWays(costing, machine, found, wanted).map(
    ({ way: { route }, copies, costPerCopy }): PricedRoute => ({
      route,
      copies,
      costPerCopy,
      builds: buildsOf(route, machine, costing, copies),
    }),
  );
  return {
    machineIds,
    nozzleId,
    feedstockId,
    routes,
    reasons: first.status === "refused" ? first.reasons : [],
  };
}

/** Numbers of copies that are worth a look: the fewest, steps of 1, 2 and 5, the wanted, the most. */
function buildsOf(route: Route, machine: Machine, costing: BuildCosting, wanted: number): PricedBuild[] {
  const { copiesMin, copiesMax } = route;
  const steps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].filter((n) => n > copiesMin && n < copiesMax);
  const counts = [...new Set([copiesMin, ...steps, wanted, copiesMax])].toSorted((a, b) => a - b);
  return counts.map((copies) => ({
    copies,
    runMin: runMin([{ route, copies }]),
    costPerCopy: costing.amounts([{ route, copies }], machine).total / copies,
  }));
}
