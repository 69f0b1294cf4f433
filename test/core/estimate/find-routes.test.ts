import { describe, expect, test } from "vitest";
import { findRoutes } from "../../../core/estimate/find-routes.ts";
import { depositionMin, slowestLayerS } from "../../../core/estimate/print-time.ts";
import type { RouteAnswer, RouteReason } from "../../../core/estimate/route.ts";
import type { Feedstock } from "../../../core/shop/feedstock.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import type { Part } from "../../../core/shop/part.ts";
import { aFeedstock, aMachine, aNozzle, aPart } from "../../fixtures/a-route.ts";
import { firstRoute } from "../../fixtures/first-route.ts";
import { cfAbsPellets } from "../../fixtures/large-format.ts";

const PELLETS = cfAbsPellets();

function pelletMachine(overrides: Partial<Machine> = {}): Machine {
  return aMachine({
    id: "P1",
    process: "pellet",
    envelopeMm: { x: 2000, y: 1500, z: 1000 },
    edgeMarginMm: 50,
    partGapMm: 40,
    chamberC: 18,
    maxSpeedMmPerS: 120,
    accelerationMmPerS2: 500,
    cornerDeviationMm: 0.5,
    layerChangeS: 2,
    travelS: 3,
    nozzles: [
      aNozzle({
        id: "n8",
        diameterMm: 8,
        beadWidthMm: { min: 8.4, max: 8.4 },
        layerHeightMm: { min: 2, max: 3.8 },
        flowCm3PerH: 9000,
      }),
    ],
    ...overrides,
  });
}

/** An open tube of one bead: diameter at the centre line and height in mm. */
function tube(diameterMm: number, heightMm: number, overrides: Partial<Part> = {}): Part {
  const areaMm2 = Math.PI * diameterMm * 8.4;
  const outerMm = diameterMm + 8.4;
  const measures = {
    volumeMm3: areaMm2 * heightMm,
    areaMm2: 2 * Math.PI * diameterMm * heightMm + 2 * areaMm2,
    boxMm: { x: outerMm, y: outerMm, z: heightMm },
  };
  return aPart({
    id: "tube",
    geometry: { kind: "measures", measures },
    smallestFeatureMm: 8.4,
    maxLayerHeightMm: 3.8,
    shells: 1,
    solidLayers: 0,
    infillPct: 0,
    orientations: ["z"],
    ...overrides,
  });
}

function reasonsOf(answers: readonly RouteAnswer[]): readonly RouteReason[] {
  const [answer] = answers;
  if (answer?.status !== "refused") throw new Error(`not refused: ${JSON.stringify(answer)}`);
  return answer.reasons;
}

function codes(answers: readonly RouteAnswer[]): string[] {
  return reasonsOf(answers).map(({ code }) => code);
}

describe("answers", () => {
  const feedstocks: Feedstock[] = [aFeedstock(), aFeedstock({ id: "petg", family: "PETG" }), PELLETS];
  const machine = aMachine({ nozzles: [aNozzle(), aNozzle({ id: "n06", diameterMm: 0.6 })] });

  test("are one for each nozzle and each feedstock of the machine's form", () => {
    const asked = findRoutes(aPart(), machine, feedstocks).map((answer) =>
      answer.status === "route" ? [answer.route.nozzleId, answer.route.feedstockId] : null,
    );
    expect(asked).toEqual([
      ["n04", "pla-white"],
      ["n04", "petg"],
      ["n06", "pla-white"],
      ["n06", "petg"],
    ]);
  });

  test("name the other form as a reason when they are asked for it", () => {
    const answers = findRoutes(aPart(), aMachine(), feedstocks, { withOtherForms: true });
    expect(answers).toHaveLength(3);
    const [other] = answers.slice(2);
    expect(other?.status === "refused" && other.reasons.map(({ code }) => code)).toEqual(["form"]);
  });

  test("are none for a shop without feedstock of that form", () => {
    expect(findRoutes(aPart(), aMachine(), [PELLETS])).toEqual([]);
  });

  test("give every reason of every kind at once", () => {
    const part = aPart({
      families: ["ABS"],
      needs: { heatDeflectionC: 90 },
      smallestFeatureMm: 0.1,
      orientations: ["z"],
      loadAxis: "z",
    });
    expect(
      codes(findRoutes(part, aMachine({ maxNozzleC: 180 }), [aFeedstock({ pricePerKg: null })])),
    ).toEqual([
      "nozzle-temperature",
      "no-price",
      "family",
      "heat-deflection",
      "feature-too-fine",
      "orientation",
    ]);
  });
});

describe("the worked box of 60 x 40 x 20 mm as a route", () => {
  const measures = { volumeMm3: 48_000, areaMm2: 8800, boxMm: { x: 60, y: 40, z: 20 } };
  const part = aPart({
    geometry: { kind: "measures", measures },
    smallestFeatureMm: 0.45,
    infillPct: 20,
    orientations: ["z"],
  });
  const machine = aMachine({
    maxSpeedMmPerS: 60,
    accelerationMmPerS2: 1000,
    layerChangeS: 0,
    travelS: 0,
    nozzles: [aNozzle({ beadWidthMm: { min: 0.45, max: 0.45 } })],
  });
  const route = firstRoute(findRoutes(part, machine, [aFeedstock({ minLayerS: 0.001 })]));

  test("takes 3004.68 s for one copy and 18.9396 g", () => {
    expect(depositionMin({ route, copies: 1 }) * 60).toBeCloseTo(3004.68, 1);
    expect(route.massKgPerCopy * 1000).toBeCloseTo(18.9396, 4);
    expect(route.flowCm3PerH).toBeCloseTo(5.4 * 3.6, 9);
  });

  test("stands 3 x 5 times on the platform, whose 240 mm take 3 of 60 and 5 of 40 mm with a gap of 5", () => {
    expect(route.copiesMax).toBe(3 * 5);
    expect(route.footprintMm).toEqual({ x: 60, y: 40 });
    expect(route.heightMm).toBe(20);
  });

  test("waits for the shortest layer when it is longer, and the caution says so", () => {
    const slow = firstRoute(findRoutes(part, machine, [aFeedstock({ minLayerS: 30 })]));
    expect(depositionMin({ route: slow, copies: 1 }) * 60).toBeCloseTo(92 * 30 + 8 * 94.6695, 1);
    expect(slow.cautions.join()).toContain("One copy alone waits: its quickest layer takes 24.4 s");
  });

  test("goes no faster than the melt limit with the feedstock's factor", () => {
    const thick = firstRoute(findRoutes(part, machine, [aFeedstock({ flowFactor: 0.1 })]));
    expect(thick.flowCm3PerH).toBeCloseTo(4, 9);
  });

  test("takes warm-up, cool-down and the time factor from the machine", () => {
    const late = firstRoute(findRoutes(part, { ...machine, timeFactor: 1.2 }, [aFeedstock()]));
    expect(late.timeFactor).toBe(1.2);
    expect(late.fixedMin).toBe(15);
  });
});

describe("pellets: one bead of 8.4 x 3.8 mm bonds for 124 s and carries after 54 s", () => {
  test("a tube of 1000 mm at 80 mm/s takes 39.27 s a layer and up to 5 % more for its corners; it pauses and bonds", () => {
    const route = firstRoute(findRoutes(tube(1000, 600), pelletMachine({ maxSpeedMmPerS: 80 }), [PELLETS]));
    expect(route.massKgPerCopy).toBeCloseTo(18.0624, 3);
    expect(Math.abs(route.shortestLayerS / 53.7 - 1)).toBeLessThan(0.02);
    expect(Math.abs(route.longestLayerS / 124.4 - 1)).toBeLessThan(0.02);
    expect(route.layerGroups[0]?.workS).toBeGreaterThan(39.27);
    expect(route.layerGroups[0]?.workS).toBeLessThan(39.27 * 1.05);
    expect(route.copiesMin).toBe(1);
    expect(route.copiesMax).toBe(1);
  });

  test("a tube that takes longer than 124 s a layer is too slow, and what would cure it has a number", () => {
    const slow = pelletMachine({ maxSpeedMmPerS: 20 });
    const [reason] = reasonsOf(findRoutes(tube(1000, 600), slow, [PELLETS]));
    expect(reason?.code).toBe("layer-too-slow");
    expect(reason?.sentence).toMatch(
      /^a layer takes 159\.\d s, the next one bonds only within 12\d\.?\d? s: 1\.\d+ times/,
    );
  });

  test("thinner layers are tried when thick ones are too slow: a limited flow finishes them sooner", () => {
    const nozzle = aNozzle({
      id: "n8",
      diameterMm: 8,
      beadWidthMm: { min: 8.4, max: 8.4 },
      layerHeightMm: { min: 1, max: 3.8 },
      flowCm3PerH: 2400,
    });
    const feedstock = { ...PELLETS, maxLayerS: 124 };
    const route = firstRoute(findRoutes(tube(1000, 600), pelletMachine({ nozzles: [nozzle] }), [feedstock]));
    expect(route.layerHeightMm).toBeCloseTo(0.75 * 3.8, 12);
    expect(slowestLayerS({ route, copies: 1 })).toBeLessThanOrEqual(124);
  });

  test("a machine that bears only short pauses must print several small tubes at once", () => {
    const machine = pelletMachine({ maxSpeedMmPerS: 80, maxWaitPerLayerS: 5 });
    const route = firstRoute(findRoutes(tube(200, 300), machine, [PELLETS]));
    expect(route.copiesMin).toBeGreaterThan(1);
    expect(
      slowestLayerS({ route: { ...route, shortestLayerS: 0 }, copies: route.copiesMin }),
    ).toBeGreaterThan(route.shortestLayerS - 5);
    expect(
      slowestLayerS({ route: { ...route, shortestLayerS: 0 }, copies: route.copiesMin - 1 }),
    ).toBeLessThan(route.shortestLayerS - 5);
  });

  test("the longest layer keeps copies off the platform: one more would be too cold", () => {
    const route = firstRoute(findRoutes(tube(200, 300), pelletMachine({ maxSpeedMmPerS: 80 }), [PELLETS]));
    expect(slowestLayerS({ route, copies: route.copiesMax })).toBeLessThanOrEqual(route.longestLayerS);
    expect(slowestLayerS({ route, copies: route.copiesMax + 1 })).toBeGreaterThan(route.longestLayerS);
  });

  test("a platform too small for the copies it takes is too fast, with the copies that would cure it", () => {
    const machine = pelletMachine({ envelopeMm: { x: 400, y: 400, z: 1000 }, maxWaitPerLayerS: 5 });
    const [reason] = reasonsOf(findRoutes(tube(200, 300), machine, [PELLETS]));
    expect(reason?.code).toBe("layer-too-fast");
    expect(reason?.sentence).toMatch(/\d+ copies at once would cure it, but the platform takes only 1\.$/);
  });
});

/** A tube of 300 mm that is cut into so many islands. */
function legs(islands: number): Part {
  const part = tube(300, 300);
  const layers = [{ zMm: 150, areaMm2: Math.PI * 300 * 8.4, perimeterMm: Math.PI * 600, islands }];
  return { ...part, geometry: { kind: "measures", measures: { ...part.geometry.measures, layers } } };
}

describe("starts of the flow", () => {
  const machine = pelletMachine({
    startPurgeG: 10,
    envelopeMm: { x: 450, y: 450, z: 500 },
    maxSpeedMmPerS: 60,
  });
  const massKg = (islands: number) => firstRoute(findRoutes(legs(islands), machine, [PELLETS])).massKgPerCopy;

  test("a part alone with one island goes on where it was; each island more costs a start in every layer", () => {
    expect(massKg(2) - massKg(1)).toBeCloseTo(79 * 0.01, 1);
    expect(massKg(1)).toBeCloseTo(79 * Math.PI * 300 * 8.4 * 3.8 * 1140e-9, 2);
  });

  test("many islands are cautioned against on pellet machines", () => {
    expect(firstRoute(findRoutes(legs(3), machine, [PELLETS])).cautions.join()).not.toContain("islands");
    expect(firstRoute(findRoutes(legs(4), machine, [PELLETS])).cautions.join()).toContain(
      "Up to 4 islands in a layer",
    );
  });
});

test("a part of hundreds of different layers becomes some dozens of groups that take the same time in all", () => {
  const layers = Array.from({ length: 500 }, (_, index) => ({
    zMm: (index + 0.5) * 0.4,
    areaMm2: 10_000 + 6000 * Math.sin(index / 45),
    perimeterMm: 900 + 300 * Math.sin(index / 20),
    islands: 1,
  }));
  const measures = { volumeMm3: 2e6, areaMm2: 2e5, boxMm: { x: 200, y: 150, z: 200 }, layers };
  const part = aPart({
    geometry: { kind: "measures", measures },
    orientations: ["z"],
    infillPct: 100,
    solidLayers: 0,
  });
  const route = firstRoute(findRoutes(part, aMachine(), [aFeedstock()]));
  expect(route.layerGroups.reduce((sum, { count }) => sum + count, 0)).toBe(1000);
  expect(route.layerGroups.length).toBeLessThan(90);
  const volumeMm3 = layers.reduce((sum, { areaMm2 }) => sum + areaMm2 * 0.4, 0);
  expect(route.massKgPerCopy / (volumeMm3 * 1240e-9)).toBeCloseTo(1, 9);
});

describe("supports and overhang", () => {
  const measures = { volumeMm3: 8000, areaMm2: 4000, boxMm: { x: 30, y: 30, z: 20 }, overhangAreaMm2: 200 };
  const part = aPart({ geometry: { kind: "measures", measures }, orientations: ["z"] });

  test("cost filament and time: 300 mm3 at 1240 kg/m3 are 0.372 g", () => {
    const plain = aPart({
      geometry: { kind: "measures", measures: { ...measures, overhangAreaMm2: 0 } },
      orientations: ["z"],
    });
    const withSupport = firstRoute(findRoutes(part, aMachine(), [aFeedstock()]));
    const without = firstRoute(findRoutes(plain, aMachine(), [aFeedstock()]));
    expect(withSupport.supportKgPerCopy * 1000).toBeCloseTo(0.372, 9);
    expect(withSupport.massKgPerCopy - without.massKgPerCopy).toBeCloseTo(0.372e-3, 12);
    expect(depositionMin({ route: withSupport, copies: 10 })).toBeGreaterThan(
      depositionMin({ route: without, copies: 10 }),
    );
  });

  test("are not built on pellet machines, which is a caution", () => {
    const large = tube(1000, 600);
    const hanging: Part = {
      ...large,
      geometry: { kind: "measures", measures: { ...large.geometry.measures, overhangAreaMm2: 500 } },
    };
    const route = firstRoute(findRoutes(hanging, pelletMachine(), [PELLETS]));
    expect(route.supportKgPerCopy).toBe(0);
    expect(route.cautions.join()).toContain("500 mm² hang over and are built without support.");
  });
});

describe("cautions of filament", () => {
  const abs = aFeedstock({
    name: "ABS black",
    family: "ABS",
    nozzleC: { min: 230, max: 250 },
    bondC: 105,
    specificHeatJPerKgK: 1397,
    densityKgPerM3: 1040,
    conductivityWPerMK: 0.17,
  });
  const long = aPart({
    geometry: {
      kind: "measures",
      measures: { volumeMm3: 60_000, areaMm2: 30_000, boxMm: { x: 101, y: 40, z: 20 } },
    },
    orientations: ["z"],
  });
  const cautions = (part: Part, chamberC: number, feedstock = abs) =>
    firstRoute(findRoutes(part, aMachine({ chamberC }), [feedstock])).cautions.join(" ");

  test("long parts of ABS in cold air may warp, short ones or warm air not", () => {
    expect(cautions(long, 44)).toContain("ABS black over 100 mm in air of 44 °C may warp.");
    expect(cautions(long, 45)).not.toContain("warp");
    expect(cautions(aPart(), 44)).not.toContain("warp");
    expect(cautions(long, 20, aFeedstock())).not.toContain("warp");
  });

  test("a weld of under half a second is weak across layers", () => {
    expect(cautions(aPart(), 20)).toContain("weak across layers");
    expect(cautions(aPart(), 70)).not.toContain("weak across layers");
  });
});

/** Cautions of a body of 40 x 30 x 20 mm that is built with its x axis vertical. */
function onItsSide(volumeMm3: number): string {
  const measures = { volumeMm3, areaMm2: 5200, boxMm: { x: 40, y: 30, z: 20 } };
  const side = aPart({ geometry: { kind: "measures", measures }, orientations: ["x"] });
  return firstRoute(findRoutes(side, aMachine(), [aFeedstock()])).cautions.join();
}

describe("orientation", () => {
  test("a rod longer than the machine is high is built lying", () => {
    const rod = aPart({
      geometry: {
        kind: "measures",
        measures: { volumeMm3: 200 * 400, areaMm2: 16_800, boxMm: { x: 20, y: 20, z: 200 } },
      },
    });
    const low = aMachine({ envelopeMm: { x: 250, y: 250, z: 100 } });
    expect(firstRoute(findRoutes(rod, low, [aFeedstock()])).orientation).not.toBe("z");
  });

  test("the axis of the load is never vertical", () => {
    for (const loadAxis of ["x", "y", "z"] as const) {
      expect(firstRoute(findRoutes(aPart({ loadAxis }), aMachine(), [aFeedstock()])).orientation).not.toBe(
        loadAxis,
      );
    }
  });

  test("a body built on its side says that it was measured upright; a box has nothing to say", () => {
    expect(onItsSide(10_000)).toContain(
      "Built with x vertical: its layers and overhang are known with z vertical only",
    );
    expect(onItsSide(24_000)).not.toContain("Built with");
  });
});
