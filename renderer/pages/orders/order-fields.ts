import type { Order } from "../../../core/shop/order.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import type { Unfit } from "../../components/grid/grid-column.ts";
import type { Format } from "../../format/format.ts";
import { quoted, readYesNo } from "./order-words.ts";

/** What is needed to read the texts of orders. */
export interface OrderReading {
  readonly format: Format;
  /** ids by id and by name, in small letters */
  readonly parts: ReadonlyMap<string, string>;
  readonly machines: ReadonlyMap<string, string>;
  readonly feedstocks: ReadonlyMap<string, string>;
}

/** Fields of an order that are typed, pasted and imported. */
export type OrderField =
  | "id"
  | "customer"
  | "part"
  | "quantity"
  | "due"
  | "release"
  | "lateCost"
  | "price"
  | "allowLate"
  | "perPiece"
  | "machine"
  | "feedstock"
  | "note";

/** Stands for the part of a line that has none yet: a finding asks for it, and the line is not planned. */
export const NO_PART = "?";
/** A due date without a time means so late on that day. */
export const USUAL_DUE_TIME = "16:00";
const USUAL_RELEASE_TIME = "00:00";
const MOST_ID_CHARS = 64;

/** Ids of entries by id and by name. A name that several share gives the first. */
export function idsByName(
  entries: readonly { readonly id: string; readonly name: string }[],
): Map<string, string> {
  const ids = new Map<string, string>();
  for (const { id, name } of entries) if (!ids.has(name.toLowerCase())) ids.set(name.toLowerCase(), id);
  for (const { id } of entries.toReversed()) ids.set(id.toLowerCase(), id);
  return ids;
}

export function orderReadingOf(
  shop: Pick<Shop, "parts" | "machines" | "feedstocks">,
  format: Format,
): OrderReading {
  return {
    format,
    parts: idsByName(shop.parts),
    machines: idsByName(shop.machines),
    feedstocks: idsByName(shop.feedstocks),
  };
}

/** Puts a text into a field of an order: the order with it, or why it does not fit and what to do. */
export function putOrderField(
  order: Order,
  field: OrderField,
  text: string,
  reading: OrderReading,
): Order | Unfit {
  return WRITERS[field](order, text.trim(), reading);
}

type Writer = (order: Order, text: string, reading: OrderReading) => Order | Unfit;

const WRITERS: Readonly<Record<OrderField, Writer>> = {
  id: (order, text) => {
    if (text === "" || text.length > MOST_ID_CHARS)
      return { unfit: `An order needs a name of 1 to ${MOST_ID_CHARS} characters.` };
    return { ...order, id: text };
  },
  customer: (order, text) => ({ ...order, customer: text }),
  note: (order, text) => ({ ...order, note: text }),
  part: (order, text, { parts }) => {
    const partId = parts.get(text.toLowerCase()) ?? text;
    if (partId.length > MOST_ID_CHARS)
      return { unfit: `There is no part ${quoted(text)}: write the name of one that exists.` };
    return { ...order, partId: partId === "" ? NO_PART : partId };
  },
  quantity: (order, text, { format }) => {
    const quantity = format.readNumber(text);
    if (quantity === null || !Number.isSafeInteger(quantity) || quantity < 1) {
      return { unfit: `${quoted(text)} is no quantity: write a whole number from 1 on.` };
    }
    return { ...order, quantity };
  },
  due: (order, text, { format }) => {
    const dueAt = format.readInstant(text, USUAL_DUE_TIME);
    return dueAt === null ? { unfit: dateUnfit(text) } : { ...order, dueAt };
  },
  release: (order, text, { format }) => {
    const releaseAt = format.readInstant(text, USUAL_RELEASE_TIME);
    return releaseAt === null ? { unfit: dateUnfit(text) } : { ...order, releaseAt };
  },
  lateCost: (order, text, { format }) => putAmount(order, "lateCostPerDay", text, format),
  price: (order, text, { format }) => putAmount(order, "pricePerPiece", text, format),
  allowLate: (order, text) => {
    const allowLate = readYesNo(text);
    return allowLate === null
      ? { unfit: `${quoted(text)} is neither yes nor no: write one of them.` }
      : { ...order, allowLate };
  },
  perPiece: (order, text) => {
    const perPiece = text.toLowerCase().startsWith("each")
      ? true
      : text.toLowerCase().startsWith("all")
        ? false
        : readYesNo(text);
    return perPiece === null
      ? { unfit: `${quoted(text)} says neither "each" nor "all": write one of them.` }
      : { ...order, perPiece };
  },
  machine: (order, text, { machines }) => putPin(order, "machineId", text, machines, "machine"),
  feedstock: (order, text, { feedstocks }) => putPin(order, "feedstockId", text, feedstocks, "feedstock"),
};

function dateUnfit(text: string): string {
  return text === ""
    ? "A date is missing: write it like 2026-11-30 16:00."
    : `${quoted(text)} is no date: write it like 2026-11-30 16:00.`;
}

function putAmount(
  order: Order,
  field: "lateCostPerDay" | "pricePerPiece",
  text: string,
  format: Format,
): Order | Unfit {
  const { [field]: _before, ...rest } = order;
  if (text === "") return rest;
  const bare = text.replace(new RegExp(`[€$£]|${format.currency}`, "gi"), "");
  const amount = format.readNumber(bare);
  if (amount === null || amount < 0)
    return { unfit: `${quoted(text)} is no amount: write a number from 0 on, or nothing.` };
  return { ...order, [field]: amount };
}

function putPin(
  order: Order,
  field: "machineId" | "feedstockId",
  text: string,
  known: ReadonlyMap<string, string>,
  word: string,
): Order | Unfit {
  const { pinned = {}, ...rest } = order;
  const { [field]: _before, ...others } = pinned;
  const pins = text === "" ? others : { ...others, [field]: known.get(text.toLowerCase()) };
  if (text !== "" && !known.has(text.toLowerCase())) {
    return {
      unfit: `There is no ${word} ${quoted(text)}: write the name of one that exists, or nothing for any.`,
    };
  }
  return Object.keys(pins).length === 0 ? rest : ({ ...rest, pinned: pins } as Order);
}
