import { describe, expect, test } from "vitest";
import { findRoutes } from "../../core/estimate/find-routes.ts";
import { layerPath } from "../../core/estimate/layer-path.ts";
import { layerWindow } from "../../core/estimate/layer-window.ts";
import { depositionMin, slowestLayerS } from "../../core/estimate/print-time.ts";
import type { Route } from "../../core/estimate/route.ts";
import { tabledWindow } from "../../core/estimate/window-table.ts";
import type { Feedstock } from "../../core/shop/feedstock.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Part } from "../../core/shop/part.ts";
import { seededRandom } from "../../core/units/random.ts";
import type { Random } from "../../core/units/random.ts";
import { aFeedstock, aMachine, aNozzle, aPart } from "../fixtures/a-route.ts";

/** Laws that any estimate obeys, on seeded random parts, machines and feedstocks. */

describe("every answer of 400 random cases", () => {
  const random = seededRandom(5);
  const cases = Array.from({ length: 400 }, () => randomCase(random));
  const found = cases.map((given) => ({
    ...given,
    answers: findRoutes(given.part, given.machine, given.feedstocks),
  }));
  const routes = found.flatMap(({ part, machine, feedstocks, answers }) =>
    answers.flatMap((answer) =>
      answer.status === "route" ? [{ part, machine, feedstocks, route: answer.route }] : [],
    ),
  );

  test("is a route or at least one reason with a sentence, and both occur often", () => {
    const answers = found.flatMap((each) => each.answers);
    const refused = answers.flatMap((answer) => (answer.status === "refused" ? [answer] : []));
    for (const { reasons } of refused) {
      expect(reasons.length).toBeGreaterThan(0);
      for (const { sentence } of reasons) expect(sentence).toMatch(/^[^ ].*\.$/);
      for (const { sentence } of reasons) expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
    }
    expect(routes.length).toBeGreaterThan(200);
    expect(refused.length).toBeGreaterThan(200);
  });

  test("has whole copies from 1 that stand on the platform", () => {
    for (const { route, machine } of routes) {
      expect(Number.isInteger(route.copiesMin) && Number.isInteger(route.copiesMax)).toBe(true);
      expect(route.copiesMin).toBeGreaterThanOrEqual(1);
      expect(route.copiesMax).toBeGreaterThanOrEqual(route.copiesMin);
      const free = (lengthMm: number) => lengthMm - 2 * machine.edgeMarginMm + 1e-6;
      expect(route.footprintMm.x).toBeLessThanOrEqual(free(machine.envelopeMm.x));
      expect(route.footprintMm.y).toBeLessThanOrEqual(free(machine.envelopeMm.y));
      expect(route.heightMm).toBeLessThanOrEqual(machine.envelopeMm.z + 1e-6);
      const areaMm2 = route.copiesMax * route.footprintMm.x * route.footprintMm.y;
      expect(areaMm2).toBeLessThanOrEqual(free(machine.envelopeMm.x) * free(machine.envelopeMm.y));
    }
  });

  test("keeps its layer times within their limits from the fewest to the most copies", () => {
    for (const { route, machine } of routes) {
      expect(slowestLayerS({ route, copies: route.copiesMax })).toBeLessThanOrEqual(
        route.longestLayerS * (1 + 1e-9),
      );
      const works = route.layerGroups.map(({ workS }) => workS).filter((workS) => workS > 0);
      const pauseS = route.shortestLayerS - route.layerChangeS - route.copiesMin * Math.min(...works);
      expect(pauseS).toBeLessThanOrEqual((machine.maxWaitPerLayerS ?? Number.POSITIVE_INFINITY) + 1e-6);
    }
  });

  test("never shortens a build by another copy, nor lengthens the time per copy", () => {
    for (const { route } of routes) {
      const most = Math.min(route.copiesMax, 30);
      for (let copies = 1; copies < most; copies++) {
        const now = depositionMin({ route, copies });
        const next = depositionMin({ route, copies: copies + 1 });
        expect(next).toBeGreaterThanOrEqual(now - 1e-9);
        expect(next / (copies + 1)).toBeLessThanOrEqual(now / copies + 1e-9);
      }
    }
  });

  test("lays beads that nozzle and part allow, no faster than machine and melt limit", () => {
    for (const { route, part, machine, feedstocks } of routes) {
      const nozzle = machine.nozzles.find(({ id }) => id === route.nozzleId);
      const feedstock = feedstocks.find(({ id }) => id === route.feedstockId);
      if (!nozzle || !feedstock) throw new Error("a route of a nozzle or feedstock that does not exist");
      expect(route.beadWidthMm).toBeLessThanOrEqual(Math.min(nozzle.beadWidthMm.max, part.smallestFeatureMm));
      expect(route.beadWidthMm).toBeGreaterThanOrEqual(nozzle.beadWidthMm.min);
      expect(route.layerHeightMm).toBeLessThanOrEqual(
        Math.min(nozzle.layerHeightMm.max, part.maxLayerHeightMm),
      );
      expect(route.layerHeightMm).toBeGreaterThanOrEqual(nozzle.layerHeightMm.min);
      expect(route.flowCm3PerH).toBeLessThanOrEqual(nozzle.flowCm3PerH * feedstock.flowFactor * (1 + 1e-9));
      const speed = route.flowCm3PerH / 3.6 / (route.beadWidthMm * route.layerHeightMm);
      expect(speed).toBeLessThanOrEqual(machine.maxSpeedMmPerS * (1 + 1e-9));
    }
  });

  test("takes at least the time that its mass needs at its flow", () => {
    for (const { route, feedstocks } of routes) {
      const density = feedstocks.find(({ id }) => id === route.feedstockId)?.densityKgPerM3 ?? 0;
      const leastMin = ((route.massKgPerCopy / density) * 1e6 * 60) / route.flowCm3PerH;
      const oneMin = depositionMin({ route, copies: 1 }) / route.timeFactor;
      expect(oneMin).toBeGreaterThanOrEqual(leastMin * (1 - 1e-9));
    }
  });

  test("is the same when asked again, and whatever other feedstocks are asked with it", () => {
    for (const { part, machine, feedstocks, answers } of found.slice(0, 100)) {
      expect(findRoutes(part, machine, feedstocks)).toEqual(answers);
      const alone = feedstocks.flatMap((feedstock) => findRoutes(part, machine, [feedstock]));
      expect(new Set(alone.map((answer) => JSON.stringify(answer)))).toEqual(
        new Set(answers.map((answer) => JSON.stringify(answer))),
      );
    }
  });
});

describe("more of what helps never hurts", () => {
  test("more flow never lengthens the best time per copy by more than the 5 % in which routes count as equal", () => {
    const random = seededRandom(6);
    let compared = 0;
    for (let n = 0; n < 150; n++) {
      const { part, machine } = randomCase(random);
      const filament = { ...machine, process: "filament" as const };
      const before = firstRoute(part, filament, aFeedstock());
      const after = firstRoute(part, filament, aFeedstock({ flowFactor: 1.5 }));
      if (!before) continue;
      compared += 1;
      expect(after).not.toBeNull();
      if (after) expect(perCopyMin(after)).toBeLessThanOrEqual(perCopyMin(before) * 1.05 + 1e-9);
    }
    expect(compared).toBeGreaterThan(30);
  });

  test("a larger envelope never loses a route", () => {
    const random = seededRandom(7);
    for (let n = 0; n < 150; n++) {
      const { part, machine, feedstocks } = randomCase(random);
      const { x, y, z } = machine.envelopeMm;
      const larger = { ...machine, envelopeMm: { x: 1.3 * x, y: 1.2 * y, z: 1.1 * z } };
      expect(countRoutes(part, larger, feedstocks)).toBeGreaterThanOrEqual(
        countRoutes(part, machine, feedstocks),
      );
    }
  });
});

describe("layer window on 60 random walls", () => {
  const random = seededRandom(9);
  const walls = Array.from({ length: 60 }, () => ({
    layerHeightMm: 0.5 + 7 * random(),
    wallWidthMm: 2 + 60 * random(),
    depositC: 190 + 60 * random(),
    platformC: 40 + 50 * random(),
    airC: 15 + 50 * random(),
    densityKgPerM3: 1000 + 300 * random(),
    specificHeatJPerKgK: 1200 + 700 * random(),
    conductivityWPerMK: 0.15 + 0.3 * random(),
    convectionWPerM2K: 7,
    emissivity: 0.85,
  }));
  const needs = { carryC: 140, bondC: 100 };

  test("opens before it closes", () => {
    for (const wall of walls) {
      const { shortestS, longestS } = layerWindow(wall, needs);
      expect(shortestS).toBeGreaterThan(0);
      expect(longestS).toBeGreaterThan(shortestS);
    }
  });

  test("neither limit comes sooner in warmer air, on a thicker wall or with feedstock laid hotter", () => {
    for (const wall of walls) {
      const now = layerWindow(wall, needs);
      for (const changed of [
        { airC: wall.airC + 10 },
        { wallWidthMm: wall.wallWidthMm * 1.5 },
        { depositC: wall.depositC + 10 },
      ]) {
        const then = layerWindow({ ...wall, ...changed }, needs);
        expect(then.longestS).toBeGreaterThanOrEqual(now.longestS * 0.999);
        expect(then.shortestS).toBeGreaterThanOrEqual(now.shortestS * 0.999);
      }
    }
  });

  test("comes out of the table within 1.5 %", () => {
    for (const { wallWidthMm, ...stuff } of walls) {
      const direct = layerWindow({ ...stuff, wallWidthMm }, needs);
      const tabled = tabledWindow(stuff, needs, wallWidthMm);
      expect(Math.abs(tabled.shortestS / direct.shortestS - 1)).toBeLessThan(0.015);
      expect(Math.abs(tabled.longestS / direct.longestS - 1)).toBeLessThan(0.015);
    }
  });
});

test("a layer filled solid deposits exactly its area, one filled less never more", () => {
  const random = seededRandom(10);
  for (let n = 0; n < 2000; n++) {
    const areaMm2 = 1e4 ** random();
    const islands = 1 + Math.floor(4 * random());
    const perimeterMm = 2 * Math.sqrt(Math.PI * areaMm2) * (1 + 5 * random());
    const cut = { areaMm2, perimeterMm, islands, shrinkPerMm: random() < 0.5 ? 8 : 2 * Math.PI };
    const filling = { beadWidthMm: 0.2 + 10 * random(), walls: 1 + Math.floor(5 * random()) };
    const laid = (density: number) => {
      const path = layerPath(cut, { ...filling, density });
      return ((path.wallMm + path.infillMm) * filling.beadWidthMm) / areaMm2;
    };
    expect(laid(1)).toBeCloseTo(1, 6);
    expect(laid(0.3)).toBeLessThanOrEqual(1 + 1e-9);
    expect(laid(0.3)).toBeGreaterThanOrEqual(0.3 - 1e-9);
  }
});

interface Case {
  readonly part: Part;
  readonly machine: Machine;
  readonly feedstocks: readonly Feedstock[];
}

function randomCase(random: Random): Case {
  const pellet = random() < 0.5;
  return {
    part: randomPart(random),
    machine: pellet
      ? randomPelletMachine(random)
      : aMachine({ chamberC: 25 + 40 * random(), travelS: random() }),
    feedstocks: ["pla", "abs", "pei"].map((id) =>
      randomFeedstock(random, id, pellet ? "pellet" : "filament"),
    ),
  };
}

function randomPart(random: Random): Part {
  const side = () => 15 * 60 ** random();
  const boxMm = { x: side(), y: side(), z: side() };
  const boxMm3 = boxMm.x * boxMm.y * boxMm.z;
  const smallestFeatureMm = Math.max(0.8, Math.cbrt(boxMm3) * 0.08 * random());
  const measures = {
    volumeMm3: boxMm3 * (0.05 + 0.9 * random()),
    areaMm2: 2 * (boxMm.x * boxMm.y + boxMm.y * boxMm.z + boxMm.x * boxMm.z) * (0.8 + random()),
    boxMm,
    overhangAreaMm2: random() < 0.3 ? boxMm.x * boxMm.y * 0.1 : 0,
  };
  return aPart({
    geometry: {
      kind: "measures",
      measures: random() < 0.5 ? measures : { ...measures, layers: randomCuts(random, measures) },
    },
    smallestFeatureMm,
    maxLayerHeightMm: smallestFeatureMm * (0.2 + 0.4 * random()),
    shells: 1 + Math.floor(3 * random()),
    infillPct: 100 * random(),
    solidLayers: Math.floor(5 * random()),
    supportAllowed: random() < 0.8,
    finishing: { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: random() < 0.3 ? 2 : 0 },
  });
}

function randomCuts(
  random: Random,
  measures: { volumeMm3: number; boxMm: { x: number; y: number; z: number } },
) {
  const mean = measures.volumeMm3 / measures.boxMm.z;
  return Array.from({ length: 12 }, (_, index) => {
    const areaMm2 = mean * (0.5 + random());
    const perimeterMm = 2 * Math.sqrt(Math.PI * areaMm2) * (1 + random());
    return {
      zMm: ((index + 0.5) / 12) * measures.boxMm.z,
      areaMm2,
      perimeterMm,
      islands: 1 + Math.floor(3 * random()),
    };
  });
}

function randomPelletMachine(random: Random): Machine {
  const diameterMm = 3 + 7 * random();
  const nozzle = aNozzle({
    id: "screw",
    diameterMm,
    beadWidthMm: { min: diameterMm, max: 1.4 * diameterMm },
    layerHeightMm: { min: 0.2 * diameterMm, max: 0.6 * diameterMm },
    flowCm3PerH: 2000 + 10_000 * random(),
  });
  const machine = aMachine({
    process: "pellet",
    nozzles: [nozzle],
    envelopeMm: { x: 1200, y: 1000, z: 900 },
    edgeMarginMm: 30,
    partGapMm: 30,
    maxSpeedMmPerS: 60 + 150 * random(),
    accelerationMmPerS2: 500,
    cornerDeviationMm: 0.5,
    chamberC: 20 + 50 * random(),
    layerChangeS: 3 * random(),
  });
  return random() < 0.5 ? machine : { ...machine, maxWaitPerLayerS: 30 * random() };
}

function randomFeedstock(random: Random, id: string, form: "filament" | "pellet"): Feedstock {
  const bondC = 60 + 60 * random();
  return aFeedstock({
    id,
    form,
    flowFactor: 0.6 + random(),
    nozzleC: { min: 200, max: id === "pei" ? 380 : 240 },
    platformC: 40 + 80 * random(),
    bondC,
    carryC: bondC + 45,
    densityKgPerM3: 1000 + 300 * random(),
  });
}

function firstRoute(part: Part, machine: Machine, feedstock: Feedstock): Route | null {
  const [answer] = findRoutes(part, machine, [feedstock]);
  return answer?.status === "route" ? answer.route : null;
}

function perCopyMin(route: Route): number {
  return depositionMin({ route, copies: route.copiesMax }) / route.copiesMax;
}

function countRoutes(part: Part, machine: Machine, feedstocks: readonly Feedstock[]): number {
  return findRoutes(part, machine, feedstocks).filter(({ status }) => status === "route").length;
}
