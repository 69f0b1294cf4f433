import type { Feedstock } from "../../../core/shop/feedstock.ts";
import { nextId } from "../../store/next-id.ts";

/**
 * A grade to start from: figures of a plain filament by common practice, no source, for the shop to overwrite from its
 * supplier's sheet. It has no price, which a finding says, so that nothing is planned on a guess of money.
 */
export function newFeedstock(like: Feedstock | undefined, taken: ReadonlySet<string>): Feedstock {
  return {
    id: nextId("grade-0", taken),
    name: "New grade",
    family: like?.family ?? "PETG",
    form: like?.form ?? "filament",
    densityKgPerM3: 1270,
    pricePerKg: null,
    packKg: 1,
    stockKg: 0,
    leadTimeDays: 3,
    wastePct: 2,
    nozzleC: { min: 230, max: 250 },
    platformC: 75,
    dryC: 65,
    dryH: 4,
    abrasive: false,
    flowFactor: 1,
    bondC: 90,
    carryC: 75,
    specificHeatJPerKgK: 1700,
    conductivityWPerMK: 0.2,
    properties: { heatDeflectionC: 65, tensileModulusMPa: 1800, tensileStrengthMPa: 40, acrossLayersPct: 60 },
    meltCycles: 1,
  };
}

/** The same grade under an id of its own, with nothing in stock. */
export function copyFeedstock(feedstock: Feedstock, taken: ReadonlySet<string>): Feedstock {
  return {
    ...feedstock,
    id: nextId(feedstock.id, taken),
    name: `${feedstock.name} (copy)`,
    stockKg: 0,
  };
}
