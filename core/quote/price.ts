import type { Costing } from "../shop/costing.ts";
import type { Shop } from "../shop/shop.ts";
import { roundMoney } from "../units/money.ts";

/** How a price follows from a cost, as the shop has it. */
export interface PriceRule {
  readonly marginPct: number;
  /** price: the margin is a share of the price; cost: a mark-up on the cost */
  readonly marginOn: NonNullable<Costing["marginOn"]>;
  /** least that one quote comes to, currency; 0: no minimum */
  readonly minimumOrder: number;
  readonly currency: string;
}

/** What a line costs to make. */
export interface LineCost {
  readonly quantity: number;
  /** of all copies, currency */
  readonly copiesCost: number;
  /** tool paths and first set-up that are charged apart, currency; 0: in the price of the copies */
  readonly oneOffCost: number;
}

/** A line with its price in whole minor units. */
export interface LinePrice {
  readonly quantity: number;
  readonly pricePerPiece: number;
  readonly oneOffPrice: number;
  /** quantity x price of one copy + what is charged once */
  readonly total: number;
}

/** What a whole quote comes to, in whole minor units. */
export interface QuoteTotal {
  /** of all lines */
  readonly lines: number;
  /** what is missing to the smallest order; 0 where nothing is */
  readonly minimumSurcharge: number;
  readonly total: number;
}

/** The shop's own rule. Example: 25 % and nothing else said: a margin of a quarter of the price, no smallest order. */
export function priceRule({ costing, currency }: Pick<Shop, "costing" | "currency">): PriceRule {
  const { marginPct, marginOn = "price", minimumOrder = 0 } = costing;
  return { marginPct, marginOn, minimumOrder, currency };
}

/**
 * Price of a cost, not rounded: cost / (1 - margin) or cost x (1 + mark-up); Infinity where the margin is all of the price or
 * more. A mark-up m is a margin of m / (1 + m). Example: 75 at 25 % on price 100; at 25 % on cost 93.75.
 */
export function priceOf(cost: number, { marginPct, marginOn }: PriceRule): number {
  const share = marginPct / 100;
  if (marginOn === "cost") return cost * (1 + share);
  return share < 1 ? cost / (1 - share) : Infinity;
}

/**
 * Price of a line: of one copy and of what is charged once, each rounded half up to minor units, and their total, which is
 * what the customer can add up himself. Null where the rule gives no price. Example: 3 copies that cost 10 in all at 25 % on
 * price: 4.44 each, 13.32 in all.
 */
export function priceLine({ quantity, copiesCost, oneOffCost }: LineCost, rule: PriceRule): LinePrice | null {
  const pricePerPiece = roundMoney(priceOf(copiesCost, rule) / quantity, rule.currency);
  const oneOffPrice = roundMoney(priceOf(oneOffCost, rule), rule.currency);
  if (!Number.isFinite(pricePerPiece) || !Number.isFinite(oneOffPrice)) return null;
  const total = roundMoney(quantity * pricePerPiece + oneOffPrice, rule.currency);
  return { quantity, pricePerPiece, oneOffPrice, total };
}

/**
 * Prices of one copy by quantity, ascending: one that is dearer than a smaller quantity's raises that one too, so that more
 * copies never have a higher price each and none is sold below its margin. Example: costs of 10, 6 and 7 a copy at 1, 10 and 20
 * without margin: 10, 7 and 7.
 */
export function priceBreaks(
  costs: readonly { readonly quantity: number; readonly costPerCopy: number }[],
  rule: PriceRule,
): { quantity: number; pricePerPiece: number }[] {
  const breaks: { quantity: number; pricePerPiece: number }[] = [];
  let least = 0;
  for (const { quantity, costPerCopy } of costs.toSorted((a, b) => b.quantity - a.quantity)) {
    const price = roundMoney(priceOf(costPerCopy, rule), rule.currency);
    if (!Number.isFinite(price)) continue;
    least = Math.max(least, price);
    breaks.push({ quantity, pricePerPiece: least });
  }
  return breaks.toReversed();
}

/**
 * Total of a quote: its lines, and what is missing to the smallest order. Example: lines of 30 and 12.5 with a smallest order
 * of 60: 42.5, 17.5 and 60.
 */
export function quoteTotal(lineTotals: readonly number[], rule: PriceRule): QuoteTotal {
  const lines = roundMoney(
    lineTotals.reduce((sum, total) => sum + total, 0),
    rule.currency,
  );
  const missing = lineTotals.length > 0 ? Math.max(0, rule.minimumOrder - lines) : 0;
  const minimumSurcharge = roundMoney(missing, rule.currency);
  return { lines, minimumSurcharge, total: roundMoney(lines + minimumSurcharge, rule.currency) };
}
