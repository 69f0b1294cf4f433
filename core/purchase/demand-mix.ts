import type { Part } from "../shop/part.ts";
import type { Shop } from "../shop/shop.ts";
import type { Demand } from "./demand.ts";

/** A size class by a part's longest side. */
export interface SizeClass {
  readonly aboveMm: number;
  /** Infinity: no upper end */
  readonly upToMm: number;
}

/** What a mean week asks for of one family of polymers and one size. */
export interface MixRow {
  /** polymer families that the customers accept; "any" where they name none */
  readonly family: string;
  readonly size: SizeClass;
  readonly ordersPerWeek: number;
  readonly copiesPerWeek: number;
  /** solid volume of the bodies, cm3 per week */
  readonly volumeCm3PerWeek: number;
}

/** By hand, by the size of machines there are: bench, chamber, frame, gantry. */
const SIZES: readonly SizeClass[] = [
  { aboveMm: 0, upToMm: 100 },
  { aboveMm: 100, upToMm: 300 },
  { aboveMm: 300, upToMm: 1000 },
  { aboveMm: 1000, upToMm: Number.POSITIVE_INFINITY },
];

/**
 * The weekly mix of a demand by family and size, before growth and season; rows by family, small parts first. Example: 4 past
 * weeks with 8 orders of 10 PLA clips of 32 mm: 2 orders and 20 copies a week of PLA up to 100 mm.
 */
export function demandMix(shop: Shop, demand: Demand): MixRow[] {
  const parts = new Map(shop.parts.map((part) => [part.id, part]));
  const rows = new Map<string, MixRow>();
  for (const { partId, orders, copies } of weeklyLines(demand)) {
    const part = parts.get(partId);
    if (!part) continue;
    const row = rowOf(part);
    const key = `${row.family} ${String(row.size.aboveMm).padStart(6, "0")}`;
    const known = rows.get(key) ?? row;
    rows.set(key, {
      ...known,
      ordersPerWeek: known.ordersPerWeek + orders,
      copiesPerWeek: known.copiesPerWeek + copies,
      volumeCm3PerWeek: known.volumeCm3PerWeek + (copies * part.geometry.measures.volumeMm3) / MM3_PER_CM3,
    });
  }
  return [...rows.entries()].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, row]) => row);
}

const MM3_PER_CM3 = 1000;

interface WeeklyLine {
  readonly partId: string;
  readonly orders: number;
  readonly copies: number;
}

function weeklyLines({ pastWeeks, expected }: Demand): WeeklyLine[] {
  const past = pastWeeks.flatMap(({ lines }) =>
    lines.map(({ partId, quantity }) => ({
      partId,
      orders: 1 / pastWeeks.length,
      copies: quantity / pastWeeks.length,
    })),
  );
  const typed = expected.map(({ ordersPerWeek, line }) => ({
    partId: line.partId,
    orders: ordersPerWeek,
    copies: ordersPerWeek * line.quantity,
  }));
  return [...past, ...typed];
}

function rowOf(part: Part): MixRow {
  const { x, y, z } = part.geometry.measures.boxMm;
  const longestMm = Math.max(x, y, z);
  const size = SIZES.find(({ upToMm }) => longestMm <= upToMm) ?? { aboveMm: 0, upToMm: longestMm };
  const family = part.families.length === 0 ? "any" : part.families.toSorted().join(" or ");
  return { family, size, ordersPerWeek: 0, copiesPerWeek: 0, volumeCm3PerWeek: 0 };
}
