import { cheapestWayFor, type Way, type WaysToMake, waysToMake } from "../quote/ways-to-make.ts";
import { priceOf, priceRule } from "../quote/price.ts";
import type { PurchaseCase } from "../shop/purchase-case.ts";
import type { Process } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";

/** One part of the demand with every way to make it at the size of its usual order. */
export interface PartWays {
  readonly partId: string;
  /** median quantity of its order lines */
  readonly quantity: number;
  readonly ways: WaysToMake;
}

/**
 * The parts of a demand, each with the ways to make it at its usual quantity. The one slow step of a case before its weeks are
 * planned, so it is taken once. Example: orders of 4, 10 and 40 clips: every way to make 10.
 */
export function waysOfDemand(shop: Shop, purchaseCase: PurchaseCase): PartWays[] {
  const quantities = demandedQuantities(shop, purchaseCase);
  return shop.parts.flatMap(({ id }) => {
    const own = quantities.get(id);
    if (own === undefined) return [];
    const quantity = medianOf(own);
    return [{ partId: id, quantity, ways: waysToMake(shop, id, [quantity]) }];
  });
}

function demandedQuantities(shop: Shop, { demand }: PurchaseCase): Map<string, number[]> {
  const lines = demand.kind === "rows" ? demand.rows : demand.kind === "typed" ? demand.lines : shop.orders;
  const quantities = new Map<string, number[]>();
  for (const { partId, quantity } of lines) {
    quantities.set(partId, [...(quantities.get(partId) ?? []), quantity]);
  }
  return quantities;
}

/** The lower of the two middle ones where there are two, so that it is a quantity that was ordered. */
function medianOf(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? 1;
}

/**
 * Price of one copy of each part for orders that have none: what the cheapest way costs again and again at the usual quantity,
 * or the price made elsewhere where there is no way, by the shop's rule for prices or the case's own margin on price. A part
 * that nobody can make has none. Example: 60 a copy and a margin of 25 % on price: 80.
 */
export function assumedPrices(
  shop: Shop,
  { assumedMarginPct }: PurchaseCase,
  partWays: readonly PartWays[],
): Map<string, number> {
  const shopRule = priceRule(shop);
  const rule =
    assumedMarginPct === undefined
      ? shopRule
      : { ...shopRule, marginPct: assumedMarginPct, marginOn: "price" as const };
  const prices = partWays.flatMap(({ partId, quantity, ways }) => {
    const cost = cheapestWayFor(ways, quantity)?.cost.repeatPerCopy ?? ways.buyOut?.pricePerPiece;
    const price = cost === undefined ? Infinity : priceOf(cost, rule);
    return Number.isFinite(price) ? [[partId, price] as const] : [];
  });
  return new Map(prices);
}

/** The cheapest way of one process with its cost per copy, first order included; null: there is none. */
export function cheapestOfProcess(
  { quantity, ways }: PartWays,
  process: Process,
): { readonly way: Way; readonly costPerCopy: number } | null {
  const own = { ...ways, ways: ways.ways.filter((way) => way.process === process) };
  const cheapest = cheapestWayFor(own, quantity);
  return cheapest && { way: cheapest.way, costPerCopy: cheapest.cost.repeatPerCopy };
}
