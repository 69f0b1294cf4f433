import type { Shop } from "./shop.ts";

/** The lists of a shop in the order of the document: what comes later refers to what comes earlier. */
export const SHOP_LISTS = [
  "calendars",
  "machines",
  "feedstocks",
  "parts",
  "orders",
  "builds",
  "quotes",
  "cases",
] as const;

export type ShopList = (typeof SHOP_LISTS)[number];

/** One entry of a list. */
export type Entry<List extends ShopList = ShopList> = Shop[List][number];

/** What one entry is called in a sentence. */
export const ENTRY_WORD: Readonly<Record<ShopList, string>> = {
  calendars: "calendar",
  machines: "machine",
  feedstocks: "feedstock",
  parts: "part",
  orders: "order",
  builds: "build",
  quotes: "quote",
  cases: "case",
};
