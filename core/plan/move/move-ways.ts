import type { OrderCopies } from "../../cost/build-lines.ts";
import { runMin } from "../../estimate/print-time.ts";
import type { Route, RouteAnswer } from "../../estimate/route.ts";
import type { Feedstock } from "../../shop/feedstock.ts";
import type { MoveDesk } from "./move-desk.ts";

/** One way to make the whole build in hand on one machine. */
export interface MoveWay {
  readonly machineId: string;
  readonly feedstockId: string;
  readonly items: readonly OrderCopies[];
  readonly runMin: number;
  /** of the build alone: without changeover, tool paths and lateness */
  readonly buildCost: number;
}

/** The ways of a build with one feedstock on one machine: the best, or why there is none. */
export type MoveWayAnswer =
  | { readonly status: "way"; readonly way: MoveWay }
  | { readonly status: "refused"; readonly feedstockId: string; readonly reasons: readonly string[] };

/**
 * How the build in hand could be made on a machine, an answer for each feedstock of its form, the cheapest way first. The way
 * that it has now counts before any other of its feedstock. Example: one machine with 3 grades, of which one is too soft: two
 * ways and one refusal.
 */
export function waysOn(desk: MoveDesk, machineId: string): MoveWayAnswer[] {
  const machine = desk.machine(machineId);
  return desk.source.shop.feedstocks
    .filter(({ form }) => form === machine.process)
    .map((feedstock) => wayOf(desk, machineId, feedstock))
    .toSorted((a, b) => costOf(a) - costOf(b));
}

function costOf(answer: MoveWayAnswer): number {
  return answer.status === "way" ? answer.way.buildCost : Number.MAX_VALUE;
}

function wayOf(desk: MoveDesk, machineId: string, feedstock: Feedstock): MoveWayAnswer {
  const { build, source, costing } = desk;
  const machine = desk.machine(machineId);
  const refused = (reasons: readonly string[]): MoveWayAnswer => ({
    status: "refused",
    feedstockId: feedstock.id,
    reasons,
  });
  const byItem: { orderId: string; copies: number; routes: Route[] }[] = [];
  for (const { orderId, copies } of build.items) {
    const order = source.order(orderId);
    if (!order) return refused([`order ${orderId} is no longer in the shop`]);
    const answers = source.routes(source.part(order), machine, feedstock);
    const routes = answers.flatMap((answer) => (answer.status === "route" ? [answer.route] : []));
    if (routes.length === 0) return refused(fewestReasons(answers));
    byItem.push({ orderId, copies, routes });
  }
  const ways = (byItem[0]?.routes ?? []).flatMap((first): MoveWay[] => {
    const items = byItem.flatMap(({ routes, ...item }): OrderCopies[] => {
      const route = routes.find((candidate) => wayKey(candidate) === wayKey(first));
      return route ? [{ ...item, route }] : [];
    });
    if (items.length < byItem.length) return [];
    const buildCost = costing.amounts(items, machine).total;
    return [{ machineId, feedstockId: feedstock.id, items, runMin: runMin(items), buildCost }];
  });
  const now = ways.find(({ items }) => wayKey(items[0]?.route) === wayKey(build));
  const best = now ?? ways.toSorted((a, b) => shortfall(a) - shortfall(b) || a.buildCost - b.buildCost)[0];
  return best ? { status: "way", way: best } : refused(["its orders have no way in common there"]);
}

/** Copies more or fewer than its routes allow: a way without comes first. */
function shortfall({ items }: MoveWay): number {
  return items.reduce(
    (sum, { copies, route }) =>
      sum + Math.max(0, copies - route.copiesMax) + Math.max(0, route.copiesMin - copies),
    0,
  );
}

function wayKey(
  of: Pick<Route, "nozzleId" | "feedstockId" | "layerHeightMm" | "beadWidthMm" | "orientation"> | undefined,
) {
  return of && [of.nozzleId, of.feedstockId, of.layerHeightMm, of.beadWidthMm, of.orientation].join(" ");
}

function fewestReasons(answers: readonly RouteAnswer[]): string[] {
  const refusals = answers.flatMap((answer) => (answer.status === "refused" ? [answer.reasons] : []));
  const fewest = refusals.toSorted((a, b) => a.length - b.length)[0] ?? [];
  return fewest.map(({ sentence }) => sentence);
}
