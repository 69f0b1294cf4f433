import { CASE_SCHEMA, type Candidate, type caseFileSchema } from "../../core/shop/purchase-case.ts";
import type { TypedDemand } from "../../core/shop/purchase-demand.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { z } from "zod";
import { LONGBED } from "./machine-kinds.ts";

/** A mean week of the year to come over the order book of the demo week: the works begins to be full. */
const OVER_ORDER_BOOK = 1.15;

/**
 * An invented purchase case for the demo shop: what would another small filament machine, a large pellet machine, a second
 * shift in the east hall, or nights for Granule 1 be worth? Prices are common practice, no source, for the user to overwrite.
 */
export function demoCase(shop: Shop): z.infer<typeof caseFileSchema> {
  return {
    schema: CASE_SCHEMA,
    id: "more-capacity",
    name: "More capacity for 2027 (invented)",
    note: "Invented, like everything at Alderquay Works.",
    startsOn: "2027-01-04",
    demand: { kind: "typed", lines: meanWeek(shop) },
    growthPctPerYear: 0,
    patienceWeeks: 2,
    candidates: CANDIDATES,
    financing: { discountPctPerYear: 8, taxPct: 0, depreciation: "straight-line" },
    weeks: 52,
    scenarios: 12,
    seed: 2027,
    budget: 260_000,
  };
}

/** Every part as often as the order book has it, in its middle quantity. */
function meanWeek(shop: Shop): TypedDemand[] {
  return shop.parts.flatMap(({ id }) => {
    const quantities = shop.orders
      .filter(({ partId }) => partId === id)
      .map(({ quantity }) => quantity)
      .toSorted((a, b) => a - b);
    const quantity = quantities[Math.floor((quantities.length - 1) / 2)];
    if (quantity === undefined) return [];
    return [
      { partId: id, ordersPerWeek: Number((quantities.length * OVER_ORDER_BOOK).toFixed(1)), quantity },
    ];
  });
}

/** Smaller than the Longbed, larger than a Granule. */
const WIDEBED = {
  ...LONGBED,
  id: "W1",
  name: "Widebed",
  calendarId: "two-shift",
  envelopeMm: { x: 1800, y: 1400, z: 1100 },
  hourRate: {
    purchasePrice: 240_000,
    residualValue: 30_000,
    lifeYears: 10,
    floorM2: 26,
    powerKW: 14,
    maintenancePctPerYear: 6,
    plannedHoursPerYear: 3600,
  },
  loaded: null,
  outOfService: [],
};

const CANDIDATES: Candidate[] = [
  {
    id: "bench",
    name: "Fifth bench machine (filament, invented)",
    changes: [{ kind: "add-alike", alike: "B1", id: "B5", name: "Bench 5" }],
    price: 3200,
    installation: 150,
    training: 0,
    yearlyCost: 0,
    lifeYears: 4,
    residualValue: 200,
  },
  {
    id: "large-pellet",
    name: "Large pellet machine (invented)",
    changes: [{ kind: "add-machine", machine: WIDEBED }],
    price: 240_000,
    installation: 22_000,
    training: 9000,
    yearlyCost: 3500,
    lifeYears: 10,
    residualValue: 30_000,
  },
  {
    id: "east-evening",
    name: "Second shift in the east hall (invented)",
    changes: [
      {
        kind: "add-shift",
        calendarId: "day",
        shift: { days: [1, 2, 3, 4, 5], start: "16:30", end: "22:30", operators: 1 },
        premiumPct: 10,
        otherWorkPct: 50,
      },
    ],
    price: 0,
    installation: 0,
    training: 1500,
    yearlyCost: 0,
    lifeYears: 5,
    residualValue: 0,
  },
  {
    id: "granule-nights",
    name: "Nights with nobody there for Granule 1, if approved (invented)",
    changes: [{ kind: "approve-unattended", machineId: "G1", mostH: 10 }],
    price: 8500,
    installation: 1500,
    training: 800,
    yearlyCost: 1200,
    lifeYears: 8,
    residualValue: 0,
  },
];
