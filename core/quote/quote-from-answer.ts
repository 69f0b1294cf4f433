import { instantOf } from "../shop/instants.ts";
import type { Quote, QuoteLine } from "../shop/quote.ts";
import type { Shop } from "../shop/shop.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";
import { roundMoney } from "../units/money.ts";
import type { AnswerLine, QuoteAnswer } from "./quote-answer.ts";

/** Whom a quote is for, and when. */
export interface QuoteHead {
  /** number of the quote, as shown */
  readonly id: string;
  readonly customer: string;
  readonly customerAddress: string;
  readonly note: string;
  /** asked for on, epoch minute */
  readonly askedMin: number;
}

/** Days for which a quote holds where the shop has no seller. */
const VALID_DAYS = 30;

/**
 * The quote that an answer comes to, as a draft: prices, breaks, promised dates with their likelihoods, costs, and what is missing to
 * the smallest order. Example: one line of 6 copies at 3.23 promised for Tuesday 07:00 with 84 %.
 */
export function quoteFromAnswer(
  { seller, timeZone, currency }: Pick<Shop, "seller" | "timeZone" | "currency">,
  answer: QuoteAnswer,
  head: QuoteHead,
): Quote {
  const at = (epochMin: number): string => instantOf(epochMin, timeZone);
  const { askedMin, ...words } = head;
  const surcharge = answer.total?.minimumSurcharge ?? 0;
  return {
    ...words,
    askedAt: at(askedMin),
    validUntil: at(askedMin + (seller?.validDays ?? VALID_DAYS) * MIN_PER_DAY),
    state: "draft",
    reason: "",
    ...(surcharge > 0 ? { minimumSurcharge: surcharge } : {}),
    lines: answer.lines.map((line) => quoteLine(line, currency, at)),
  };
}

function quoteLine(
  { asked, price, breaks, promise, costBasis }: AnswerLine,
  currency: string,
  at: (epochMin: number) => string,
): QuoteLine {
  const { id, partId, quantity, wantedMin, allowLate, machineId, feedstockId } = asked;
  return {
    id,
    partId,
    quantity,
    wantedAt: wantedMin === null ? null : at(wantedMin),
    allowLate,
    ...(machineId === undefined ? {} : { machineId }),
    ...(feedstockId === undefined ? {} : { feedstockId }),
    pricePerPiece: price?.pricePerPiece ?? null,
    oneOffPrice: price?.oneOffPrice ?? 0,
    breaks: [...breaks],
    promisedAt: promise ? at(promise.byMin) : null,
    likelihoodPct: promise?.likelihoodPct ?? null,
    unitCost: costBasis === null ? null : roundMoney(costBasis / quantity, currency),
  };
}
