import type { Process } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";
import type { Finding } from "../units/finding.ts";
import { type PriceRule, priceBreaks } from "./price.ts";
import type { QuoteLineRequest } from "./quote-order.ts";
import {
  type FirstCost,
  type QuantityCost,
  type RefusedWay,
  type Way,
  type WaysToMake,
  waysToMake,
} from "./ways-to-make.ts";

/** Quantities for which every way is priced, besides the one asked for. */
const STEPS = [1, 2, 5, 10, 20, 50, 100] as const;

/** One way to make the part of a line, as plain data. */
export interface LineWay {
  readonly machineIds: readonly string[];
  readonly process: Process;
  readonly nozzleId: string;
  readonly feedstockId: string;
  readonly layerHeightMm: number;
  readonly beadWidthMm: number;
  readonly orientation: string;
  readonly massKgPerCopy: number;
  readonly first: FirstCost;
  /** by quantity; null: no builds that the way allows add up to it */
  readonly costs: readonly (QuantityCost | null)[];
  readonly cautions: readonly string[];
  /** false: the line is pinned to another machine or feedstock */
  readonly isAllowed: boolean;
}

/** Every way to make the part of a line. */
export interface LineWays {
  /** ascending: 1, 2, 5, 10, 20, 50, 100 and the asked one */
  readonly quantities: readonly number[];
  /** cheapest first for the largest quantity */
  readonly ways: readonly LineWay[];
  readonly refused: readonly RefusedWay[];
  readonly buyOut: WaysToMake["buyOut"];
  readonly findings: readonly Finding[];
}

/** The ways to make a line's part, priced at the usual quantities and its own. Example: asked for 6: 1, 2, 5, 6, 10, ... 100. */
export function lineWays(shop: Shop, line: QuoteLineRequest): LineWays {
  const { quantity, partId } = line;
  const isWhole = Number.isSafeInteger(quantity) && quantity >= 1;
  const quantities = [...new Set([...STEPS, ...(isWhole ? [quantity] : [])])].toSorted((a, b) => a - b);
  const found = waysToMake(shop, partId, quantities);
  return {
    quantities,
    ways: found.ways.map((way) => plainWay(way, line)),
    refused: found.refused,
    buyOut: found.buyOut,
    findings: found.findings,
  };
}

function plainWay(way: Way, { machineId, feedstockId }: QuoteLineRequest): LineWay {
  const { machineIds, process, nozzleId, route, massKgPerCopy, first, costs } = way;
  const isOnMachine = machineId === undefined || machineIds.includes(machineId);
  const isOfFeedstock = feedstockId === undefined || way.feedstockId === feedstockId;
  return {
    machineIds,
    process,
    nozzleId,
    feedstockId: way.feedstockId,
    layerHeightMm: route.layerHeightMm,
    beadWidthMm: route.beadWidthMm,
    orientation: route.orientation,
    massKgPerCopy,
    first,
    costs,
    cautions: route.cautions,
    isAllowed: isOnMachine && isOfFeedstock,
  };
}

/** How the price of the asked quantity came about. */
export interface AskedPrice {
  readonly quantity: number;
  readonly pricePerPiece: number;
  /** what the line displaces: what its price is made from over its own cost, currency */
  readonly displaced: number;
  readonly charging: "within" | "apart";
  /** process whose tool paths are charged with another line, so that no quantity of this one has them in its price */
  readonly pathsCharged: Process | null;
}

/**
 * Prices of one copy by quantity around the asked one, each from the cheapest allowed way or from buying, and with what its machine
 * hours displace at the same rate an hour. Every step is cheaper than the one before: a quantity that is not is left out.
 * Example: 6 asked at 5.20: 1 at 14.00, 2 at 9.10, 6 at 5.20, 10 at 4.40; 5 at 9.10 and 20 at 4.40 are left out.
 */
export function breaksAround(
  ways: LineWays,
  asked: AskedPrice,
  rule: PriceRule,
): { quantity: number; pricePerPiece: number }[] {
  const { quantity, pricePerPiece } = asked;
  const perH = displacedPerH(ways, asked);
  const costs = ways.quantities.flatMap((other, at) => {
    const cheapest = other === quantity ? null : cheapestAt(ways, at, asked);
    return cheapest ? [{ quantity: other, costPerCopy: cheapest.cost + perH * cheapest.machineH }] : [];
  });
  const priced = priceBreaks(costs, rule);
  const smaller = priced.filter((step) => step.quantity < quantity && step.pricePerPiece > pricePerPiece);
  const larger = priced.filter((step) => step.quantity > quantity);
  return onlyCheaper([...smaller, { quantity, pricePerPiece }, ...larger]);
}

type Step = ReturnType<typeof priceBreaks>[number];

/** Steps that make a copy cheaper than every smaller one does. */
function onlyCheaper(steps: readonly Step[]): Step[] {
  return steps.filter(({ pricePerPiece }, at) =>
    steps.slice(0, at).every((before) => before.pricePerPiece > pricePerPiece),
  );
}

function displacedPerH(ways: LineWays, asked: AskedPrice): number {
  const { quantity, displaced } = asked;
  const cheapest = cheapestAt(ways, ways.quantities.indexOf(quantity), asked);
  const hours = (cheapest?.machineH ?? 0) * quantity;
  return hours > 0 ? displaced / hours : 0;
}

/** A copy made the cheapest allowed way, or bought; null: there is neither. Apart: without what is charged once. */
function cheapestAt(
  { ways, buyOut }: LineWays,
  at: number,
  { charging, pathsCharged }: AskedPrice,
): { readonly cost: number; readonly machineH: number } | null {
  const made = ways
    .flatMap(({ isAllowed, costs, first, process }) => {
      const cost = isAllowed ? costs[at] : null;
      const free = cost && process === pathsCharged ? first.engineering / cost.quantity : 0;
      return cost ? [{ cost, costPerCopy: cost.costPerCopy - free }] : [];
    })
    .toSorted((a, b) => a.costPerCopy - b.costPerCopy)[0];
  if (made && made.costPerCopy <= (buyOut?.pricePerPiece ?? Infinity)) {
    return {
      cost: charging === "apart" ? made.cost.repeatPerCopy : made.costPerCopy,
      machineH: made.cost.machineHPerCopy,
    };
  }
  return buyOut ? { cost: buyOut.pricePerPiece, machineH: 0 } : null;
}
