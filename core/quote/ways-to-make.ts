import { type BuildCosting, makeBuildCosting } from "../cost/build-cost.ts";
import { makeRouteFinder } from "../cost/rank-ways.ts";
import { runMin } from "../estimate/print-time.ts";
import type { Route, RouteAnswer } from "../estimate/route.ts";
import { toolPathFactor } from "../estimate/tool-path-work.ts";
import { groupAlike } from "../plan/compile/machine-classes.ts";
import type { Machine, Process } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import { whereOf } from "../shop/finding.ts";
import type { Shop } from "../shop/shop.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import type { Finding } from "../units/finding.ts";
import { type BuildsOfSize, cheapestSplit } from "./build-split.ts";
import { withOrderOf } from "./quote-order.ts";
import { longestRunMin, wayTable } from "./way-table.ts";

/** What a copy costs by one way if so many are made. */
export interface QuantityCost {
  readonly quantity: number;
  /** builds that make them at the least cost, the last and smaller one included */
  readonly builds: readonly BuildsOfSize[];
  /** cost of the builds over the copies: what a repeat order costs */
  readonly repeatPerCopy: number;
  /** the same with the cost of the first order shared by its copies */
  readonly costPerCopy: number;
  /** hours that a copy takes of a machine: set-up, print and unload */
  readonly machineHPerCopy: number;
}

/** What the first order of a part costs beside its copies. */
export interface FirstCost {
  /** tool paths, overhead included; 0 where they exist */
  readonly engineering: number;
  /** loading the feedstock and nozzle into an empty machine once, overhead included */
  readonly setUp: number;
}

/** One way to make a part: machines that are alike, nozzle and feedstock. */
export interface Way {
  readonly machineIds: readonly string[];
  readonly process: Process;
  readonly nozzleId: string;
  readonly feedstockId: string;
  readonly route: Route;
  readonly massKgPerCopy: number;
  readonly first: FirstCost;
  /** in the order of the quantities asked; null: no builds that the way allows add up to it */
  readonly costs: readonly (QuantityCost | null)[];
}

/** A way that does not exist, and why. */
export interface RefusedWay {
  readonly machineIds: readonly string[];
  readonly process: Process;
  readonly nozzleId: string;
  readonly feedstockId: string;
  readonly reasons: readonly { readonly code: string; readonly sentence: string }[];
}

/** Every way to make a part, those that do not exist, and buying it. */
export interface WaysToMake {
  readonly partId: string;
  readonly quantities: readonly number[];
  /** cheapest first, by the copies of the largest quantity */
  readonly ways: readonly Way[];
  readonly refused: readonly RefusedWay[];
  readonly buyOut: { readonly pricePerPiece: number; readonly leadTimeDays: number } | null;
  /** what cannot be answered, in sentences */
  readonly findings: readonly Finding[];
}

/**
 * Every way to make a part with what a copy costs at each quantity: builds of the sizes that cost least, first-order cost apart
 * from repeat cost, mass and machine hours. A part from a mesh stands as it would for the largest quantity. Nothing is left out
 * silently: every other pair of nozzle and feedstock is refused with its reasons. Whole quantities of 1 and more are answered.
 * Example: 10 copies in builds of 4, 4 and 2 at 20, 20 and 12 and tool paths of 30: 5.2 a copy again, 8.2 the first time.
 */
export function waysToMake(shop: Shop, partId: string, quantities: readonly number[]): WaysToMake {
  const asked = quantities.filter(isQuantity);
  const findings = quantities.filter((quantity) => !isQuantity(quantity)).map(notAQuantity);
  const part = shop.parts.find(({ id }) => id === partId);
  if (!part || asked.length === 0) {
    const unknown = part ? [] : [noSuchPart(partId)];
    const nothing = { ways: [], refused: [], buyOut: part?.buyOut ?? null };
    return { partId, quantities: asked, ...nothing, findings: [...unknown, ...findings] };
  }
  const finder = new WayFinder(shop, part, asked);
  for (const group of groupAlike(shop.machines)) finder.look(group);
  const last = asked.indexOf(Math.max(...asked));
  return {
    partId,
    quantities: asked,
    ways: finder.ways.toSorted((a, b) => costAt(a, last) - costAt(b, last)),
    refused: finder.refused,
    buyOut: part.buyOut ?? null,
    findings: [...findings, ...(finder.ways.length === 0 ? [noWay(part, finder.refused.length)] : [])],
  };
}

/**
 * The way that makes a quantity cheapest, with its cost; null: there is none. Example: 12.4 and 9.8 a copy at 20: the second.
 */
export function cheapestWayFor(
  { ways, quantities }: WaysToMake,
  quantity: number,
): { readonly way: Way; readonly cost: QuantityCost } | null {
  const at = quantities.indexOf(quantity);
  const priced = ways.flatMap((way) => {
    const cost = way.costs[at];
    return cost ? [{ way, cost }] : [];
  });
  return priced.toSorted((a, b) => a.cost.costPerCopy - b.cost.costPerCopy)[0] ?? null;
}

function costAt(way: Way, at: number): number {
  return way.costs[at]?.costPerCopy ?? Number.MAX_VALUE;
}

/** A whole number of copies that can be counted exactly. */
function isQuantity(quantity: number): boolean {
  return Number.isSafeInteger(quantity) && quantity >= 1;
}

class WayFinder {
  readonly ways: Way[] = [];
  readonly refused: RefusedWay[] = [];
  private readonly costing: BuildCosting;
  private readonly shop: Shop;
  private readonly part: Part;
  private readonly quantities: readonly number[];
  private readonly findRoutes;

  constructor(shop: Shop, part: Part, quantities: readonly number[]) {
    this.shop = shop;
    this.part = part;
    this.quantities = quantities;
    this.costing = makeBuildCosting(shop);
    this.findRoutes = makeRouteFinder(withOrderOf(shop, part.id, Math.max(...quantities)), this.costing);
  }

  /** All nozzles and feedstocks of a group of machines that are alike. */
  look(group: readonly number[]): void {
    const machines = group.flatMap((index) => this.shop.machines[index] ?? []);
    const [machine] = machines;
    if (!machine) return;
    const machineIds = machines.map(({ id }) => id);
    const longestMin = longestRunMin(this.shop, machine);
    for (const answer of this.findRoutes(this.part, machine, this.shop.feedstocks)) {
      this.take(machine, machineIds, longestMin, answer);
    }
  }

  private take(
    machine: Machine,
    machineIds: readonly string[],
    longestMin: number,
    answer: RouteAnswer,
  ): void {
    const { nozzleId, feedstockId } = answer.status === "route" ? answer.route : answer;
    const what = { machineIds, process: machine.process, nozzleId, feedstockId };
    if (answer.status === "refused") {
      const reasons = answer.reasons.map(({ code, sentence }) => ({ code, sentence }));
      this.refused.push({ ...what, reasons });
      return;
    }
    const { route } = answer;
    const copies = Math.max(...this.quantities, route.copiesMin);
    const table = wayTable(this.costing, machine, route, { copies, longestRunMin: longestMin });
    if (table.costByCopies.length <= route.copiesMin) {
      this.refused.push({ ...what, reasons: [tooLong(route, longestMin)] });
      return;
    }
    if (!table.costByCopies.every(Number.isFinite)) {
      this.refused.push({ ...what, reasons: [hopeless(machine)] });
      return;
    }
    const first = this.firstCost(machine, route);
    const minutes = { runMinByCopies: table.runMinByCopies, besideMin: machine.setUpMin + machine.unloadMin };
    const costs = this.quantities.map((quantity) => {
      const split = cheapestSplit(table.costByCopies, route.copiesMin, quantity);
      return split && quantityCost(quantity, split, first, minutes);
    });
    this.ways.push({ ...what, route, massKgPerCopy: route.massKgPerCopy, first, costs });
  }

  private firstCost(machine: Machine, route: Route): FirstCost {
    const isReady = this.part.toolPathsReady.includes(route.process);
    const factor = toolPathFactor(this.part, route.process);
    return {
      engineering: isReady ? 0 : this.costing.engineeringCost(route.process, factor),
      setUp: this.costing.changeoverAmounts(machine, null, route).cost,
    };
  }
}

function quantityCost(
  quantity: number,
  split: { readonly sizes: readonly BuildsOfSize[]; readonly cost: number },
  first: FirstCost,
  minutes: { readonly runMinByCopies: Float64Array; readonly besideMin: number },
): QuantityCost {
  const machineMin = split.sizes.reduce(
    (sum, { copies, builds }) => sum + builds * ((minutes.runMinByCopies[copies] ?? 0) + minutes.besideMin),
    0,
  );
  return {
    quantity,
    builds: split.sizes,
    repeatPerCopy: split.cost / quantity,
    costPerCopy: (split.cost + first.engineering + first.setUp) / quantity,
    machineHPerCopy: machineMin / MIN_PER_H / quantity,
  };
}

function tooLong(route: Route, longestMin: number): RefusedWay["reasons"][number] {
  const neededH = runMin([{ route, copies: route.copiesMin }]) / MIN_PER_H;
  const allowed =
    longestMin === 0
      ? "nobody ever serves the machine"
      : `the machine may run at most ${(longestMin / MIN_PER_H).toFixed(1)} h at a stretch`;
  return { code: "run-too-long", sentence: `One build takes ${neededH.toFixed(1)} h, and ${allowed}.` };
}

function hopeless({ failuresPer1000H }: Machine): RefusedWay["reasons"][number] {
  return {
    code: "never-succeeds",
    sentence: `At ${failuresPer1000H} failures in 1000 h so long a build would never succeed.`,
  };
}

function notAQuantity(quantity: number): Finding {
  return {
    severity: "error",
    code: "quantity",
    where: "quantity",
    sentence: `A quantity of ${quantity} cannot be made: ask for a whole number of copies, 1 or more.`,
  };
}

function noSuchPart(partId: string): Finding {
  return {
    severity: "error",
    code: "unknown-id",
    where: whereOf("parts", partId),
    sentence: `The shop has no part ${partId}: put it into the shop's parts first.`,
  };
}

function noWay(part: Part, tried: number): Finding {
  const what = part.buyOut
    ? "it can only be bought"
    : "give it a price for buying it, or change what is in the way";
  return {
    severity: part.buyOut ? "warning" : "error",
    code: "no-way",
    where: whereOf("parts", part.id),
    sentence: `Part ${part.id} can be made in none of ${tried} ways of this shop; their reasons say why: ${what}.`,
  };
}
