import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { quoteFromAnswer, type QuoteHead } from "../../../core/quote/quote-from-answer.ts";
import { instantOf } from "../../../core/shop/instants.ts";
import type { Quote, QuoteLine } from "../../../core/shop/quote.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { MIN_PER_DAY } from "../../../core/units/conversions.ts";
import { type OfferedLine, offeredOf } from "./offered.ts";
import type { QuoteRequest, ReadRequest } from "./request.ts";

/** What a quote is made of. */
interface MadeFrom {
  readonly shop: Shop;
  readonly request: QuoteRequest;
  readonly read: ReadRequest;
  readonly answer: QuoteAnswer | null;
  readonly quoteId: string;
  /** asked for on, epoch minute */
  readonly askedMin: number;
}

/**
 * A draft of what is typed with its answer, offers that were taken in it; without an answer it has no prices yet. Null: nothing
 * is asked for. Example: one line of 40 copies answered with 11.67 gives a quote of 466.80.
 */
export function madeQuote({ shop, request, read, answer, quoteId, askedMin }: MadeFrom): Quote | null {
  if (read.lines.length === 0) return null;
  const { customer, customerAddress, note } = request;
  const head = { id: quoteId, customer: customer.trim(), customerAddress, note, askedMin };
  if (!answer) return unpriced(shop, read, head);
  const { minimumSurcharge: _asAnswered, ...quote } = quoteFromAnswer(shop, answer, head);
  const offered = offeredOf(answer, request, read);
  const lines = quote.lines.map((line, at) => withOffer(line, offered.lines[at], shop));
  const minimumSurcharge = offered.total?.minimumSurcharge ?? 0;
  return { ...quote, lines, ...(minimumSurcharge > 0 ? { minimumSurcharge } : {}) };
}

/** A line at the price of the offer that was taken, promised for the date that it was made for. */
function withOffer(line: QuoteLine, offered: OfferedLine | undefined, { timeZone }: Shop): QuoteLine {
  if (!offered?.taken || !offered.price || offered.byMin === null) return line;
  const { pricePerPiece, oneOffPrice } = offered.price;
  return {
    ...line,
    pricePerPiece,
    oneOffPrice,
    breaks: [],
    promisedAt: instantOf(offered.byMin, timeZone),
    likelihoodPct: null,
  };
}

const VALID_DAYS = 30;

function unpriced(shop: Shop, read: ReadRequest, head: QuoteHead): Quote {
  const at = (epochMin: number): string => instantOf(epochMin, shop.timeZone);
  const { askedMin, ...words } = head;
  return {
    ...words,
    askedAt: at(askedMin),
    validUntil: at(askedMin + (shop.seller?.validDays ?? VALID_DAYS) * MIN_PER_DAY),
    state: "draft",
    reason: "",
    lines: read.lines.map(({ asked: { wantedMin, ...line } }) => ({
      ...line,
      wantedAt: wantedMin === null ? null : at(wantedMin),
      pricePerPiece: null,
      oneOffPrice: 0,
      breaks: [],
      promisedAt: null,
      likelihoodPct: null,
      unitCost: null,
    })),
  };
}
