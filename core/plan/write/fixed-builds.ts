import { findEveryRoute } from "../../estimate/find-routes.ts";
import type { Route } from "../../estimate/route.ts";
import type { Build } from "../../shop/build.ts";
import type { Shop } from "../../shop/shop.ts";
import { keepsItsPlace } from "../../shop/build-copies.ts";
import type { PlannedBuild } from "../plan-document.ts";
import type { PlanSource } from "./plan-source.ts";

/**
 * The shop's committed and running builds as the document has them: untouched. What they cost is spent or promised already,
 * so they have no cost lines; the part of their set-up beyond the machine's own is taken for changeover.
 */
export function fixedBuilds(source: PlanSource): PlannedBuild[] {
  return source.shop.builds.filter(keepsItsPlace).map((build) => {
    const setUpMin = source.minute(build.printStart) - source.minute(build.setUpStart);
    const changeoverMin = Math.max(0, setUpMin - source.machine(build.machineId).setUpMin);
    return { ...build, changeoverMin, massKg: massOfBuildKg(source.shop, build), costLines: [] };
  });
}

/**
 * Feedstock of one build of the shop, kg: counted where it was, else by the routes of its parts; 0 where the works would
 * not choose such a route today and so has no figure. Example: 2 copies of 0.02 kg give 0.04.
 */
function massOfBuildKg(shop: Shop, build: Build): number {
  if (build.actual?.massKg !== undefined) return build.actual.massKg;
  return build.items.reduce((sum, { orderId, copies }) => {
    return sum + copies * (routeOfBuild(shop, build, orderId)?.massKgPerCopy ?? 0);
  }, 0);
}

/** The route by which a build makes an order's part, if its nozzle, feedstock, bead, layer and orientation are one. */
function routeOfBuild(shop: Shop, build: Build, orderId: string): Route | null {
  const order = shop.orders.find((candidate) => candidate.id === orderId);
  const part = shop.parts.find((candidate) => candidate.id === order?.partId);
  const machine = shop.machines.find((candidate) => candidate.id === build.machineId);
  if (!part || !machine) return null;
  const feedstocks = shop.feedstocks.filter((feedstock) => feedstock.id === build.feedstockId);
  for (const answer of findEveryRoute(part, machine, feedstocks)) {
    if (answer.status === "route" && isMadeSo(answer.route, build)) return answer.route;
  }
  return null;
}

function isMadeSo(route: Route, build: Build): boolean {
  return (
    route.nozzleId === build.nozzleId &&
    route.layerHeightMm === build.layerHeightMm &&
    route.beadWidthMm === build.beadWidthMm &&
    route.orientation === build.orientation
  );
}
