import { parseArgs } from "node:util";
import { findRoutes } from "../core/estimate/find-routes.ts";
import { runMin } from "../core/estimate/print-time.ts";
import type { Route, RouteAnswer } from "../core/estimate/route.ts";
import { makeBuildCosting } from "../core/cost/build-cost.ts";
import { groupAlike } from "../core/plan/compile/machine-classes.ts";
import { displayOf } from "../core/report/display.ts";
import type { Machine } from "../core/shop/machine.ts";
import type { Part } from "../core/shop/part.ts";
import type { Shop } from "../core/shop/shop.ts";
import { MIN_PER_H } from "../core/units/conversions.ts";
import { EXIT, UsageError } from "./exit-status.ts";
import { printFindings } from "./print-findings.ts";
import { readShopFile } from "./read-shop-file.ts";

/** `routes SHOP.json [--part ID] [--all]`: how each part goes on each kind of machine, or every reason why it does not. */
export async function routesCommand(words: string[]): Promise<number> {
  const { values, positionals } = parseWords(words);
  const [path] = positionals;
  if (!path) throw new UsageError("routes needs a shop file");
  const { shop, findings } = await readShopFile(path);
  printFindings(findings, shop ? ["error"] : undefined);
  if (!shop) return EXIT.badInput;
  const parts = shop.parts.filter((part) => values.part === undefined || part.id === values.part);
  if (parts.length === 0) throw new UsageError(`the shop has no part "${values.part}"`);
  for (const part of parts) printPart(shop, part, values.all ?? false);
  return EXIT.planned;
}

function parseWords(words: string[]) {
  try {
    return parseArgs({
      args: words,
      allowPositionals: true,
      options: { part: { type: "string" }, all: { type: "boolean" } },
    });
  } catch (error) {
    throw new UsageError((error as Error).message);
  }
}

function printPart(shop: Shop, part: Part, withOtherForms: boolean): void {
  const { x, y, z } = part.geometry.measures.boxMm;
  const { length } = displayOf(shop);
  console.log(`\n${part.name} (${part.id})  ${[x, y, z].map(length).join(" x ")}`);
  for (const group of groupAlike(shop.machines)) {
    const machine = shop.machines[group[0] ?? -1];
    if (!machine) continue;
    console.log(`\n  ${group.map((index) => shop.machines[index]?.name).join(", ")}`);
    const answers = findRoutes(part, machine, shop.feedstocks, { withOtherForms });
    for (const line of answers.flatMap((answer) => answerLines(shop, machine, answer)))
      console.log(`    ${line}`);
    if (answers.length === 0) console.log(`    - the shop has no ${machine.process} feedstock`);
  }
}

function answerLines(shop: Shop, machine: Machine, answer: RouteAnswer): string[] {
  if (answer.status === "route") return routeLines(shop, machine, answer.route);
  const reasons = answer.reasons.map((reason) => `    ${reason.sentence}`);
  return [`- nozzle ${answer.nozzleId}, ${feedstockName(shop, answer.feedstockId)}: no`, ...reasons];
}

function routeLines(shop: Shop, machine: Machine, route: Route): string[] {
  const { layerHeightMm, beadWidthMm, orientation, massKgPerCopy } = route;
  const costing = makeBuildCosting(shop);
  const display = displayOf(shop);
  const builds = [...new Set([route.copiesMin, route.copiesMax])].map((copies) => {
    const costPerCopy = costing.amounts([{ route, copies }], machine).total / copies;
    const timeH = runMin([{ route, copies }]) / MIN_PER_H;
    return `    ${copies} in a build: ${timeH.toFixed(1)} h, ${display.money(costPerCopy)} a copy`;
  });
  return [
    `+ nozzle ${route.nozzleId}, ${feedstockName(shop, route.feedstockId)}: layer ${display.length(layerHeightMm)}, bead ${display.length(beadWidthMm)}, ${orientation} vertical, ${display.mass(massKgPerCopy)} a copy`,
    ...builds,
    ...route.cautions.map((caution) => `    ${caution}`),
  ];
}

function feedstockName(shop: Shop, id: string): string {
  return shop.feedstocks.find((feedstock) => feedstock.id === id)?.name ?? id;
}
