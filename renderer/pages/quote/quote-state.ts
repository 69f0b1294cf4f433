import { type Accessor, batch, createMemo, createSignal, untrack } from "solid-js";
import { nextQuoteId } from "../../../core/quote/quote-number.ts";
import { localTime } from "../../../core/shop/local-time.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import type { ShopStore } from "../../store/shop-store.ts";
import { type Stores, useStores } from "../../store/stores.ts";
import {
  emptyRequest,
  isBlank,
  isSameRequest,
  type QuoteRequest,
  type ReadRequest,
  readRequest,
  requestOf,
} from "./request.ts";
import { type RequestEdits, requestEdits } from "./request-edits.ts";
import { atWorks } from "./works-clock.ts";

/** The quote that is looked at and the request as it is typed. What is typed and not saved stays until the shop is closed. */
export interface QuoteState extends RequestEdits {
  /** id of the quote that is looked at; null: a new one */
  readonly openId: Accessor<string | null>;
  /** it as it is in the shop; null: it is not saved yet */
  readonly quote: Accessor<Quote | null>;
  /** number that it has or will have */
  readonly quoteId: Accessor<string>;
  readonly request: Accessor<QuoteRequest>;
  readonly read: Accessor<ReadRequest>;
  /** sent and decided quotes stay as they are */
  readonly canEdit: Accessor<boolean>;
  readonly isEdited: Accessor<boolean>;
  readonly hasUnsaved: (quote: Quote) => boolean;
  /** true: something is typed as a new request that is not saved */
  readonly hasNew: Accessor<boolean>;
  /** back to the new request as it was left */
  readonly showNew: () => void;
  /** an empty one, or one like a quote, in place of the new request */
  readonly startNew: (like: Quote | null) => void;
  readonly open: (quoteId: string) => void;
  /** what was typed is in the shop now, as this quote */
  readonly saved: (quote: Quote) => void;
  /** key of the line whose answer is looked at */
  readonly lineKey: Accessor<number>;
  readonly setLineKey: (key: number) => void;
}

/** What was typed, by quote; the new one is under "". */
type Typed = ReadonlyMap<string, QuoteRequest>;

interface Kept {
  readonly openId: ReturnType<typeof createSignal<string | null>>;
  readonly typed: ReturnType<typeof createSignal<Typed>>;
  /** by quote: it as it was saved, and the request that it was saved from */
  readonly saved: Map<string, { readonly quote: Quote; readonly request: QuoteRequest }>;
}

const kept = new WeakMap<ShopStore, Kept>();

function keptOf(shop: ShopStore): Kept {
  const found = kept.get(shop) ?? {
    openId: createSignal<string | null>(null),
    typed: createSignal<Typed>(new Map([["", emptyRequest()]])),
    saved: new Map(),
  };
  kept.set(shop, found);
  return found;
}

/** Which quote is looked at, and what is typed of it. */
function createOpenQuote(stores: Stores) {
  const { shop, format } = stores;
  const { openId, typed, saved } = keptOf(shop);
  const quote = createMemo(() => shop.shop().quotes.find(({ id }) => id === openId[0]()) ?? null);
  const newId = createMemo(() => nextQuoteId(shop.shop(), yearOf(stores)));
  /** the request that a quote of the shop was saved from, or comes to */
  const requestFor = (one: Quote): QuoteRequest => {
    const known = saved.get(one.id);
    return known?.quote === one ? known.request : requestOf(one, untrack(format));
  };
  const fromShop = createMemo(() => {
    const one = quote();
    return one ? requestFor(one) : null;
  });
  const key = (): string => openId[0]() ?? "";
  const canEdit = createMemo(() => (quote()?.state ?? "draft") === "draft");
  const request = createMemo(
    () => (canEdit() ? typed[0]().get(key()) : null) ?? fromShop() ?? emptyRequest(),
  );
  return { quote, quoteId: () => openId[0]() ?? newId(), requestFor, fromShop, key, canEdit, request };
}

/** The state of the page; belongs to the root that made it, what was typed belongs to the shop. */
export function createQuoteState(): QuoteState {
  const stores = useStores();
  const { shop, format } = stores;
  const [openId, setOpenId] = keptOf(shop).openId;
  const [typed, setTyped] = keptOf(shop).typed;
  const savedFrom = keptOf(shop).saved;
  const [lineKey, setLineKey] = createSignal(0);
  const { quote, quoteId, requestFor, fromShop, key, canEdit, request } = createOpenQuote(stores);
  const read = createMemo(() =>
    readRequest(request(), { quoteId: quoteId(), shop: shop.shop(), format: format() }),
  );
  const put = (next: QuoteRequest): void => void setTyped((before) => new Map([...before, [key(), next]]));
  return {
    ...requestEdits(request, put),
    openId,
    quote,
    quoteId,
    request,
    read,
    canEdit,
    isEdited: createMemo(() => {
      const before = fromShop();
      return before ? !isSameRequest(before, request()) : request().lines.some((line) => !isBlank(line));
    }),
    hasUnsaved: (one) => {
      const words = one.state === "draft" ? typed().get(one.id) : undefined;
      return words !== undefined && !isSameRequest(words, requestFor(one));
    },
    hasNew: createMemo(() => {
      const { customer = "", lines = [] } = typed().get("") ?? {};
      return customer.trim() !== "" || lines.some((line) => !isBlank(line));
    }),
    showNew: () => void setOpenId(null),
    startNew: (like) => {
      const next = like ? renewed(requestOf(like, format())) : emptyRequest();
      batch(() => {
        setOpenId(null);
        put(next);
      });
    },
    open: (id) => void setOpenId(id),
    saved: (one) => {
      const words = withIds(request(), read());
      savedFrom.set(one.id, { quote: one, request: words });
      const isNew = openId() === null;
      // At once, so that nothing in between is asked.
      batch(() => {
        setTyped(
          (before) =>
            new Map([...before, ...(isNew ? [["", emptyRequest()] as const] : []), [one.id, words]]),
        );
        setOpenId(one.id);
      });
    },
    lineKey,
    setLineKey,
  };
}

/** A request whose lines have the ids under which they are saved; blank ones fall away. */
function withIds(request: QuoteRequest, read: ReadRequest): QuoteRequest {
  const lines = read.lines.flatMap(({ key, asked }) => {
    const line = request.lines.find((one) => one.key === key);
    return line ? [{ ...line, lineId: asked.id }] : [];
  });
  return { ...request, lines };
}

/** The same request as one that nobody has answered yet. */
function renewed(request: QuoteRequest): QuoteRequest {
  return { ...request, lines: request.lines.map((line) => ({ ...line, lineId: null })) };
}

function yearOf(stores: Stores): number {
  const { timeZone } = stores.shop.shop();
  return Number(localTime(atWorks(stores).nowMin, timeZone).date.slice(0, 4));
}
