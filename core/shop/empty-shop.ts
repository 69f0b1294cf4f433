import type { Settings } from "./change.ts";
import { SHOP_SCHEMA, type Shop } from "./shop.ts";

/**
 * A works with nothing in it yet. Money rules are zero rather than guessed, since nobody knows the wages of a currency; the
 * interest variant is the mean of purchase and residual value.
 * Example: "Riverside Works" in EUR gives a shop with no machines, and an hour of labour costs 0.
 */
export function emptyShop(head: Omit<Settings, "costing">): Shop {
  return {
    schema: SHOP_SCHEMA,
    ...head,
    costing: {
      labourPerH: 0,
      engineeringPerH: 0,
      engineeringFilamentH: 0,
      engineeringPelletH: 0,
      energyPerKWh: 0,
      floorPerM2Year: 0,
      interestPctPerYear: 0,
      interestOn: "mean-capital",
      overheadPct: 0,
      marginPct: 0,
      defaultLateCostPerDay: 0,
    },
    calendars: [],
    machines: [],
    feedstocks: [],
    parts: [],
    orders: [],
    builds: [],
    quotes: [],
    cases: [],
  };
}
