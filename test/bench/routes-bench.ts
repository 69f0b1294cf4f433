import { findRoutes } from "../../core/estimate/find-routes.ts";
import type { Feedstock } from "../../core/shop/feedstock.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Measures, Part } from "../../core/shop/part.ts";
import { seededRandom } from "../../core/units/random.ts";
import type { Random } from "../../core/units/random.ts";
import { aFeedstock, aMachine, aNozzle, aPart } from "../fixtures/a-route.ts";

interface Measured {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly target: number;
}

type Layers = NonNullable<Measures["layers"]>;

const TARGET_PER_S = 1000;
const LONGEST_MS = 2000;

/**
 * Routes (answers for one nozzle and one feedstock) found per second, every call with another part: all answers, and the
 * feasible ones alone, the time of the refusals included. Starts cold: the tables of layer times are built in the run.
 */
export function benchRoutes(): Measured[] {
  const machines = [filamentMachine(), pelletMachine()];
  const feedstocks = [...filaments(), ...pellets()];
  const parts = seededParts(4000);
  let answers = 0;
  let feasible = 0;
  const start = performance.now();
  for (const part of parts) {
    const found = machines.flatMap((machine) => findRoutes(part, machine, feedstocks));
    answers += found.length;
    feasible += found.filter(({ status }) => status === "route").length;
    if (performance.now() - start > LONGEST_MS) break;
  }
  const seconds = (performance.now() - start) / 1000;
  return [
    { name: "routes answered", value: answers / seconds, unit: "1/s", target: TARGET_PER_S },
    { name: "feasible routes found", value: feasible / seconds, unit: "1/s", target: TARGET_PER_S },
  ];
}

function filamentMachine(): Machine {
  return aMachine({
    chamberC: 60,
    nozzles: [
      aNozzle(),
      aNozzle({
        id: "n08",
        diameterMm: 0.8,
        beadWidthMm: { min: 0.7, max: 1.2 },
        layerHeightMm: { min: 0.2, max: 0.5 },
      }),
    ],
  });
}

function pelletMachine(): Machine {
  return aMachine({
    id: "P1",
    process: "pellet",
    envelopeMm: { x: 2000, y: 1500, z: 1000 },
    edgeMarginMm: 50,
    partGapMm: 40,
    nozzles: [
      aNozzle({
        id: "n4",
        diameterMm: 4,
        beadWidthMm: { min: 4, max: 8 },
        layerHeightMm: { min: 1, max: 2.5 },
        flowCm3PerH: 4000,
      }),
      aNozzle({
        id: "n8",
        diameterMm: 8,
        beadWidthMm: { min: 8, max: 14 },
        layerHeightMm: { min: 2, max: 5 },
        flowCm3PerH: 12_000,
      }),
    ],
    hardened: true,
    maxSpeedMmPerS: 200,
    accelerationMmPerS2: 500,
    cornerDeviationMm: 0.5,
    layerChangeS: 3,
  });
}

function filaments(): Feedstock[] {
  return [
    aFeedstock(),
    aFeedstock({ id: "petg", family: "PETG", bondC: 80, carryC: 125, densityKgPerM3: 1270 }),
    aFeedstock({ id: "abs", family: "ABS", bondC: 105, carryC: 150, nozzleC: { min: 230, max: 260 } }),
    aFeedstock({ id: "hot", family: "PEI", nozzleC: { min: 350, max: 390 } }),
  ];
}

function pellets(): Feedstock[] {
  const abs = aFeedstock({
    id: "cf-abs-pellet",
    family: "CF-ABS",
    form: "pellet",
    densityKgPerM3: 1140,
    nozzleC: { min: 200, max: 250 },
    platformC: 90,
    abrasive: true,
    bondC: 105,
    carryC: 150,
    specificHeatJPerKgK: 1640,
    conductivityWPerMK: 0.17,
  });
  const petg = { ...abs, id: "petg-pellet", family: "PETG", bondC: 80, carryC: 125, abrasive: false };
  return [abs, petg, { ...petg, id: "hot-pellet", family: "PEI", nozzleC: { min: 350, max: 390 } }];
}

/** Boxes and shells from clips to moulds, sizes spread evenly over the logarithm; every fourth has 200 cuts. */
function seededParts(count: number): Part[] {
  const random = seededRandom(20_261_125);
  const side = (): number => 20 * 60 ** random();
  return Array.from({ length: count }, (_, index) => {
    const boxMm = { x: side(), y: side(), z: side() / 2 };
    const boxMm3 = boxMm.x * boxMm.y * boxMm.z;
    const areaMm2 = 2 * (boxMm.x * boxMm.y + boxMm.y * boxMm.z + boxMm.x * boxMm.z);
    const volumeMm3 = boxMm3 * (0.1 + 0.9 * random());
    const layers = index % 4 === 0 ? seededCuts(random, volumeMm3, boxMm.z) : [];
    const smallestFeatureMm = Math.max(0.8, Math.cbrt(boxMm3) * (0.02 + 0.05 * random()));
    return aPart({
      id: `part-${index}`,
      geometry: { kind: "measures", measures: { volumeMm3, areaMm2, boxMm, layers } },
      smallestFeatureMm,
      maxLayerHeightMm: Math.max(0.2, Math.round(smallestFeatureMm * 4) / 10),
      solidLayers: 2,
    });
  });
}

function seededCuts(random: Random, volumeMm3: number, heightMm: number): Layers {
  const swing = random();
  return Array.from({ length: 200 }, (_, index) => {
    const areaMm2 = (volumeMm3 / heightMm) * (1 + swing * Math.sin(index / 30));
    const perimeterMm = 2 * Math.sqrt(Math.PI * areaMm2) * 1.5;
    return { zMm: ((index + 0.5) / 200) * heightMm, areaMm2, perimeterMm, islands: 1 + (index % 2) };
  });
}
