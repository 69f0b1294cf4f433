import type { BuildCosting } from "../core/cost/build-cost.ts";
import { runMin } from "../core/estimate/print-time.ts";
import type { Route } from "../core/estimate/route.ts";
import { displayOf } from "../core/report/display.ts";
import { shortText, visibleText } from "../core/report/plain-text.ts";
import { sideUp } from "../core/shop/direction.ts";
import type { Machine } from "../core/shop/machine.ts";
import type { Part } from "../core/shop/part.ts";
import type { Shop } from "../core/shop/shop.ts";
import { MIN_PER_H } from "../core/units/conversions.ts";
import type { MachineRoutes, NozzleRoutes, RankedRoute } from "./part-routes.ts";

/** What routes are written with. */
export interface RouteTextContext {
  readonly shop: Shop;
  readonly costing: BuildCosting;
}

const NAME_CHARS = 60;

/** The part: name, id and box. */
export function partLine(shop: Shop, part: Part): string {
  const { x, y, z } = part.geometry.measures.boxMm;
  const size = [x, y, z].map(displayOf(shop).length).join(" x ");
  const id = part.id === part.name ? "" : ` (${visibleText(part.id)})`;
  return `${shortText(part.name, NAME_CHARS)}${id}  ${size}`;
}

/** The routes of one kind of machine, or the reasons. */
export function machineLines(context: RouteTextContext, routes: MachineRoutes): string[] {
  const names = routes.machines.map(({ name }) => shortText(name, NAME_CHARS)).join(", ");
  const lines = routes.nozzles.flatMap((nozzle) => nozzleLines(context, routes.machine, nozzle));
  const nothing = `- the shop has no ${routes.machine.process} feedstock`;
  return ["", `  ${names}`, ...(lines.length > 0 ? lines : [nothing]).map((line) => `    ${line}`)];
}

/** The cheapest way of all in one sentence. */
export function cheapestLine(
  { shop }: RouteTextContext,
  { machine, best }: { machine: Machine; best: RankedRoute },
): string {
  const { route } = best.way;
  const way = `${shortText(machine.name, NAME_CHARS)}, nozzle ${route.nozzleId}, ${feedstockName(shop, route.feedstockId)}, ${sideUp(route.orientation)}`;
  const copies = best.copies === 1 ? "one in a build" : `${best.copies} in a build`;
  return `Cheapest: ${way}, ${copies}: ${displayOf(shop).money(best.costPerCopy)} a copy, changeover and tool paths not included.`;
}

/** Name of a feedstock by its id, cut to what a line bears. */
export function feedstockName(shop: Shop, id: string): string {
  return shortText(shop.feedstocks.find((feedstock) => feedstock.id === id)?.name ?? id, NAME_CHARS);
}

function nozzleLines(context: RouteTextContext, machine: Machine, nozzle: NozzleRoutes): string[] {
  const [best, ...others] = nozzle.ranked;
  if (best) return [...routeLines(context, machine, best.way.route), ...otherWays(context, best, others)];
  const reasons = (nozzle.refused?.reasons ?? []).map((reason) => `    ${reason.sentence}`);
  return [`- nozzle ${nozzle.nozzleId}, ${feedstockName(context.shop, nozzle.feedstockId)}: no`, ...reasons];
}

function routeLines({ shop, costing }: RouteTextContext, machine: Machine, route: Route): string[] {
  const { layerHeightMm, beadWidthMm, orientation, massKgPerCopy, rotationDeg } = route;
  const display = displayOf(shop);
  const builds = [...new Set([route.copiesMin, route.copiesMax])].map((copies) => {
    const costPerCopy = costing.amounts([{ route, copies }], machine).total / copies;
    const timeH = runMin([{ route, copies }]) / MIN_PER_H;
    return `    ${copies} in a build: ${timeH.toFixed(1)} h, ${display.money(costPerCopy)} a copy`;
  });
  const turn = rotationDeg ? `, turned by ${Number(rotationDeg.toFixed(1))} degrees` : "";
  return [
    `+ nozzle ${route.nozzleId}, ${feedstockName(shop, route.feedstockId)}: layer ${display.length(layerHeightMm)}, bead ${display.length(beadWidthMm)}, ${sideUp(orientation)}${turn}, ${display.mass(massKgPerCopy)} a copy`,
    ...builds,
    ...route.cautions.map((caution) => `    ${caution}`),
  ];
}

/** The other directions up, the cheapest first. */
function otherWays({ shop }: RouteTextContext, best: RankedRoute, others: readonly RankedRoute[]): string[] {
  if (others.length === 0) return [];
  const { money } = displayOf(shop);
  const words = others.map(
    ({ way, costPerCopy }) => `${sideUp(way.route.orientation)} ${money(costPerCopy)}`,
  );
  return [
    `    ways to stand: ${sideUp(best.way.route.orientation)} ${money(best.costPerCopy)}, then ${words.join(", ")}`,
  ];
}
