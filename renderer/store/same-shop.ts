import type { Shop } from "../../core/shop/shop.ts";

/**
 * True where two shops hold the very same entries and settings, as after an edit and its undo. Example: a shop with a note put
 * on an order and taken back is the same, though it is another object.
 */
export function isSameShop(a: Shop, b: Shop): boolean {
  if (a === b) return true;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as ReadonlySet<keyof Shop>;
  return [...keys].every((key) => isSame(a[key], b[key]));
}

function isSame(a: unknown, b: unknown): boolean {
  if (!Array.isArray(a) || !Array.isArray(b)) return a === b;
  return a === b || (a.length === b.length && a.every((entry, place) => entry === b[place]));
}
