import type { Change } from "../../core/shop/change.ts";
import type { Entry, ShopList } from "../../core/shop/shop-lists.ts";
import type { GridEdit } from "../components/grid/grid-column.ts";

/**
 * The changes that an edit of a grid means for a list of the shop, in the order in which they are to be applied.
 * Example: two rows removed at places 3 and 7 give removals at 7 and then at 3.
 */
export function changesOfEdit<List extends ShopList>(
  list: List,
  entries: readonly Entry[],
  { replaced, inserted, removed }: GridEdit<Entry<List>>,
): Change[] {
  const first = firstPlaces(entries);
  const changes: { kind: "put" | "remove"; list: List; entry?: Entry; id?: string; at: number | null }[] = [];
  for (const { place, row } of replaced) {
    const before = entries[place];
    if (!before) continue;
    if (before.id === row.id && first.get(row.id) === place)
      changes.push({ kind: "put", list, entry: row, at: null });
    else {
      changes.push({ kind: "remove", list, id: before.id, at: place });
      changes.push({ kind: "put", list, entry: row, at: place });
    }
  }
  for (const [shift, { place, row }] of inserted.entries()) {
    changes.push({ kind: "put", list, entry: row, at: place + shift });
  }
  for (const place of removed.toReversed()) {
    const entry = entries[place];
    if (entry) changes.push({ kind: "remove", list, id: entry.id, at: place });
  }
  // Entries belong to the list they came from, which the compiler cannot follow through the names of lists.
  return changes as Change[];
}

function firstPlaces(entries: readonly Entry[]): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  for (const [place, { id }] of entries.entries()) if (!places.has(id)) places.set(id, place);
  return places;
}
