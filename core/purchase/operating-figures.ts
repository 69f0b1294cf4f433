import type { Shop } from "../shop/shop.ts";
import { WEEKS_PER_YEAR } from "./cash-terms.ts";
import type { ScenarioResult } from "./scenario-job.ts";

/** Hours of one machine in a year of 52 weeks. */
export interface YearHours {
  readonly machineId: string;
  /** set up, printing, cooling or being unloaded; above the staffed hours where it prints with nobody there */
  readonly usedH: number;
  readonly staffedH: number;
}

/** How a works runs with a fleet, in the mean of all scenarios, per year of 52 weeks. Costs are in cash terms. */
export interface OperatingFigures {
  readonly orders: number;
  readonly lateOrders: number;
  readonly lostOrders: number;
  readonly revenue: number;
  readonly lostRevenue: number;
  /** all kinds of cost but lateness, buying out included */
  readonly operatingCost: number;
  readonly lateCost: number;
  readonly boughtOutCost: number;
  readonly filamentKg: number;
  readonly pelletKg: number;
  readonly hours: readonly YearHours[];
}

/**
 * The figures of all weeks of all scenarios. Example: 2 scenarios of 26 weeks with 3 and 5 late orders: 8 late orders a year.
 */
export function operatingFigures(shop: Shop, results: readonly ScenarioResult[]): OperatingFigures {
  const weeks = results.flatMap((result) => result.weeks);
  const scale = weeks.length === 0 ? 0 : WEEKS_PER_YEAR / weeks.length;
  const perYear = (amount: (week: (typeof weeks)[number]) => number): number =>
    scale * weeks.reduce((sum, week) => sum + amount(week), 0);
  const kgOf = (form: "filament" | "pellet"): number => {
    const ids = shop.feedstocks.filter((feedstock) => feedstock.form === form).map(({ id }) => id);
    return perYear(({ kgByFeedstock }) => ids.reduce((sum, id) => sum + (kgByFeedstock[id] ?? 0), 0));
  };
  return {
    orders: perYear(({ orders }) => orders),
    lateOrders: perYear(({ lateOrders }) => lateOrders),
    lostOrders: perYear(({ lostOrders }) => lostOrders),
    revenue: perYear(({ revenue }) => revenue),
    lostRevenue: perYear(({ lostRevenue }) => lostRevenue),
    operatingCost: perYear(({ costByKind, lateCost }) => sumOf(Object.values(costByKind)) - lateCost),
    lateCost: perYear(({ lateCost }) => lateCost),
    boughtOutCost: perYear(({ boughtOutCost }) => boughtOutCost),
    filamentKg: kgOf("filament"),
    pelletKg: kgOf("pellet"),
    hours: yearHours(results, scale),
  };
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function yearHours(results: readonly ScenarioResult[], scale: number): YearHours[] {
  const hours = new Map<string, YearHours>();
  for (const { hoursByMachine } of results.flatMap(({ weeks }) => weeks)) {
    for (const { machineId, usedH, staffedH } of hoursByMachine) {
      const known = hours.get(machineId) ?? { machineId, usedH: 0, staffedH: 0 };
      hours.set(machineId, {
        machineId,
        usedH: known.usedH + scale * usedH,
        staffedH: known.staffedH + scale * staffedH,
      });
    }
  }
  return [...hours.values()];
}
