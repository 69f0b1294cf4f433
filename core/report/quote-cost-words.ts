import type { Crossover } from "../quote/crossover.ts";
import type { LineWays } from "../quote/line-ways.ts";
import type { PriceRule } from "../quote/price.ts";
import type { AnswerLine } from "../quote/quote-answer.ts";
import type { Process } from "../shop/machine.ts";
import { fixedText } from "./display.ts";
import { copiesText, LEAST_TOLD, type QuoteContext } from "./quote-facts.ts";

/** What a price's margin is a share of. Example: "margin of 20 % of the price"; "mark-up of 25 % on cost". */
export function marginText({ marginPct, marginOn }: PriceRule): string {
  const share = `${fixedText(marginPct, Number.isInteger(marginPct) ? 0 : 1)}\u202f%`;
  return marginOn === "cost" ? `mark-up of ${share} on cost` : `margin of ${share} of the price`;
}

/** What the price of a line is made from, in a sentence. Example: "a cost of 2.58 EUR each by itself, and a margin of 20 % of the price". */
export function costText(
  { unitCost, costBasis, asked, toolPathsWith }: AnswerLine,
  { display, answer }: QuoteContext,
): string {
  if (unitCost === null || costBasis === null || !answer) return "it can neither be made nor bought";
  const own = `a cost of ${display.money(unitCost)} each by itself`;
  const displaced = costBasis / asked.quantity - unitCost;
  const more =
    displaced * asked.quantity >= LEAST_TOLD
      ? `, ${display.money(displaced)} each for the work that it displaces or delays`
      : "";
  const paths = toolPathsWith === null ? "" : `, its tool paths charged with line ${toolPathsWith}`;
  return `${own}${paths}${more}, and a ${marginText(answer.rule)}`;
}

/** Why ways are closed, the sentence that closes most of them first. */
export function refusals({ refused }: LineWays, most: number): string[] {
  const counts = new Map<string, number>();
  for (const { reasons } of refused) {
    for (const { sentence } of reasons) counts.set(sentence, (counts.get(sentence) ?? 0) + 1);
  }
  const byCount = [...counts].toSorted(([, a], [, b]) => b - a);
  return byCount.slice(0, most).map(([sentence]) => sentence);
}

/** Where filament and pellets cross over, in a sentence; empty where only one of them can make the part. */
export function crossingText({ byQuantity, bySize }: NonNullable<AnswerLine["crossover"]>): string {
  const first = byQuantity.costs.find(({ filament, pellet }) => filament !== null && pellet !== null);
  if (!first) return "";
  const count = byQuantity.crossings.map(
    ({ from, cheaper }) => `${word(cheaper)} from ${copiesText(from)} on`,
  );
  const size = bySize.crossings.map(
    ({ from, cheaper }) => `${word(cheaper)} from ${fixedText(from, 2)} times its size on`,
  );
  const byCount =
    count.length > 0 ? count.join(", then ") : `${cheaperEverywhere(byQuantity)} at every quantity`;
  return `By quantity: ${byCount}. By size at this quantity: ${size.length > 0 ? size.join(", then ") : "no crossing from a quarter to four times its size"}.`;
}

function word(process: Process): string {
  return process === "filament" ? "filament" : "pellets";
}

function cheaperEverywhere({ costs }: Crossover): string {
  const both = costs.find(({ filament, pellet }) => filament !== null && pellet !== null);
  return `${(both?.filament ?? 0) <= (both?.pellet ?? 0) ? "filament is" : "pellets are"} the cheaper`;
}
