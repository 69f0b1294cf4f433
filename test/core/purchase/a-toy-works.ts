import { FEEDSTOCKS } from "../../../assets/demo/feedstocks.ts";
import { BENCH, machine } from "../../../assets/demo/machine-kinds.ts";
import { COSTING } from "../../../assets/demo/works.ts";
import { loadWarmHighs } from "../../../core/plan/engines/warm-highs.ts";
import type { CaseTools } from "../../../core/purchase/case-desk.ts";
import { FleetStore, runScenarioJob } from "../../../core/purchase/run-scenario.ts";
import type { ScenarioJob } from "../../../core/purchase/scenario-job.ts";
import type { DemandLine } from "../../../core/purchase/scenarios.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import type { Part } from "../../../core/shop/part.ts";
import { SHOP_SCHEMA, type Shop } from "../../../core/shop/shop.ts";
import { tube } from "../../bench/simple-bodies.ts";

const ZONE = "Europe/Berlin";

/** Monday on which the toy's first week starts. */
export const MONDAY_MIN = minuteOf("2026-11-30T00:00", ZONE);

/** One nozzle, one feedstock, no failures: a machine of the toy. */
export function toyMachine(id: string): Machine {
  const kind = { ...BENCH, nozzles: BENCH.nozzles.slice(1, 2), failuresPer1000H: 0, hourRate: 2 };
  return machine(kind, {
    id,
    name: id,
    calendarId: "day",
    loaded: { feedstockId: "pla-f", nozzleId: "0.6" },
  });
}

/** A tube that fills a platform so that a build holds one copy. */
export function toyPart(id = "P-1"): Part {
  return {
    id,
    name: "Tube (invented)",
    geometry: { kind: "measures", measures: tube(150, 60, 4.4) },
    families: ["PLA"],
    needs: {},
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1,
    shells: 2,
    solidLayers: 0,
    infillPct: 100,
    orientations: ["z"],
    supportAllowed: true,
    toolPathsReady: ["filament", "pellet"],
    finishing: { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 0 },
  };
}

/** A works of so many equal machines, staffed from Monday to Friday for 8 h by more people than machines. */
export function toyWorks(machines: number, changes: Partial<Shop> = {}): Shop {
  return {
    schema: SHOP_SCHEMA,
    name: "Toy works (invented)",
    timeZone: ZONE,
    currency: "EUR",
    display: { length: "mm", mass: "kg" },
    costing: { ...COSTING, overheadPct: 0 },
    calendars: [
      {
        id: "day",
        name: "Day shift",
        shifts: [{ days: [1, 2, 3, 4, 5], start: "08:00", end: "16:00", operators: 9 }],
        closures: [],
      },
    ],
    machines: Array.from({ length: machines }, (_, index) => toyMachine(`M${index + 1}`)),
    feedstocks: FEEDSTOCKS.filter(({ id }) => id === "pla-f"),
    parts: [toyPart()],
    orders: [],
    builds: [],
    quotes: [],
    cases: [],
    ...changes,
  };
}

/** An order line of the toy: one copy for Friday at 100. */
export function toyLine(changes: Partial<DemandLine> = {}): DemandLine {
  return {
    partId: "P-1",
    quantity: 1,
    dueDay: 4,
    lateCostPerDay: 1,
    pricePerPiece: 100,
    allowLate: true,
    ...changes,
  };
}

/** A job of the toy: the same lines in so many weeks. */
export function toyJob(
  shop: Shop,
  lines: readonly DemandLine[],
  changes: Partial<ScenarioJob> = {},
): ScenarioJob {
  return {
    shop,
    scenario: { weeks: [{ lines }] },
    patienceWeeks: 0,
    seed: 1,
    fromMin: MONDAY_MIN,
    knownWeeksAhead: 1,
    ...changes,
  };
}

/** A store of fleets with a solver. */
export async function aStore(): Promise<FleetStore> {
  return new FleetStore(await loadWarmHighs());
}

/** Tools that run every job right here. */
export function hereTools(store: FleetStore, seen: ScenarioJob[] = []): CaseTools {
  return {
    runJobs: (jobs, onResult, stopped) => {
      for (const [index, job] of jobs.entries()) {
        if (stopped()) break;
        seen.push(job);
        onResult(index, runScenarioJob(job, store));
      }
      return Promise.resolve();
    },
    hash: (text) => text,
  };
}
