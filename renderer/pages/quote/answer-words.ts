import type { Crossover } from "../../../core/quote/crossover.ts";
import type { Likelihood } from "../../../core/quote/dates/likelihood.ts";
import type { OtherOrder, QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { likelihoodText } from "../../../core/report/quote-facts.ts";
import { instantOf } from "../../../core/shop/instants.ts";
import type { Format } from "../../format/format.ts";

/** Date and time of an epoch minute as everywhere on the screen. */
export function timeText(epochMin: number, format: Format): string {
  return format.dateTime(instantOf(epochMin, format.timeZone));
}

/** What of an answer is still to come, in words; empty: it is whole. */
export function stillComing(answer: QuoteAnswer): string[] {
  if (!answer.isRough) return [];
  const isKnown = answer.stage === "whole";
  return [
    ...(answer.runs === 0 && answer.stage === "first" ? ["how likely each date is kept"] : []),
    ...(answer.others === null ? ["the floor of the price", "what it does to other orders"] : []),
    ...(isKnown ? [] : ["what price and date depend on"]),
    "what would hold a wanted date",
  ];
}

/** An answer as one sentence to be read out. Example: "Rough answer: 49.38 EUR, to promise for Tue 1 Dec 07:00." */
export function spokenAnswer({ isRough, total, lines }: QuoteAnswer, format: Format): string {
  const money = total ? format.money(total.total) : "no price for all of it";
  const dates = lines.flatMap(({ promise }) => promise?.byMin ?? []);
  const when =
    dates.length === lines.length && lines.length > 0
      ? `to promise for ${timeText(Math.max(...dates), format)}`
      : "no date for all of it";
  return `${isRough ? "Rough answer, being refined" : "Whole answer"}: ${money}, ${when}.`;
}

/** A counted likelihood with its standard error, or why there is none. */
export function chanceText(likelihood: Likelihood, format: Format): string {
  if (likelihood.status === "unknown") return likelihood.reasons.join(" ");
  const error = format.fixed(likelihood.standardError * 100, 1);
  return `${likelihoodText(likelihood.likelihood * 100)} (± ${error} points)`;
}

/** What the lines do to another order on average. Example: "2 h 10 min later". */
export function shiftText({ laterMin }: OtherOrder, format: Format): string {
  const length = format.duration(Math.abs(laterMin));
  return laterMin >= 0 ? `${length} later` : `${length} earlier`;
}

/** Where filament and pellets cross over, in a sentence; `at` writes a quantity or a size. */
export function crossoverText({ costs, crossings }: Crossover, at: (value: number) => string): string | null {
  const withBoth = costs.some(({ filament, pellet }) => filament !== null && pellet !== null);
  const first = costs.find(({ filament, pellet }) => filament !== null || pellet !== null);
  if (!first) return null;
  if (!withBoth && crossings.length === 0) {
    return `Only ${costs.some(({ filament }) => filament !== null) ? "filament" : "pellets"} can make it.`;
  }
  if (crossings.length === 0) return `The cheaper is ${WORDS[cheaperOf(first)]} everywhere.`;
  const start = first === costs[0] ? [WORDS[cheaperOf(first)]] : [];
  const steps = crossings.map(({ from, cheaper }) => `from ${at(from)} on ${WORDS[cheaper]}`);
  return `The cheaper is ${[...start, ...steps].join(", ")}.`;
}

const WORDS = { filament: "filament", pellet: "pellets" } as const;

function cheaperOf({ filament, pellet }: Crossover["costs"][number]): keyof typeof WORDS {
  if (filament === null) return "pellet";
  return pellet === null || filament <= pellet ? "filament" : "pellet";
}
