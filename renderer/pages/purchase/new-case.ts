import { localTime } from "../../../core/shop/local-time.ts";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { nextId } from "../../store/next-id.ts";

/** Enough for a year, few enough for a minute on a small works. */
const FIRST_EXTENT = { weeks: 52, scenarios: 10, seed: 1 } as const;
const FIRST_ID = "case-0";

/**
 * A case to begin with: the shop's own orders as demand, nothing to buy yet, from the Monday after the next on. `nowMin` is the
 * time at the works. Example: on 25 November 2026 it starts on 7 December.
 */
export function newCase(shop: Shop, nowMin: number): PurchaseCase {
  const id = nextId(FIRST_ID, new Set(shop.cases.map((one) => one.id)));
  return {
    id,
    name: `New case ${id.replace(/^\D*/, "")}`.trim(),
    note: "",
    startsOn: mondayAfterNext(localTime(nowMin, shop.timeZone).date),
    demand: { kind: "orders" },
    growthPctPerYear: 0,
    patienceWeeks: 2,
    candidates: [],
    financing: { discountPctPerYear: 8, taxPct: 0, depreciation: "straight-line" },
    ...FIRST_EXTENT,
    budget: null,
  };
}

/** The same case under an id of its own. */
export function copyOfCase(like: PurchaseCase, shop: Shop): PurchaseCase {
  return { ...like, id: freeCaseId(like.id, shop), name: `${like.name} (copy)` };
}

/** The id itself where the shop has no such case, else one like it. */
export function freeCaseId(id: string, { cases }: Shop): string {
  const taken = new Set(cases.map((one) => one.id));
  return taken.has(id) ? nextId(id, taken) : id;
}

const DAYS_PER_WEEK = 7;

function mondayAfterNext(date: string): string {
  const day = new Date(`${date}T00:00:00Z`);
  const sinceMonday = (day.getUTCDay() + DAYS_PER_WEEK - 1) % DAYS_PER_WEEK;
  day.setUTCDate(day.getUTCDate() - sinceMonday + 2 * DAYS_PER_WEEK);
  return day.toISOString().slice(0, 10);
}
