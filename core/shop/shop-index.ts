import type { Calendar } from "./calendar.ts";
import type { Feedstock } from "./feedstock.ts";
import { isInstant, isTimeZone, minuteOf } from "./instants.ts";
import type { Machine } from "./machine.ts";
import type { Order } from "./order.ts";
import type { Part } from "./part.ts";
import type { Shop } from "./shop.ts";

/** A shop with its entries by id (the first of each id), for checks that follow references. */
export interface ShopIndex {
  readonly shop: Shop;
  readonly calendars: ReadonlyMap<string, Calendar>;
  readonly machines: ReadonlyMap<string, Machine>;
  readonly feedstocks: ReadonlyMap<string, Feedstock>;
  readonly parts: ReadonlyMap<string, Part>;
  readonly orders: ReadonlyMap<string, Order>;
  /** the shop's time zone; UTC where that is unknown, so that dates can still be compared */
  readonly timeZone: string;
}

/** Indexes a shop. Example: indexShop(shop).orders.get("O-17") is the first order of that id. */
export function indexShop(shop: Shop): ShopIndex {
  return {
    shop,
    calendars: byId(shop.calendars),
    machines: byId(shop.machines),
    feedstocks: byId(shop.feedstocks),
    parts: byId(shop.parts),
    orders: byId(shop.orders),
    timeZone: isTimeZone(shop.timeZone) ? shop.timeZone : "UTC",
  };
}

/** Epoch minute of an instant, or null where there is no such date or time. Example: "2026-02-30T08:00Z" gives null. */
export function minuteOrNull(instant: string, timeZone: string): number | null {
  return isInstant(instant) ? minuteOf(instant, timeZone) : null;
}

function byId<Item extends { readonly id: string }>(items: readonly Item[]): Map<string, Item> {
  return new Map(items.toReversed().map((item) => [item.id, item]));
}
