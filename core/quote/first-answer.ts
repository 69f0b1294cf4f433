import type { Finding } from "../units/finding.ts";
import { answerLines, type Answered, type Effort } from "./answer-lines.ts";
import { type LinePrice, priceLine, priceRule, type QuoteTotal, quoteTotal } from "./price.ts";
import { lpPrice } from "./lp-price.ts";
import { ownCosts } from "./own-cost.ts";
import type { QuoteDesk } from "./quote-desk.ts";
import type { QuoteLineRequest } from "./quote-order.ts";
import { standingDates } from "./standing-dates.ts";
import type { Way } from "./ways-to-make.ts";

/** One line with a price and a date. */
export interface LineAnswer {
  readonly id: string;
  /** cheapest way by itself; null: it cannot be made here */
  readonly way: Way | null;
  /** what the line costs by itself, tool paths and first set-up in it, currency; null: it can neither be made nor bought */
  readonly ownCost: number | null;
  /** line of the request that its tool paths are charged with; null: they are in its own cost, or it needs none */
  readonly toolPathsWith: string | null;
  /** what the price is made from: its own cost, or its share of what the plan costs more if that is more */
  readonly costBasis: number | null;
  readonly price: LinePrice | null;
  /** last copy, epoch minute; null: no place */
  readonly finishMin: number | null;
  /** price of the line in the linear program: with less it displaces better work; null: without prices */
  readonly lpPrice: number | null;
}

/** Price and date of a request. */
export interface PricedLines {
  /** first: from a few ways of putting the lines in; all: from all of them */
  readonly effort: Effort;
  readonly lines: readonly LineAnswer[];
  readonly total: QuoteTotal | null;
  /** what the plan costs more, without the lines' own lateness, currency */
  readonly extraCost: number;
  readonly isHeld: boolean;
  readonly findings: readonly Finding[];
}

/**
 * Price and date at once: what each line costs by itself and what it adds to the standing plan, at its place in the free
 * calendar. The price is made from the greater of both, so that it never falls when a date is earlier. `charging` "apart" takes
 * tool paths and first set-up out of the price of the copies. Example: own cost 72, added 80 for Thursday, margin 25 % on price:
 * 106.67 on Thursday.
 */
export function firstAnswer(
  desk: QuoteDesk,
  lines: readonly QuoteLineRequest[],
  charging: "within" | "apart" = "within",
): PricedLines {
  return answerAt(desk, lines, charging, "first");
}

/**
 * Asks a desk for one copy of the shop's first part and lives through its standing work a few times, so that the first real
 * question finds everything ready. Example: the first question of a desk takes 0.1 s instead of 0.4 s.
 */
export function warmUp(desk: QuoteDesk): void {
  const [part] = desk.shop.parts;
  if (part)
    firstAnswer(desk, [{ id: WARM_UP, partId: part.id, quantity: 1, wantedMin: null, allowLate: true }]);
  standingDates(desk, WARM_UP_RUNS);
}

/** So few that they take a moment, and enough for the machine to learn them. */
const WARM_UP_RUNS = 100;

/** Were there such an order, the question would only be refused. */
const WARM_UP = "warm-up of the quote desk";

/** The same from all ways of putting the lines in. Example: 106.67 on Thursday becomes 101.33 at the same date. */
export function refinedAnswer(
  desk: QuoteDesk,
  lines: readonly QuoteLineRequest[],
  charging: "within" | "apart" = "within",
): PricedLines {
  return answerAt(desk, lines, charging, "all");
}

function answerAt(
  desk: QuoteDesk,
  lines: readonly QuoteLineRequest[],
  charging: "within" | "apart",
  effort: Effort,
): PricedLines {
  const answered = answerLines(desk, lines, effort);
  const own = ownCosts(desk.shop, lines);
  const ownSum = own.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  const factor = ownSum > 0 ? Math.max(1, answered.extraCost / ownSum) : 1;
  const rule = priceRule(desk.shop);
  const answers = lines.map((line, at): LineAnswer => {
    const { way, cost, oneOff, toolPathsWith } = own[at]!;
    const oneOffCost = charging === "apart" ? oneOff : 0;
    const costBasis = cost === null ? null : cost * factor;
    const copiesCost = costBasis === null ? 0 : costBasis - oneOffCost;
    const { quantity, id } = line;
    return {
      id,
      way,
      ownCost: cost,
      toolPathsWith,
      costBasis,
      price: costBasis === null ? null : priceLine({ quantity, copiesCost, oneOffCost }, rule),
      finishMin: answered.lines[at]?.finishMin ?? null,
      lpPrice: priceInProgram(desk, answered, line),
    };
  });
  const totals = answers.flatMap(({ price }) => (price ? [price.total] : []));
  return {
    effort: answered.hasAll ? "all" : effort,
    lines: answers,
    total: totals.length === answers.length ? quoteTotal(totals, rule) : null,
    extraCost: answered.extraCost,
    isHeld: answered.isHeld,
    findings: answered.findings,
  };
}

function priceInProgram(desk: QuoteDesk, { problem }: Answered, { id }: QuoteLineRequest): number | null {
  const line = problem.lines.find(({ orderId }) => orderId === id);
  return line ? lpPrice(desk.bound, problem, line.index) : null;
}
