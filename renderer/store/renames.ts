import type { Change } from "../../core/shop/change.ts";
import type { Entry } from "../../core/shop/shop-lists.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** Lists whose entries others refer to by id. */
type ReferredList = "calendars" | "machines" | "feedstocks" | "parts";
type Names = ReadonlyMap<string, string>;

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
    return list === "feedstocks" ? { ...build, feedstockId: to(build.feedstockId) } : build;
  });
  return [...machines, ...orders, ...builds];
}

/** Old and new ids of replaced entries. */
export function renamedIds(
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
    // Entries belong to the list they came from, which the compiler cannot follow through the names of lists.
    return JSON.stringify(next) === JSON.stringify(entry)
      ? []
      : [{ kind: "put", list, entry: next, at: null } as Change];
  });
}
