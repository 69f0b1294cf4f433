import { type LinePrice, type QuoteTotal, quoteTotal } from "../../../core/quote/price.ts";
import type { AnswerLine, QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import type { RushOption } from "../../../core/quote/rush.ts";
import type { QuoteRequest, ReadRequest } from "./request.ts";

/** One line as it would be offered: as answered, or at the price and date of an offer that was taken. */
export interface OfferedLine {
  readonly line: AnswerLine;
  readonly price: LinePrice | null;
  /** date to promise, epoch minute */
  readonly byMin: number | null;
  /** null: not simulated */
  readonly likelihoodPct: number | null;
  readonly taken: RushOption | null;
}

/** What would be offered. */
export interface Offered {
  readonly lines: readonly OfferedLine[];
  /** null: a line has no price */
  readonly total: QuoteTotal | null;
}

/**
 * An answer with the offers that were taken. Example: 40 copies at 11.67 with a Saturday shift taken at 15.20: 608.00 in all,
 * promised for the wanted date.
 */
export function offeredOf(answer: QuoteAnswer, request: QuoteRequest, read: ReadRequest): Offered {
  const lines = answer.lines.map((line) => offeredLine(line, takenFor(line, request, read)));
  if (lines.every(({ taken }) => taken === null)) return { lines, total: answer.total };
  const totals = lines.flatMap(({ price }) => (price ? [price.total] : []));
  return { lines, total: totals.length === lines.length ? quoteTotal(totals, answer.rule) : null };
}

function offeredLine(line: AnswerLine, taken: RushOption | null): OfferedLine {
  const { price, promise, asked } = line;
  if (taken?.price) {
    return {
      line,
      price: taken.price,
      byMin: asked.wantedMin ?? taken.finishMin,
      likelihoodPct: null,
      taken,
    };
  }
  return {
    line,
    price,
    byMin: promise?.byMin ?? null,
    likelihoodPct: promise?.likelihoodPct ?? null,
    taken: null,
  };
}

function takenFor({ asked }: AnswerLine, request: QuoteRequest, read: ReadRequest): RushOption | null {
  const key = read.lines.find((one) => one.asked.id === asked.id)?.key;
  return request.lines.find((line) => line.key === key)?.taken ?? null;
}
