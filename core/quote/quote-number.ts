import type { Shop } from "../shop/shop.ts";

/** Digits that a number has at least. */
const DIGITS = 4;

/**
 * The next number of a quote in a year: one more than the highest of that year. Example: Q-2026-0006 and Q-2025-0041 are there:
 * Q-2026-0007.
 */
export function nextQuoteId({ quotes }: Pick<Shop, "quotes">, year: number): string {
  const start = `Q-${year}-`;
  const numbers = quotes.flatMap(({ id }) => {
    const rest = id.startsWith(start) ? id.slice(start.length) : "";
    return /^\d{1,9}$/.test(rest) ? [Number(rest)] : [];
  });
  return start + String(Math.max(0, ...numbers) + 1).padStart(DIGITS, "0");
}

/**
 * The id of a line of a quote, which is also that of its order: the number with the line's place. Where an order has it already a
 * number follows. Example: the second line of Q-2026-0007 is Q-2026-0007-2.
 */
export function quoteLineId(quoteId: string, place: number, { orders }: Pick<Shop, "orders">): string {
  return freeOrderId(`${quoteId}-${place}`, new Set(orders.map(({ id }) => id)));
}

/** An id that no order has, as near to the wanted one as can be. Example: A-1 is taken: A-1-2. */
export function freeOrderId(wanted: string, taken: ReadonlySet<string>): string {
  let id = wanted;
  for (let more = 2; taken.has(id); more++) id = `${wanted}-${more}`;
  return id;
}
