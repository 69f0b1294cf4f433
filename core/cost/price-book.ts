import type { RouteCopies } from "../estimate/print-time.ts";
import type { Costing } from "../shop/costing.ts";
import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { Shop } from "../shop/shop.ts";
import { pricePerUsedKg } from "./feedstock-cost.ts";
import { finishingCostPerCopy } from "./finishing-cost.ts";
import { machineHourRate } from "./machine-hour-rate.ts";

/** Rates and prices of one shop by id, each computed once: a plan asks for them a million times. */
export interface PriceBook {
  readonly currency: string;
  readonly costing: Costing;
  readonly machinePerH: (machine: Machine) => number;
  readonly feedstock: (id: string) => Feedstock;
  /** with waste; throws where the price is not known */
  readonly pricePerUsedKg: (feedstockId: string) => number;
  readonly part: (id: string) => Part;
  readonly finishingPerCopy: (partId: string) => number;
}

/**
 * Opens the price book of a shop. An id that the shop does not have throws: `check-shop` finds those before any costing.
 * Example: pricePerUsedKg("pla-white") is 21 for 20 per kg with 5 % waste.
 */
export function openPriceBook(shop: Shop): PriceBook {
  const { currency, costing } = shop;
  const feedstocks = new Map(shop.feedstocks.map((feedstock) => [feedstock.id, feedstock]));
  const feedstock = (id: string): Feedstock => found(feedstocks.get(id), "feedstock", id);
  const parts = new Map(shop.parts.map((part) => [part.id, part]));
  const part = (id: string): Part => found(parts.get(id), "part", id);
  return {
    currency,
    costing,
    machinePerH: remember((machine: Machine) => machineHourRate(machine, costing).perH),
    feedstock,
    pricePerUsedKg: remember((id: string) => pricePerUsedKg(feedstock(id))),
    part,
    finishingPerCopy: remember((id: string) => finishingCostPerCopy(part(id), costing)),
  };
}

/**
 * Feedstock of one item of a build: copies x mass of one copy x price x (1 + waste).
 * Example: 2 copies of 0.02 kg at 20 per kg with 5 % waste cost 0.84.
 */
export function itemFeedstockCost(book: PriceBook, { route, copies }: RouteCopies): number {
  return copies * route.massKgPerCopy * book.pricePerUsedKg(route.feedstockId);
}

function remember<Key>(compute: (key: Key) => number): (key: Key) => number {
  const known = new Map<Key, number>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = compute(key);
    known.set(key, value);
    return value;
  };
}

function found<Thing>(thing: Thing | undefined, kind: string, id: string): Thing {
  if (thing === undefined) throw new Error(`the shop has no ${kind} ${id}`);
  return thing;
}
