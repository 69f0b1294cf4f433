import type { Quote } from "../shop/quote.ts";
import { roundMoney } from "../units/money.ts";

/** What a quote comes to, in whole minor units. */
export interface QuoteValue {
  /** by line: copies at their price, and what is charged once; null: not priced */
  readonly lines: readonly (number | null)[];
  readonly minimumSurcharge: number;
  /** null: a line has no price */
  readonly total: number | null;
}

/**
 * Adds up a quote as its customer would. Example: 6 copies at 3.23 and 30 once, and 40 at 1.88: 49.38 and 75.20, 124.58 in all.
 */
export function quoteValue({ lines, minimumSurcharge = 0 }: Quote, currency: string): QuoteValue {
  const each = lines.map(({ quantity, pricePerPiece, oneOffPrice }) =>
    pricePerPiece === null ? null : roundMoney(quantity * pricePerPiece + oneOffPrice, currency),
  );
  const priced = each.filter((amount) => amount !== null);
  const sum = priced.reduce((total, amount) => total + amount, 0);
  return {
    lines: each,
    minimumSurcharge,
    total: priced.length < each.length ? null : roundMoney(sum + minimumSurcharge, currency),
  };
}
