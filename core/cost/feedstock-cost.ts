import type { Feedstock } from "../shop/feedstock.ts";

/**
 * Price of one kilogram that ends in a build, part, purge or scrap, with what is lost in handling: price x (1 + waste).
 * A feedstock with no known price cannot be costed: its routes are refused with the reason "no-price" before this is asked.
 * Example: 4 per kg and 6 % waste give 4.24 per kg.
 */
export function pricePerUsedKg(feedstock: Feedstock): number {
  if (feedstock.pricePerKg === null) {
    throw new Error(`feedstock ${feedstock.id} has no price: refuse its routes before costing them`);
  }
  return feedstock.pricePerKg * (1 + feedstock.wastePct / 100);
}

/**
 * Cost of feedstock: mass x price x (1 + waste). Mass in kg, money in major units.
 * Example: 2.4 kg at 4 per kg with 6 % waste cost 10.176.
 */
export function feedstockCost(massKg: number, feedstock: Feedstock): number {
  return massKg * pricePerUsedKg(feedstock);
}
