import type { Change } from "../../../core/shop/change.ts";
import type { Order } from "../../../core/shop/order.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import type { GridEdit } from "../../components/grid/grid-column.ts";
import { changesOfEdit } from "../../store/list-edits.ts";

/** The changes of an edit of orders. An order that gets another name gets it in the builds too, in the same step. */
export function changesOfOrders(shop: Shop, edit: GridEdit<Order>): Change[] {
  const names = new Map<string, string>();
  for (const { place, row } of edit.replaced) {
    const before = shop.orders[place];
    if (before && before.id !== row.id) names.set(before.id, row.id);
  }
  return [...changesOfEdit("orders", shop.orders, edit), ...renamedInBuilds(shop, names)];
}

function renamedInBuilds(shop: Shop, names: ReadonlyMap<string, string>): Change[] {
  if (names.size === 0) return [];
  return shop.builds
    .filter((build) => build.items.some(({ orderId }) => names.has(orderId)))
    .map((build) => {
      const items = build.items.map((item) => ({
        ...item,
        orderId: names.get(item.orderId) ?? item.orderId,
      }));
      return { kind: "put", list: "builds", entry: { ...build, items }, at: null };
    });
}
