import type { KeptDate, Likelihood } from "../quote/dates/likelihood.ts";
import type { AnswerLine, QuoteAnswer } from "../quote/quote-answer.ts";
import { type QuoteValue, quoteValue } from "../quote/quote-value.ts";
import type { Quote, QuoteLine } from "../shop/quote.ts";
import type { Part } from "../shop/part.ts";
import type { Shop } from "../shop/shop.ts";
import { durationText } from "../shop/time-words.ts";
import { countText, type Display, displayOf, fixedText } from "./display.ts";
import { type Names, namesOf } from "./names.ts";

/** A quote with what it was made from, ready to be written for people. */
export interface QuoteContext {
  readonly shop: Shop;
  readonly quote: Quote;
  /** null: only the quote itself was kept */
  readonly answer: QuoteAnswer | null;
  readonly value: QuoteValue;
  readonly display: Display;
  readonly names: Names;
  partOf(line: QuoteLine): Part | null;
  /** what was answered for a line of the quote */
  answerOf(line: QuoteLine): AnswerLine | null;
}

/** Opens a quote for writing. Dates show their year where it is not that in which it was asked for. */
export function quoteContext(shop: Shop, quote: Quote, answer: QuoteAnswer | null): QuoteContext {
  const parts = new Map(shop.parts.map((part) => [part.id, part]));
  return {
    shop,
    quote,
    answer,
    value: quoteValue(quote, shop.currency),
    display: displayOf(shop, quote.askedAt),
    names: namesOf(shop),
    partOf: ({ partId }) => parts.get(partId) ?? null,
    answerOf: ({ id }) => answer?.lines.find(({ asked }) => asked.id === id) ?? null,
  };
}

/** A counted likelihood; 0 and 100 % are never claimed of a number of runs. Examples: "84 %", "over 99 %", "under 1 %". */
export function likelihoodText(likelihoodPct: number): string {
  if (likelihoodPct > 99) return "over 99\u202f%";
  if (likelihoodPct < 1) return "under 1\u202f%";
  return `${fixedText(likelihoodPct, 0)}\u202f%`;
}

/** A likelihood with its standard error, or why there is none. Example: "84 % (standard error 0.8 points)". */
export function counted(likelihood: Likelihood): string {
  if (likelihood.status === "unknown") return likelihood.reasons.join(" ");
  const { likelihood: share, standardError } = likelihood;
  const error = standardError > 0 ? ` (standard error ${fixedText(standardError * 100, 1)} points)` : "";
  return `${likelihoodText(share * 100)}${error}`;
}

/** A date that is kept with a likelihood. Example: "80 %: Tue 1 Dec 2026 06:54 (give or take 4 min)". */
export function keptText({ likelihoodPct, byMin, errorMin }: KeptDate, display: Display): string {
  if (byMin === null) return `${likelihoodPct}\u202f%: never in so many of the runs`;
  const error = errorMin !== null && errorMin >= 1 ? ` (give or take ${durationText(errorMin)})` : "";
  return `${likelihoodPct}\u202f%: ${display.dateTime(byMin)}${error}`;
}

/** Amounts below this are not told apart, currency. */
export const LEAST_TOLD = 0.01;

/** What the floor says, in sentences. Money of all lines together. */
export function floorText({ floor, total }: QuoteAnswer, display: Display): string {
  if (!floor) return "No floor: the lines have no place in the plan.";
  const { lowest, highest } = floor;
  const range =
    highest - lowest < LEAST_TOLD
      ? `The floor is ${display.money(highest)}: sold for less, this work displaces better work.`
      : `The floor lies between ${display.money(lowest)} and ${display.money(highest)}: sold for less than the lower figure this work displaces better work, for more than the higher one it does not.`;
  if (!total) return range;
  if (total.total < lowest) return `${range} The price asked lies below it.`;
  return total.total < highest ? `${range} The price asked lies between them.` : range;
}

/** The sentence for a wanted date that nothing holds; empty where it is promised, or something would hold it. */
export function hopelessText({ asked, promise, rush }: AnswerLine, display: Display): string {
  const { wantedMin } = asked;
  const isMissed = wantedMin !== null && promise !== null && promise.byMin > wantedMin;
  if (!isMissed || !rush || rush.length > 0) return "";
  return `Nothing that was tried would hold ${display.dateTime(wantedMin)}: neither other machines and feedstocks, overtime, a part of the copies, nor buying.`;
}

/** A quantity of copies. Example: "40 copies". */
export function copiesText(quantity: number): string {
  return countText(quantity, "copy", "copies");
}
