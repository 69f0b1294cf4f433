import { describe, expect, test } from "vitest";
import { findEveryRoute, findRoutes } from "../../../core/estimate/find-routes.ts";
import { layerTimes } from "../../../core/estimate/layer-times.ts";
import { depositionMin, slowestLayerS } from "../../../core/estimate/print-time.ts";
import type { RouteAnswer, RouteReason } from "../../../core/estimate/route.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import type { Part } from "../../../core/shop/part.ts";
import type { MeasuredStanding } from "../../../core/shop/standing.ts";
import { aCut, aMeasuredPart, aStanding, boxStandings, rectangle } from "../../fixtures/a-measured-part.ts";
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
    maxSpeedMmPerS: 80,
    accelerationMmPerS2: 500,
    cornerDeviationMm: 0.5,
    layerChangeS: 2,
    travelS: 3,
    nozzles: [
      aNozzle({
        id: "n8",
        diameterMm: 8,
        beadWidthMm: { min: 8, max: 8 },
        layerHeightMm: { min: 4, max: 4 },
        flowCm3PerH: 20_000,
      }),
    ],
    ...overrides,
  });
}

function reasonOf(answers: readonly RouteAnswer[]): RouteReason {
  const [answer] = answers;
  const reason = answer?.status === "refused" ? answer.reasons[0] : undefined;
  if (!reason) throw new Error(`not refused: ${JSON.stringify(answer)}`);
  return reason;
}

/** Square single-wall tubes one above the other, 8 mm thick: side at the centre line and height of each, mm. */
function towers(sections: readonly (readonly [sideMm: number, heightMm: number])[], more = {}): Part {
  let zMm = 0;
  const cuts = sections.map(([sideMm, heightMm]) => {
    zMm += heightMm;
    const around = { areaMm2: 4 * sideMm * 8, perimeterMm: 8 * sideMm, holes: 1, corners: 8, thinnestMm: 8 };
    return aCut({ zMm, ...around });
  });
  const widest = Math.max(...sections.map(([sideMm]) => sideMm)) + 8;
  const standing = aStanding({ heightMm: zMm, hullMm: rectangle(widest, widest), cuts });
  const volumeMm3 = sections.reduce((sum, [sideMm, heightMm]) => sum + 4 * sideMm * 8 * heightMm, 0);
  const part = aMeasuredPart({}, [standing]);
  const measures = { ...part.geometry.measures, volumeMm3, boxMm: { x: widest, y: widest, z: zMm } };
  return {
    ...part,
    geometry: { ...part.geometry, measures } as Part["geometry"],
    smallestFeatureMm: 8,
    maxLayerHeightMm: 4,
    shells: 1,
    solidLayers: 0,
    infillPct: 0,
    ...more,
  };
}

test("a box from a mesh has the routes of the same box by measures alone, to the last digit that counts", () => {
  const measures = { volumeMm3: 24_000, areaMm2: 5200, boxMm: { x: 40, y: 30, z: 20 } };
  for (const axis of ["x", "y", "z"]) {
    const byHand = aPart({ geometry: { kind: "measures", measures }, orientations: [axis] });
    const known = firstRoute(findRoutes(byHand, aMachine(), [aFeedstock()]));
    const found = firstRoute(findRoutes(aMeasuredPart({ orientations: [axis] }), aMachine(), [aFeedstock()]));
    expect(found.orientation).toBe(axis);
    expect(found.massKgPerCopy).toBeCloseTo(known.massKgPerCopy, 9);
    expect(found.copiesMax).toBe(known.copiesMax);
    for (const copies of [1, found.copiesMax]) {
      expect(depositionMin({ route: found, copies })).toBeCloseTo(depositionMin({ route: known, copies }), 6);
    }
  }
});

describe("directions up", () => {
  test("are each answered with their own best route", () => {
    const answers = findEveryRoute(aMeasuredPart(), aMachine(), [aFeedstock()]);
    expect(answers.map((answer) => answer.status === "route" && answer.route.orientation)).toEqual([
      "z",
      "-z",
      "y",
      "-y",
      "x",
      "-x",
    ]);
  });

  test("with supports to build and take away again lose to those without, which the choice can overrule", () => {
    const hanging = boxStandings(40, 30, 20)
      .slice(0, 2)
      .map((standing) =>
        standing.up === "z" ? { ...standing, overhangAreaMm2: 300, supportVolumeMm3: 6000 } : standing,
      );
    const solid = aMeasuredPart({}, hanging);
    const measures = { ...solid.geometry.measures, volumeMm3: 12_000 };
    const part = { ...solid, geometry: { ...solid.geometry, measures } as Part["geometry"] };
    const route = firstRoute(findRoutes(part, aMachine(), [aFeedstock()]));
    expect(route.orientation).toBe("-z");
    const chosen = findRoutes(part, aMachine(), [aFeedstock()], { choose: (ways) => ways[0] });
    expect(firstRoute(chosen).orientation).toBe("z");
    expect(firstRoute(chosen).supportKgPerCopy).toBeCloseTo(0.15 * 6000 * 1240e-9, 12);
  });

  test("that nothing supports are refused by a part that no support may touch", () => {
    const standings = boxStandings(40, 30, 20).map((standing) => ({
      ...standing,
      overhangAreaMm2: standing.up === "x" ? 40 : 300,
    }));
    const part = aMeasuredPart({ supportAllowed: false }, standings);
    expect(reasonOf(findRoutes(part, aMachine(), [aFeedstock()])).sentence).toBe(
      "40 mm² hang over and supports must not touch the part.",
    );
  });
});

describe("a turn about the vertical", () => {
  const plain = aMeasuredPart({}, [aStanding({ hullMm: rectangle(300, 20) })]);
  const measures = { ...plain.geometry.measures, boxMm: { x: 300, y: 20, z: 20 } };
  const beam = { ...plain, geometry: { ...plain.geometry, measures } as Part["geometry"] };

  test("lays a part across the platform's diagonal, and the route says so", () => {
    const route = firstRoute(findRoutes(beam, aMachine(), [aFeedstock()]));
    expect(route.rotationDeg).toBeGreaterThan(0);
    expect(route.footprintMm.x).toBeLessThanOrEqual(240 + 1e-6);
    expect(route.footprintMm.y).toBeLessThanOrEqual(240 + 1e-6);
  });

  test("is left out of a route that needs none", () => {
    expect(firstRoute(findRoutes(aMeasuredPart(), aMachine(), [aFeedstock()]))).not.toHaveProperty(
      "rotationDeg",
    );
  });
});

/** A tower of 408 mm across with so much overhang that way up. */
function hangingTower(up: string, overhangAreaMm2: number): MeasuredStanding {
  return { ...(towers([[400, 200]]).geometry.measures.standings?.[0] ?? aStanding()), up, overhangAreaMm2 };
}

function towerOf(standings: MeasuredStanding[]): Part {
  const part = towers([[400, 200]]);
  const measures = { ...part.geometry.measures, standings };
  return { ...part, geometry: { ...part.geometry, measures } as Part["geometry"] };
}

describe("pellets and overhang", () => {
  test("of up to a tenth of the footprint is bridged, with a caution", () => {
    const share = 0.1 * 408 * 408;
    const route = firstRoute(findRoutes(towerOf([hangingTower("z", share - 1)]), pelletMachine(), [PELLETS]));
    expect(route.cautions.join()).toContain("mm² hang over and are built without support.");
  });

  test("of more needs support, which a pellet machine does not build", () => {
    const share = 0.1 * 408 * 408;
    const reason = reasonOf(
      findRoutes(towerOf([hangingTower("z", share + 1000)]), pelletMachine(), [PELLETS]),
    );
    expect(reason.code).toBe("support");
    expect(reason.sentence).toMatch(
      /^needs support, a pellet machine builds without: with z up 17646.4 mm² hang over, 10.6 % of its footprint\.$/,
    );
  });

  test("keeps the other way up", () => {
    const part = towerOf([hangingTower("z", 90_000), hangingTower("-z", 0)]);
    expect(firstRoute(findRoutes(part, pelletMachine(), [PELLETS])).orientation).toBe("-z");
  });
});

/** Layers of 900 mm across, the last few of 60 mm; 100 in all. */
function tip(layers: number): Part {
  return towers([
    [900, 4 * (100 - layers)],
    [60, 4 * layers],
  ]);
}

describe("layers against their window", () => {
  test("too slow ones are named by number, with what would cure it", () => {
    const part = towers([
      [400, 400],
      [1300, 200],
    ]);
    const reason = reasonOf(findRoutes(part, pelletMachine({ maxSpeedMmPerS: 40 }), [PELLETS]));
    expect(reason.code).toBe("layer-too-slow");
    expect(reason.sentence).toMatch(
      /times the deposition rate, .* would cure it\. It is so in layers 101 to 150 of 150 with z up\.$/,
    );
    expect(reason.values).toMatchObject({ layers: "layers 101 to 150" });
  });

  test("too fast ones are named by number, with the copies that would cure it", () => {
    const part = towers([
      [900, 300],
      [60, 300],
    ]);
    const small = pelletMachine({ envelopeMm: { x: 1100, y: 1100, z: 1000 }, maxWaitPerLayerS: 15 });
    const reason = reasonOf(findRoutes(part, small, [PELLETS]));
    expect(reason.code).toBe("layer-too-fast");
    expect(reason.sentence).toMatch(
      /\d+ copies at once would cure it, but the platform takes only 1\. It is so in layers 76 to 150 of 150 with z up\.$/,
    );
  });

  test("a few too fast ones are a caution, one more than 2 % a refusal", () => {
    const small = pelletMachine({ envelopeMm: { x: 1100, y: 1100, z: 1000 }, maxWaitPerLayerS: 30 });
    const route = firstRoute(findRoutes(tip(2), small, [PELLETS]));
    expect(route.cautions.join(" ")).toContain("Watch it in layers 99 to 100: so few");
    expect(reasonOf(findRoutes(tip(3), small, [PELLETS])).code).toBe("layer-too-fast");
  });

  test("ones that wait are named in a caution", () => {
    const part = towers([
      [1100, 300],
      [400, 300],
    ]);
    const route = firstRoute(findRoutes(part, pelletMachine(), [PELLETS]));
    expect(route.cautions.join(" ")).toMatch(/One copy alone waits in layers 76 to 150: its quickest/);
  });

  test("all of them alike need no numbers", () => {
    const route = firstRoute(findRoutes(towers([[400, 400]]), pelletMachine(), [PELLETS]));
    expect(route.cautions.join(" ")).toMatch(/One copy alone waits: its quickest/);
  });
});

describe("layer times", () => {
  const part = towers([
    [400, 300],
    [200, 302],
  ]);
  const machine = pelletMachine();
  const route = firstRoute(findRoutes(part, machine, [PELLETS]));

  test.each([1, 3])("of %i copies add up to the deposition time, and each is in its window", (copies) => {
    const { layers, shortestLayerS } = layerTimes({ part, machine, feedstock: PELLETS, route }, copies);
    expect(layers).toHaveLength(151);
    const sumS = layers.reduce((sum, { layerS }) => sum + layerS, 0);
    expect(sumS / 60 / depositionMin({ route, copies })).toBeCloseTo(1, 9);
    for (const { layerS } of layers) expect(layerS).toBeGreaterThanOrEqual(shortestLayerS);
    expect(Math.max(...layers.map(({ layerS }) => layerS))).toBeCloseTo(slowestLayerS({ route, copies }), 9);
  });

  test("know their number and height, and how long they wait", () => {
    const { layers } = layerTimes({ part, machine, feedstock: PELLETS, route }, 1);
    expect(layers[0]).toMatchObject({ layer: 1, zMm: 4 });
    expect(layers[150]).toMatchObject({ layer: 151, zMm: 602 });
    const { workS, layerS, waitS } = layers[150] ?? { workS: 0, layerS: 0, waitS: 0 };
    expect(workS + route.layerChangeS + waitS).toBeCloseTo(layerS, 9);
    expect(waitS).toBeGreaterThan(0);
  });

  test("come from exact cuts where they are at hand", () => {
    const exact = {
      layerHeightMm: 4,
      areaMm2: Array.from({ length: 151 }, () => 4 * 100 * 8),
      perimeterMm: Array.from({ length: 151 }, () => 800),
      islands: Array.from({ length: 151 }, () => 1),
      holes: Array.from({ length: 151 }, () => 1),
      sharpCorners: Array.from({ length: 151 }, () => 8),
    };
    const { layers } = layerTimes({ part, machine, feedstock: PELLETS, route, exact }, 1);
    expect(new Set(layers.map(({ workS }) => workS)).size).toBe(1);
    const [pathS, travelS] = [400 / 80, 3];
    expect(layers[0]?.workS).toBeGreaterThan(pathS + travelS);
    expect(layers[0]?.workS).toBeLessThan(1.1 * pathS + travelS);
  });
});

test("walls that meet are cautioned against on pellet machines, by layer numbers", () => {
  const ribbed = towers([
    [400, 200],
    [400, 200],
  ]);
  const [low, high] = ribbed.geometry.measures.standings?.[0]?.cuts ?? [];
  if (!low || !high) throw new Error("no cuts");
  const standing = aStanding({
    heightMm: 400,
    hullMm: rectangle(408, 408),
    cuts: [{ ...low, holes: 2 }, high],
  });
  const measures = { ...ribbed.geometry.measures, standings: [standing] };
  const part = { ...ribbed, geometry: { ...ribbed.geometry, measures } as Part["geometry"] };
  const meeting = "Walls meet in layers 1 to 50: a bead along them crosses itself or stops";
  expect(firstRoute(findRoutes(part, pelletMachine(), [PELLETS])).cautions.join()).toContain(meeting);
  expect(firstRoute(findRoutes(ribbed, pelletMachine(), [PELLETS])).cautions.join()).not.toContain(
    "Walls meet",
  );
});

/** Walls of 8 mm, on a floor of so many layers of 4 mm. */
function bin(floorLayers: number, sideMm: number): Part {
  const floor = aCut({
    zMm: 4 * floorLayers,
    areaMm2: sideMm ** 2,
    perimeterMm: 4 * sideMm,
    thinnestMm: sideMm,
  });
  const wall = {
    areaMm2: 4 * (sideMm - 8) * 8,
    perimeterMm: 8 * (sideMm - 8),
    holes: 1,
    corners: 8,
    thinnestMm: 8,
  };
  const cuts = [floor, aCut({ zMm: 400, ...wall })];
  const part = towers([[sideMm - 8, 400]], { solidLayers: 2, infillPct: 100 });
  const standing = aStanding({ heightMm: 400, hullMm: rectangle(sideMm, sideMm), cuts });
  const measures = { ...part.geometry.measures, standings: [standing] };
  return { ...part, geometry: { ...part.geometry, measures } as Part["geometry"] };
}

describe("a bin of thin walls on a solid floor, on pellets", () => {
  const machine = pelletMachine({ maxSpeedMmPerS: 250, accelerationMmPerS2: 4000 });

  test("may take as long for its floor as the floor stays warm, longer than its walls may", () => {
    const walls = firstRoute(findRoutes(bin(0.001, 540), machine, [PELLETS]));
    const route = firstRoute(findRoutes(bin(2, 540), machine, [PELLETS]));
    expect(route.longestLayerS).toBeGreaterThan(1.5 * walls.longestLayerS);
    for (let copies = 1; copies <= route.copiesMax; copies++) {
      expect(slowestLayerS({ route, copies })).toBeLessThanOrEqual(route.longestLayerS + 1e-9);
    }
    expect(slowestLayerS({ route, copies: 1 })).toBeGreaterThan(walls.longestLayerS);
  });

  test("is refused where the floor takes longer than even that, and the floor's layers are named", () => {
    const reason = reasonOf(findRoutes(bin(2, 1100), machine, [PELLETS]));
    expect(reason.code).toBe("layer-too-slow");
    expect(reason.sentence).toContain("It is so in layers 1 to 2 of 100 with z up.");
  });
});
