import { MOST_COPIES } from "../../../core/quote/lines-table.ts";
import type { QuoteAsked } from "../../../core/quote/quote-answer.ts";
import { freeOrderId, quoteLineId } from "../../../core/quote/quote-number.ts";
import type { QuoteLineRequest } from "../../../core/quote/quote-order.ts";
import type { RushOption } from "../../../core/quote/rush.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import type { Format } from "../../format/format.ts";

/** One line as it is typed. */
export interface RequestLine {
  /** tells lines apart while they are typed */
  readonly key: number;
  /** of a line that was saved; null: it gets one */
  readonly lineId: string | null;
  readonly part: string;
  readonly quantity: string;
  readonly wanted: string;
  readonly mustHold: boolean;
  /** empty: any */
  readonly machineId: string;
  readonly feedstockId: string;
  /** an offer that was taken and that the works must do something for */
  readonly taken: RushOption | null;
}

/** A request as it is typed. */
export interface QuoteRequest {
  readonly customer: string;
  readonly customerAddress: string;
  readonly note: string;
  /** tool paths and first set-up charged once, beside the copies */
  readonly isApart: boolean;
  /** likelihood with which a promised date is kept, % */
  readonly promisePct: number;
  readonly lines: readonly RequestLine[];
}

/** What is wrong with a line, by field; a field that is still empty is not wrong. */
interface LineFaults {
  readonly part: string | null;
  readonly quantity: string | null;
  readonly wanted: string | null;
}

/** A request as it is read. */
export interface ReadRequest {
  /** lines that say enough to be answered, by key */
  readonly lines: readonly { readonly key: number; readonly asked: QuoteLineRequest }[];
  readonly faults: ReadonlyMap<number, LineFaults>;
  /** lines that are begun and cannot be answered yet */
  readonly unready: number;
}

/** Time of day of a wanted date that names none: the end of a usual day shift (common practice, no source). */
const USUAL_TIME = "16:00";
const PROMISE_PCT = 80;

let keys = 0;

/** A line to start from. */
export function emptyLine(): RequestLine {
  const words = { part: "", quantity: "", wanted: "", machineId: "", feedstockId: "" };
  return { key: ++keys, lineId: null, ...words, mustHold: false, taken: null };
}

/** A request to start from, with one empty line. */
export function emptyRequest(): QuoteRequest {
  const words = { customer: "", customerAddress: "", note: "" };
  return { ...words, isApart: false, promisePct: PROMISE_PCT, lines: [emptyLine()] };
}

/** A saved quote as a request. Example: a line wanted on 2026-12-04 at 12:00 has "2026-12-04 12:00" in its field. */
export function requestOf(quote: Quote, format: Format): QuoteRequest {
  const { customer, customerAddress, note } = quote;
  const lines = quote.lines.map(
    (line): RequestLine => ({
      key: ++keys,
      lineId: line.id,
      part: line.partId,
      quantity: String(line.quantity),
      wanted: line.wantedAt === null ? "" : format.editedDateTime(line.wantedAt),
      mustHold: !line.allowLate,
      machineId: line.machineId ?? "",
      feedstockId: line.feedstockId ?? "",
      taken: null,
    }),
  );
  const isApart = quote.lines.some(({ oneOffPrice }) => oneOffPrice > 0);
  return { customer, customerAddress, note, isApart, promisePct: PROMISE_PCT, lines };
}

/** True where two requests ask and say the same. */
export function isSameRequest(a: QuoteRequest, b: QuoteRequest): boolean {
  return withoutKeys(a) === withoutKeys(b);
}

function withoutKeys(request: QuoteRequest): string {
  const lines = request.lines.filter((line) => !isBlank(line)).map((line) => ({ ...line, key: 0 }));
  return JSON.stringify({ ...request, lines });
}

/** True for a line in which nothing has been typed. */
export function isBlank({ part, quantity, wanted, machineId, feedstockId }: RequestLine): boolean {
  return [part, quantity, wanted, machineId, feedstockId].every((text) => text.trim() === "");
}

/** The part that a text means: its id, or its name where one part alone has it; null: none. */
export function partIdOf(text: string, { parts }: Pick<Shop, "parts">): string | null {
  const wanted = text.trim();
  if (wanted === "") return null;
  if (parts.some(({ id }) => id === wanted)) return wanted;
  const named = parts.filter(({ name }) => name.trim().toLowerCase() === wanted.toLowerCase());
  return named.length === 1 ? (named[0]?.id ?? null) : null;
}

/** Reads a request: what can be asked of it, and what is wrong with the rest. `quoteId` names its lines. */
export function readRequest(
  { lines }: QuoteRequest,
  { quoteId, shop, format }: { readonly quoteId: string; readonly shop: Shop; readonly format: Format },
): ReadRequest {
  const taken = new Set(lines.flatMap(({ lineId }) => lineId ?? []));
  for (const { id } of shop.orders) taken.add(id);
  const faults = new Map<number, LineFaults>();
  const ready = lines.flatMap((line, place) => {
    const read = readLine(line, shop, format);
    faults.set(line.key, read.faults);
    if (!read.asked) return [];
    const id = idOf(line, freeOrderId(quoteLineId(quoteId, place + 1, shop), taken), shop);
    taken.add(id);
    return [{ key: line.key, asked: { id, ...read.asked } }];
  });
  const begun = lines.filter((line) => !isBlank(line)).length;
  return { lines: ready, faults, unready: begun - ready.length };
}

/** A saved line keeps its id, unless an order has it by now. */
function idOf({ lineId }: RequestLine, free: string, { orders }: Shop): string {
  return lineId === null || orders.some(({ id }) => id === lineId) ? free : lineId;
}

/** What the worker is asked; null: no line says enough yet. */
export function askedOf({ isApart, promisePct }: QuoteRequest, { lines }: ReadRequest): QuoteAsked | null {
  if (lines.length === 0) return null;
  return { lines: lines.map(({ asked }) => asked), charging: isApart ? "apart" : "within", promisePct };
}

interface ReadLine {
  readonly asked: Omit<QuoteLineRequest, "id"> | null;
  readonly faults: LineFaults;
}

function readLine(line: RequestLine, shop: Shop, format: Format): ReadLine {
  const { mustHold, machineId, feedstockId } = line;
  const partId = partIdOf(line.part, shop);
  const quantity = format.readNumber(line.quantity);
  const isCount = quantity !== null && Number.isInteger(quantity) && quantity >= 1 && quantity <= MOST_COPIES;
  const wanted = line.wanted.trim() === "" ? null : format.readInstant(line.wanted, USUAL_TIME);
  const faults = {
    part: partId === null && line.part.trim() !== "" ? NO_PART : null,
    quantity:
      isCount || line.quantity.trim() === ""
        ? null
        : `Write a whole number from 1 to ${format.number(MOST_COPIES, 0)}.`,
    wanted: wanted === null && line.wanted.trim() !== "" ? NO_DATE : null,
  };
  if (partId === null || !isCount || faults.wanted !== null) return { asked: null, faults };
  const pins = {
    ...(machineId === "" ? {} : { machineId }),
    ...(feedstockId === "" ? {} : { feedstockId }),
  };
  const wantedMin = wanted === null ? null : minuteOf(wanted, shop.timeZone);
  return { asked: { partId, quantity, wantedMin, allowLate: !mustHold, ...pins }, faults };
}

const NO_PART = "The shop has no such part: choose one of the list, or drop its STL or 3MF file here.";
const NO_DATE = "This is no date: write it like 2026-12-04 or 2026-12-04 12:00.";
