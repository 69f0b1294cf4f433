import type { Shop } from "./shop.ts";

/**
 * The same shop with every list in the order of its ids, so that nothing computed from it depends on the order in which
 * people entered things. Example: orders O-2, O-1 become O-1, O-2.
 */
export function inIdOrder(shop: Shop): Shop {
  return {
    ...shop,
    calendars: byId(shop.calendars),
    machines: byId(shop.machines),
    feedstocks: byId(shop.feedstocks),
    parts: byId(shop.parts),
    orders: byId(shop.orders),
    builds: byId(shop.builds),
    quotes: byId(shop.quotes),
    cases: byId(shop.cases),
  };
}

function byId<Entity extends { readonly id: string }>(list: readonly Entity[]): Entity[] {
  return list.toSorted((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}
