import type { Change } from "../../core/shop/change.ts";
import type { Entry } from "../../core/shop/shop-lists.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { GridEdit } from "../components/grid/grid-column.ts";
import { changesOfEdit } from "./list-edits.ts";

/** Lists whose entries others refer to by id. */
export type ReferredList = "calendars" | "machines" | "feedstocks" | "parts" | "orders";
type Names = ReadonlyMap<string, string>;

/**
 * The changes that an edit of a grid means for a list that others refer to: entries that get another name get it wherever they
 * are named too. Example: order O-1 renamed to O-9 gives the change of the order and one of each build with copies of it.
 */
export function changesOfEntries<List extends ReferredList>(
  shop: Shop,
  list: List,
  edit: GridEdit<Entry<List>>,
): Change[] {
  const entries: readonly Entry[] = shop[list];
  const names = renamedIds(entries, edit.replaced);
  return [...changesOfEdit(list, entries, edit), ...changesOfRenames(shop, list, names)];
}

/**
 * The changes that make everything refer to entries by their new ids, in one step with the renaming itself.
 * Example: machine P1 renamed to P9: the orders and builds that name P1 name P9.
 */
export function changesOfRenames(shop: Shop, list: ReferredList, names: Names): Change[] {
  if (names.size === 0) return [];
  const to = (id: string): string => names.get(id) ?? id;
  const machines = rewritten("machines", shop.machines, (machine) => {
    if (list === "calendars") return { ...machine, calendarId: to(machine.calendarId) };
    if (list !== "feedstocks" || !machine.loaded) return machine;
    return { ...machine, loaded: { ...machine.loaded, feedstockId: to(machine.loaded.feedstockId) } };
  });
  const orders = rewritten("orders", shop.orders, (order) => {
    if (list === "parts") return { ...order, partId: to(order.partId) };
    const { machineId, feedstockId } = order.pinned ?? {};
    if (list === "machines" && machineId !== undefined)
      return { ...order, pinned: { ...order.pinned, machineId: to(machineId) } };
    if (list === "feedstocks" && feedstockId !== undefined)
      return { ...order, pinned: { ...order.pinned, feedstockId: to(feedstockId) } };
    return order;
  });
  const builds = rewritten("builds", shop.builds, (build) => {
    if (list === "machines") return { ...build, machineId: to(build.machineId) };
    if (list === "feedstocks") return { ...build, feedstockId: to(build.feedstockId) };
    if (list !== "orders") return build;
    return { ...build, items: build.items.map((item) => ({ ...item, orderId: to(item.orderId) })) };
  });
  return [...machines, ...orders, ...builds];
}

/** Old and new ids of replaced entries. */
function renamedIds(
  entries: readonly Entry[],
  replaced: readonly { readonly place: number; readonly row: Entry }[],
): Map<string, string> {
  const names = new Map<string, string>();
  for (const { place, row } of replaced) {
    const before = entries[place];
    if (before && before.id !== row.id) names.set(before.id, row.id);
  }
  return names;
}

function rewritten<List extends "machines" | "orders" | "builds">(
  list: List,
  entries: readonly Entry<List>[],
  rewrite: (entry: Entry<List>) => Entry<List>,
): Change[] {
  return entries.flatMap((entry): Change[] => {
    const next = rewrite(entry);
    if (next === entry || JSON.stringify(next) === JSON.stringify(entry)) return [];
    // Entries belong to the list they came from, which the compiler cannot follow through the names of lists.
    return [{ kind: "put", list, entry: next, at: null } as Change];
  });
}
