import { type Entry, SHOP_LISTS, type ShopList } from "./shop-lists.ts";
import type { Shop } from "./shop.ts";

/** Puts an entry: with a position it is inserted there; without one it replaces the entry of its id, or goes to the end. */
export interface PutChange<List extends ShopList> {
  readonly kind: "put";
  readonly list: List;
  readonly entry: Entry<List>;
  readonly at: number | null;
}

/** Removes the entry of an id: the one at the position, or the first one. */
export interface RemoveChange<List extends ShopList> {
  readonly kind: "remove";
  readonly list: List;
  readonly id: string;
  readonly at: number | null;
}

/** Everything of a shop that is not a list: name, time zone, currency, units shown, money rules, the seller. */
export type Settings = Omit<Shop, ShopList | "schema">;

export interface SettingsChange {
  readonly kind: "settings";
  readonly settings: Settings;
}

/** One edit of a shop as a value, for undo, redo, autosave and the journal. */
export type Change = { [List in ShopList]: PutChange<List> | RemoveChange<List> }[ShopList] | SettingsChange;

export interface Changed {
  readonly shop: Shop;
  /** applied to `shop`, it gives the shop before, positions included */
  readonly inverse: Change;
}

/**
 * Applies one edit; the shop given stays as it was. Removing what is not there throws.
 * Example: removing the second of three orders has as inverse: put it at position 1.
 */
export function applyChange(shop: Shop, change: Change): Changed {
  if (change.kind === "settings") return applySettings(shop, change.settings);
  // All lists hold entries with an id; which kind is the caller's business and is not changed here.
  const entries: readonly Entry[] = shop[change.list];
  const { next, inverse } = change.kind === "put" ? put(entries, change) : remove(entries, change);
  return { shop: { ...shop, [change.list]: next }, inverse: inverse as Change };
}

interface ListEdit {
  readonly next: readonly Entry[];
  readonly inverse: PutChange<ShopList> | RemoveChange<ShopList>;
}

function put(entries: readonly Entry[], { list, entry, at }: PutChange<ShopList>): ListEdit {
  const present = entries.findIndex((candidate) => candidate.id === entry.id);
  const before = entries[present];
  if (at === null && before) {
    return { next: entries.with(present, entry), inverse: { kind: "put", list, entry: before, at: null } };
  }
  const position = Math.min(at ?? entries.length, entries.length);
  return {
    next: entries.toSpliced(position, 0, entry),
    inverse: { kind: "remove", list, id: entry.id, at: position },
  };
}

function remove(entries: readonly Entry[], { list, id, at }: RemoveChange<ShopList>): ListEdit {
  const position = at ?? entries.findIndex((candidate) => candidate.id === id);
  const entry = entries[position];
  if (entry?.id !== id) throw new RangeError(`no such entry in ${list}: ${id}`);
  return { next: entries.toSpliced(position, 1), inverse: { kind: "put", list, entry, at: position } };
}

function applySettings(shop: Shop, settings: Settings): Changed {
  const lists = Object.fromEntries(SHOP_LISTS.map((list) => [list, shop[list]])) as Pick<Shop, ShopList>;
  return {
    shop: { schema: shop.schema, ...settings, ...lists },
    inverse: { kind: "settings", settings: settingsOf(shop) },
  };
}

/** What of a shop is no list. Example: its name, currency and money rules. */
export function settingsOf({ name, timeZone, currency, display, costing, seller }: Shop): Settings {
  return { name, timeZone, currency, display, costing, ...(seller ? { seller } : {}) };
}
