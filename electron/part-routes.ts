import type { BuildCosting } from "../core/cost/build-cost.ts";
import { type RankedWay, rankWays } from "../core/cost/rank-ways.ts";
import { findEveryRoute } from "../core/estimate/find-routes.ts";
import type { Route, RouteAnswer } from "../core/estimate/route.ts";
import { groupAlike } from "../core/plan/compile/machine-classes.ts";
import type { Machine } from "../core/shop/machine.ts";
import type { Part } from "../core/shop/part.ts";
import type { Shop } from "../core/shop/shop.ts";

/** A route with what a copy costs by it. */
export type RankedRoute = RankedWay<{ readonly route: Route }>;

/** One nozzle with one feedstock: the routes, the cheapest first, or why there is none. */
export interface NozzleRoutes {
  readonly nozzleId: string;
  readonly feedstockId: string;
  readonly ranked: readonly RankedRoute[];
  readonly refused: Extract<RouteAnswer, { status: "refused" }> | null;
}

/** The routes of one part on machines that are alike. */
export interface MachineRoutes {
  readonly machines: readonly Machine[];
  readonly machine: Machine;
  readonly nozzles: readonly NozzleRoutes[];
}

/** What is asked: a part, for how many copies, on which of the shop's machines. */
export interface RoutesAsked {
  readonly shop: Shop;
  readonly part: Part;
  readonly quantity: number;
  readonly withOtherForms: boolean;
  /** one machine only; null: all */
  readonly machineId: string | null;
}

/** Every route of a part on every kind of machine, or every reason; directions up are ranked by what a copy costs. */
export function partRoutes(asked: RoutesAsked, costing: BuildCosting): MachineRoutes[] {
  const { shop, part, quantity, withOtherForms, machineId } = asked;
  return groupAlike(shop.machines).flatMap((group) => {
    const machines = group.flatMap((index) => shop.machines[index] ?? []);
    const machine = machineId === null ? machines[0] : machines.find(({ id }) => id === machineId);
    if (!machine) return [];
    const answers = findEveryRoute(part, machine, shop.feedstocks, { withOtherForms });
    const rank = (ways: readonly { readonly route: Route }[]) => rankWays(costing, machine, ways, quantity);
    const own = machineId === null ? machines : [machine];
    return [{ machines: own, machine, nozzles: byNozzle(answers).map((same) => nozzleRoutes(same, rank)) }];
  });
}

/** The cheapest of all; null where there is no route. */
export function cheapest(routes: readonly MachineRoutes[]): { machine: Machine; best: RankedRoute } | null {
  const all = routes.flatMap(({ machine, nozzles }) =>
    nozzles.flatMap(({ ranked: [best] }) => (best ? [{ machine, best }] : [])),
  );
  return all.toSorted((a, b) => a.best.costPerCopy - b.best.costPerCopy)[0] ?? null;
}

/** Answers with the same nozzle and feedstock together, in the order in which they came. */
function byNozzle(answers: readonly RouteAnswer[]): RouteAnswer[][] {
  const groups = new Map<string, RouteAnswer[]>();
  for (const answer of answers) {
    const { nozzleId, feedstockId } = answer.status === "route" ? answer.route : answer;
    const key = JSON.stringify([nozzleId, feedstockId]);
    groups.set(key, [...(groups.get(key) ?? []), answer]);
  }
  return [...groups.values()];
}

function nozzleRoutes(
  answers: readonly RouteAnswer[],
  rank: (ways: readonly { readonly route: Route }[]) => RankedRoute[],
): NozzleRoutes {
  const [first] = answers;
  if (!first) throw new RangeError("no answers for a nozzle");
  const { nozzleId, feedstockId } = first.status === "route" ? first.route : first;
  const ways = answers.flatMap((answer) => (answer.status === "route" ? [{ route: answer.route }] : []));
  return { nozzleId, feedstockId, ranked: rank(ways), refused: first.status === "refused" ? first : null };
}
