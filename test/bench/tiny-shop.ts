import { FEEDSTOCKS } from "../../assets/demo/feedstocks.ts";
import { BENCH, CHAMBER, GRANULE, machine, type MachineKind } from "../../assets/demo/machine-kinds.ts";
import { COSTING } from "../../assets/demo/works.ts";
import { minuteOf } from "../../core/shop/instants.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Order } from "../../core/shop/order.ts";
import type { Part } from "../../core/shop/part.ts";
import { SHOP_SCHEMA } from "../../core/shop/shop.ts";
import { type Random, seededRandom } from "../../core/units/random.ts";
import { between, chance, pick, wholeBetween } from "./draw.ts";
import type { ShopCase } from "./make-shop.ts";
import { sleeve, tube } from "./simple-bodies.ts";

const TINY_ZONE = "Europe/Berlin";
const TINY_DAY = "2026-11-30";
const TINY_DAYS = 3;
const TINY_FEEDSTOCKS = FEEDSTOCKS.filter(({ id }) => ["pla-f", "petg-f", "petg-p"].includes(id));

/** A shop small enough to try every plan: 2 or 3 machines with one nozzle each, 3 or 4 lines of 1 to 3 copies, 3 days. */
export function makeTinyShop(seed: number): ShopCase {
  const random = seededRandom(seed * 104_729 + 17);
  const parts = Array.from({ length: wholeBetween(random, 2, 3) }, (_, index) => tinyPart(index, random));
  const orders = Array.from({ length: wholeBetween(random, 3, 4) }, (_, index) =>
    tinyOrder(index, pick(parts, random), random),
  );
  return {
    shop: {
      schema: SHOP_SCHEMA,
      name: `Tiny works, seed ${seed} (invented)`,
      timeZone: TINY_ZONE,
      currency: "EUR",
      display: { length: "mm", mass: "kg" },
      costing: COSTING,
      calendars: [
        {
          id: "day",
          name: "Day shift",
          shifts: [
            { days: [1, 2, 3, 4, 5], start: "07:00", end: "17:00", operators: wholeBetween(random, 1, 2) },
          ],
          closures: [],
        },
      ],
      machines: tinyMachines(random),
      feedstocks: TINY_FEEDSTOCKS,
      parts,
      orders,
      builds: [],
      quotes: [],
      cases: [],
    },
    request: { fromMin: minuteOf(`${TINY_DAY}T00:00`, TINY_ZONE), days: TINY_DAYS },
  };
}

function tinyMachines(random: Random): Machine[] {
  const kinds = [oneNozzle(BENCH, 1), oneNozzle(CHAMBER, 1), oneNozzle(GRANULE, 0)];
  const chosen = chance(random, 50)
    ? kinds
    : [oneNozzle(BENCH, 1), pick([oneNozzle(BENCH, 1), ...kinds.slice(1)], random)];
  return chosen.map((kind, index) =>
    machine(kind, {
      id: `T${index + 1}`,
      name: `Machine ${index + 1}`,
      calendarId: "day",
      loaded: tinyLoaded(kind, random),
    }),
  );
}

function oneNozzle(kind: MachineKind, index: number): MachineKind {
  return { ...kind, nozzles: kind.nozzles.slice(index, index + 1) };
}

function tinyLoaded(kind: MachineKind, random: Random): Machine["loaded"] {
  const nozzle = kind.nozzles[0];
  if (!nozzle || chance(random, 20)) return null;
  const fitting = TINY_FEEDSTOCKS.filter(({ form }) => form === kind.process);
  return { feedstockId: pick(fitting, random).id, nozzleId: nozzle.id };
}

function tinyPart(index: number, random: Random): Part {
  const x = wholeBetween(random, 80, 170);
  const z = wholeBetween(random, 60, 180);
  const measures = chance(random, 50) ? sleeve(x, x - 10, z, 4.4) : tube(x, z, 4.4);
  return {
    id: `P-${index + 1}`,
    name: `Sleeve ${index + 1}`,
    geometry: { kind: "measures", measures },
    families: pick([["PETG"], ["PETG"], ["PLA", "PETG"]], random),
    needs: {},
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1,
    shells: 2,
    solidLayers: 0,
    infillPct: 100,
    orientations: ["z"],
    supportAllowed: true,
    toolPathsReady: pick([["filament"], ["filament", "pellet"], []], random),
    finishing: { labourMin: 1, machiningMin: 0, machiningPerH: 0, allowanceMm: 0 },
  };
}

function tinyOrder(index: number, part: Part, random: Random): Order {
  return {
    id: `O-${index + 1}`,
    customer: "Tiny customer (invented)",
    partId: part.id,
    quantity: wholeBetween(random, 1, 3),
    releaseAt: chance(random, 70) ? `${TINY_DAY}T00:00` : `${TINY_DAY}T11:00`,
    dueAt: `2026-${pick(["11-30T14:00", "11-30T17:00", "12-01T12:00", "12-01T17:00", "12-02T12:00"], random)}`,
    lateCostPerDay: Math.round(between(random, 20, 300)),
    allowLate: true,
    perPiece: chance(random, 15),
    note: "",
  };
}
