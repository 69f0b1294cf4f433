import type { Change } from "../shop/change.ts";
import { about, type Finding } from "../shop/finding.ts";
import { instantOf, minuteOf } from "../shop/instants.ts";
import type { Order } from "../shop/order.ts";
import type { Quote, QuoteLine } from "../shop/quote.ts";
import type { Shop } from "../shop/shop.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";
import { minorUnitDigits } from "../units/currency.ts";
import { freeOrderId } from "./quote-number.ts";

/** What a decision does to the shop: changes in order, none where a finding is an error. */
export interface QuoteDecision {
  readonly changes: readonly Change[];
  readonly findings: readonly Finding[];
}

/** When a quote is accepted, and how hard its dates are. */
export interface Acceptance {
  /** epoch minute */
  readonly atMin: number;
  /** may the orders be late? left out: as each line says */
  readonly allowLate?: boolean;
}

/**
 * Accepting a quote: its lines become orders, due when they were promised and at the agreed price, and the quote knows them. An
 * order has the id of its line, or a free one like it. A quote that is decided, or has a line without price or date, stays as it
 * is, with findings. Example: Q-2026-0007 of two lines gives two orders and the quote in state accepted.
 */
export function acceptQuote(shop: Shop, quote: Quote, { atMin, allowLate }: Acceptance): QuoteDecision {
  const findings = acceptFindings(shop, quote, atMin);
  if (findings.some(({ severity }) => severity === "error")) return { changes: [], findings };
  const taken = new Set(shop.orders.map(({ id }) => id));
  const ordered = quote.lines.map((line): { order: Order; line: QuoteLine } => {
    const id = freeOrderId(line.id, taken);
    taken.add(id);
    const order = orderOfLine({ shop, quote, line, id, atMin });
    return { order: { ...order, allowLate: allowLate ?? order.allowLate }, line: { ...line, orderId: id } };
  });
  const decidedAt = instantOf(atMin, shop.timeZone);
  const lines = ordered.map(({ line }) => line);
  return {
    changes: [
      ...ordered.map(({ order }): Change => ({ kind: "put", list: "orders", entry: order, at: null })),
      putQuote({ ...quote, state: "accepted", decidedAt, lines }),
    ],
    findings,
  };
}

/**
 * Declining a quote: it keeps why. Example: declined for "price": state declined, the reason and the time stay with it.
 */
export function declineQuote(
  shop: Pick<Shop, "timeZone">,
  quote: Quote,
  { atMin, reason }: { readonly atMin: number; readonly reason: string },
): QuoteDecision {
  const findings = decidedFindings(quote);
  if (findings.length > 0) return { changes: [], findings };
  const decidedAt = instantOf(atMin, shop.timeZone);
  return { changes: [putQuote({ ...quote, state: "declined", decidedAt, reason: reason.trim() })], findings };
}

function putQuote(entry: Quote): Change {
  return { kind: "put", list: "quotes", entry, at: null };
}

interface OrderFrom {
  readonly shop: Shop;
  readonly quote: Quote;
  readonly line: QuoteLine;
  readonly id: string;
  readonly atMin: number;
}

function orderOfLine({ shop, quote, line, id, atMin }: OrderFrom): Order {
  const { partId, quantity, promisedAt, pricePerPiece, allowLate, machineId, feedstockId } = line;
  if (promisedAt === null || pricePerPiece === null) throw new RangeError(`line ${line.id} is not ready`);
  const pinned = {
    ...(machineId === undefined ? {} : { machineId }),
    ...(feedstockId === undefined ? {} : { feedstockId }),
  };
  return {
    id,
    customer: quote.customer,
    partId,
    quantity,
    releaseAt: instantOf(atMin, shop.timeZone),
    dueAt: promisedAt,
    pricePerPiece,
    allowLate,
    perPiece: false,
    ...(Object.keys(pinned).length > 0 ? { pinned } : {}),
    note: noteOf(quote, line, shop.currency),
  };
}

/** An order has no place for what is charged once: its note says it. */
function noteOf({ id }: Quote, { oneOffPrice }: QuoteLine, currency: string): string {
  if (oneOffPrice === 0) return `Quote ${id}`;
  const amount = oneOffPrice.toFixed(minorUnitDigits(currency));
  return `Quote ${id}; ${amount} ${currency} once for tool paths and first set-up`;
}

function acceptFindings(shop: Shop, quote: Quote, atMin: number): Finding[] {
  const say = about("quotes", quote.id);
  const { validUntil, askedAt, lines } = quote;
  const isOver = minuteOf(validUntil, shop.timeZone) < atMin;
  const isOld = minuteOf(askedAt, shop.timeZone) + MIN_PER_DAY < atMin;
  return [
    ...decidedFindings(quote),
    ...lines.flatMap((line, at) => lineFindings(shop, { id: quote.id, line, at }, atMin)),
    ...(isOver
      ? [say.warning("validUntil", "not-valid", `it held until ${validUntil}; check its prices and dates`)]
      : []),
    ...(isOld && !isOver ? [say.warning("askedAt", "old-dates", OLD_DATES)] : []),
  ];
}

const OLD_DATES =
  "its dates were promised for an order on the day on which it was asked for; plan with the new orders and see whether they hold";

function decidedFindings({ id, state }: Quote): Finding[] {
  if (state !== "accepted" && state !== "declined") return [];
  const what = `it has been ${state} already; make a new quote to change that`;
  return [about("quotes", id).error("state", "decided", what)];
}

function lineFindings(
  { parts, timeZone }: Shop,
  { id, line, at }: { readonly id: string; readonly line: QuoteLine; readonly at: number },
  atMin: number,
): Finding[] {
  const say = about("quotes", id);
  const { partId, pricePerPiece, promisedAt } = line;
  const findings: Finding[] = [];
  const fault = (field: string, code: string, what: string): void => {
    findings.push(say.error(`lines/${at}/${field}`, code, `line ${line.id} ${what}`));
  };
  if (!parts.some((part) => part.id === partId)) {
    fault("partId", "unknown-part", `names part ${partId}, which does not exist; add the part first`);
  }
  if (pricePerPiece === null) fault("pricePerPiece", "no-price", "has no price; enter one or quote it again");
  if (promisedAt === null) {
    fault("promisedAt", "no-date", "has no promised date; enter one or quote it again");
  } else if (minuteOf(promisedAt, timeZone) <= atMin) {
    fault("promisedAt", "date-past", `was promised for ${promisedAt}, which has passed; quote it again`);
  }
  return findings;
}
