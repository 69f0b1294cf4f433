import type { Quote } from "../shop/quote.ts";
import { quoteValue } from "./quote-value.ts";

/** How quotes of one size were decided. */
export interface SizeClass {
  /** values from here, currency; a power of ten */
  readonly from: number;
  /** to below here; ten times as much */
  readonly to: number;
  readonly accepted: number;
  readonly declined: number;
  /** drafts and sent ones */
  readonly open: number;
  /** accepted of those decided, 0 to 1; null: none is decided */
  readonly hitRate: number | null;
}

/** All quotes of a shop at a glance. */
export interface QuoteRecord {
  readonly counts: Readonly<Record<Quote["state"], number>>;
  /** accepted of those decided, 0 to 1; null: none is decided */
  readonly hitRate: number | null;
  /** the same by value instead of by number */
  readonly hitRateByValue: number | null;
  /** smallest first; sizes without quotes are left out */
  readonly sizes: readonly SizeClass[];
  /** why quotes were declined, the most frequent first; an empty one: nobody said */
  readonly reasons: readonly { readonly reason: string; readonly count: number; readonly value: number }[];
}

/**
 * What became of quotes: by state, by size (powers of ten, so that it fits every currency) and why they were declined. Quotes
 * without a price are counted among the states and reasons only. Example: of 10 quotes from 100 to below 1000 4 accepted, 2 declined: 0.667.
 */
export function quoteRecord(quotes: readonly Quote[], currency: string): QuoteRecord {
  const valued = quotes.map((quote) => ({ quote, value: quoteValue(quote, currency).total }));
  const inState = (state: Quote["state"]): Valued[] => valued.filter(({ quote }) => quote.state === state);
  const accepted = inState("accepted");
  const declined = inState("declined");
  return {
    counts: {
      draft: inState("draft").length,
      sent: inState("sent").length,
      accepted: accepted.length,
      declined: declined.length,
    },
    hitRate: shareOf(accepted.length, declined.length),
    hitRateByValue: shareOf(sumOf(accepted), sumOf(declined)),
    sizes: sizesOf(valued),
    reasons: reasonsOf(declined),
  };
}

interface Valued {
  readonly quote: Quote;
  readonly value: number | null;
}

function shareOf(accepted: number, declined: number): number | null {
  return accepted + declined > 0 ? accepted / (accepted + declined) : null;
}

function sumOf(list: readonly Valued[]): number {
  return list.reduce((sum, { value }) => sum + (value ?? 0), 0);
}

function sizesOf(valued: readonly Valued[]): SizeClass[] {
  const byPower = new Map<number, Valued[]>();
  for (const one of valued) {
    const power = powerOf(one.value);
    if (power !== null) byPower.set(power, [...(byPower.get(power) ?? []), one]);
  }
  const ascending = [...byPower].toSorted(([a], [b]) => a - b);
  return ascending.map(([power, list]) => {
    const count = (...states: Quote["state"][]): number =>
      list.filter(({ quote }) => states.includes(quote.state)).length;
    const accepted = count("accepted");
    const declined = count("declined");
    return {
      from: 10 ** power,
      to: 10 ** (power + 1),
      accepted,
      declined,
      open: count("draft", "sent"),
      hitRate: shareOf(accepted, declined),
    };
  });
}

/** The power of ten at or below a value; null: it has none. Powers are compared, since logarithms of them are not exact. */
function powerOf(value: number | null): number | null {
  if (value === null || value <= 0) return null;
  const near = Math.round(Math.log10(value));
  return 10 ** near <= value ? near : near - 1;
}

function reasonsOf(declined: readonly Valued[]): QuoteRecord["reasons"] {
  const byReason = new Map<string, Valued[]>();
  for (const one of declined) {
    const reason = one.quote.reason.trim();
    byReason.set(reason, [...(byReason.get(reason) ?? []), one]);
  }
  return [...byReason]
    .map(([reason, list]) => ({ reason, count: list.length, value: sumOf(list) }))
    .toSorted((a, b) => b.count - a.count || (a.reason < b.reason ? -1 : 1));
}
