import { describe, expect, test } from "vitest";
import { makeBuildCosting } from "../../core/cost/build-cost.ts";
import { makeRouteFinder, rankWays } from "../../core/cost/rank-ways.ts";
import { findEveryRoute, findRoutes } from "../../core/estimate/find-routes.ts";
import { layerTimes } from "../../core/estimate/layer-times.ts";
import { measuresOfBody } from "../../core/estimate/part-measures.ts";
import { depositionMin } from "../../core/estimate/print-time.ts";
import type { Route } from "../../core/estimate/route.ts";
import type { Mesh } from "../../core/geometry/mesh.ts";
import type { Measures, Part } from "../../core/shop/part.ts";
import { seededRandom } from "../../core/units/random.ts";
import type { Random } from "../../core/units/random.ts";
import { anOrder, aFeedstock, aMachine, aNozzle, aPart, aShop } from "../fixtures/a-route.ts";
import { ball, box, moved, prism, tShape, together, tube } from "../fixtures/bodies.ts";
import { firstRoute } from "../fixtures/first-route.ts";
import { fromMesh } from "../fixtures/large-format.ts";

/** Laws that any estimate from a mesh obeys, on seeded random bodies. */

const MACHINE = aMachine({ nozzles: [aNozzle({ beadWidthMm: { min: 0.45, max: 0.45 } })] });
const FEEDSTOCK = aFeedstock({ minLayerS: 3 });

function partOf(measures: Measures, overrides: Partial<Part> = {}): Part {
  return fromMesh(measures, { smallestFeatureMm: 0.45, maxLayerHeightMm: 0.3, ...overrides });
}

function routeOf(part: Part): Route {
  return firstRoute(findRoutes(part, MACHINE, [FEEDSTOCK]));
}

function randomBody(random: Random): Mesh {
  const size = () => 12 + 40 * random();
  const kinds: (() => Mesh)[] = [
    () => box(size(), size(), size()),
    () => tube(12 + Math.floor(60 * random()), 30, 10 + 15 * random(), size()),
    () => ball(2 * Math.floor(8 + 20 * random()), size() / 2),
    () => moved(tShape(), (x, y, z) => [2 * x, -2 * z, 2 * y]),
    () => prism([[0, 0], [size(), 0], [size() / 2, size()]], size()), // biome-ignore format: one line
    () =>
      together(
        box(10, 10, size()),
        moved(box(8, 12, 30), (x, y, z) => [x + 20, y, z]),
      ),
  ];
  return (kinds[Math.floor(kinds.length * random())] ?? kinds[0]!)();
}

describe("a body turned about the vertical", () => {
  test("takes the same time and mass, whatever the copies (10 bodies)", () => {
    const random = seededRandom(31);
    for (let n = 0; n < 10; n++) {
      const mesh = randomBody(random);
      const angle = 2 * Math.PI * random();
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const turned = moved(mesh, (x, y, z) => [x * cos - y * sin, x * sin + y * cos, z]);
      const [before, after] = [mesh, turned].map((each) => routeOf(partOf(measuresOfBody(each))));
      if (!before || !after) throw new Error("no routes");
      expect(Math.abs(after.massKgPerCopy / before.massKgPerCopy - 1)).toBeLessThan(1e-3);
      for (const copies of [1, 2, 7]) {
        const ratio = depositionMin({ route: after, copies }) / depositionMin({ route: before, copies });
        expect(Math.abs(ratio - 1)).toBeLessThan(5e-3);
      }
    }
  });

  test("fits wherever it fitted before: a beam at any angle lies across the diagonal", () => {
    const random = seededRandom(32);
    for (let n = 0; n < 12; n++) {
      const angle = Math.PI * random();
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const beam = moved(box(310, 12, 10), (x, y, z) => [x * cos - y * sin, x * sin + y * cos, z]);
      const { footprintMm } = routeOf(partOf(measuresOfBody(beam)));
      expect(Math.max(footprintMm.x, footprintMm.y)).toBeLessThanOrEqual(240 + 1e-6);
    }
  });
});

test("a box from a mesh has the time, mass and copies of the same box by measures alone (12 boxes)", () => {
  const random = seededRandom(33);
  const side = () => Number((8 + 90 * random()).toFixed(1));
  for (let n = 0; n < 12; n++) {
    const [x, y, z] = [side(), side(), side()];
    const measures = { volumeMm3: x * y * z, areaMm2: 2 * (x * y + y * z + z * x), boxMm: { x, y, z } };
    const settings = { smallestFeatureMm: 0.45, maxLayerHeightMm: 0.3, orientations: ["+z"] };
    const known = routeOf(aPart({ geometry: { kind: "measures", measures }, ...settings }));
    const found = routeOf(partOf(measuresOfBody(box(x, y, z))));
    expect(found.copiesMax).toBe(known.copiesMax);
    expect(found.massKgPerCopy / known.massKgPerCopy).toBeCloseTo(1, 5);
    for (const copies of [1, known.copiesMax]) {
      expect(depositionMin({ route: found, copies }) / depositionMin({ route: known, copies })).toBeCloseTo(
        1,
        4,
      );
    }
  }
});

describe("more copies", () => {
  test("never shorten a build nor a layer, and never lengthen the time for each", () => {
    const random = seededRandom(34);
    for (let n = 0; n < 8; n++) {
      const part = partOf(measuresOfBody(randomBody(random)));
      const route = routeOf(part);
      const layersOf = (copies: number) =>
        layerTimes({ part, machine: MACHINE, feedstock: FEEDSTOCK, route }, copies).layers;
      for (let copies = 1; copies < Math.min(6, route.copiesMax); copies++) {
        const [now, next] = [copies, copies + 1].map((count) => depositionMin({ route, copies: count }));
        expect(next).toBeGreaterThanOrEqual((now ?? 0) - 1e-9);
        expect((next ?? 0) / (copies + 1)).toBeLessThanOrEqual((now ?? 0) / copies + 1e-9);
        const fewer = layersOf(copies);
        layersOf(copies + 1).forEach(({ layerS, waitS }, at) => {
          expect(layerS).toBeGreaterThanOrEqual((fewer[at]?.layerS ?? 0) - 1e-9);
          expect(waitS).toBeLessThanOrEqual((fewer[at]?.waitS ?? 0) + 1e-9);
        });
      }
    }
  });

  test("take layer by layer what the route says in all, within 1 %", () => {
    const random = seededRandom(35);
    for (let n = 0; n < 10; n++) {
      const part = partOf(measuresOfBody(randomBody(random)));
      const route = routeOf(part);
      for (const copies of [1, route.copiesMax]) {
        const { layers } = layerTimes({ part, machine: MACHINE, feedstock: FEEDSTOCK, route }, copies);
        const minutes = layers.reduce((sum, { layerS }) => sum + layerS, 0) / 60;
        expect(Math.abs(minutes / depositionMin({ route, copies }) - 1)).toBeLessThan(0.01);
      }
    }
  });
});

test("more support never makes a way cheaper, quicker or lighter", () => {
  const random = seededRandom(36);
  for (let n = 0; n < 10; n++) {
    const measures = measuresOfBody(randomBody(random));
    const costing = makeBuildCosting(aShop({ parts: [partOf(measures)] }));
    let before: { cost: number; minutes: number; massKg: number } | null = null;
    for (const supportVolumeMm3 of [0, 500, 4000, 30_000]) {
      const standings = (measures.standings ?? []).map((standing) => ({
        ...standing,
        overhangAreaMm2: supportVolumeMm3 / 10,
        supportVolumeMm3,
      }));
      const route = routeOf(partOf({ ...measures, standings }));
      const now = {
        cost: costing.amounts([{ route, copies: 1 }], MACHINE).total,
        minutes: depositionMin({ route, copies: 1 }),
        massKg: route.massKgPerCopy,
      };
      if (before) {
        expect(now.cost).toBeGreaterThanOrEqual(before.cost - 1e-9);
        expect(now.minutes).toBeGreaterThanOrEqual(before.minutes - 1e-9);
        expect(now.massKg).toBeGreaterThanOrEqual(before.massKg - 1e-12);
      }
      before = now;
    }
  }
});

test("the way that a shop plans with costs no more than any other way up, for any order (8 bodies)", () => {
  const random = seededRandom(37);
  for (let n = 0; n < 8; n++) {
    const quantity = 1 + Math.floor(40 * random());
    const part = partOf(measuresOfBody(randomBody(random)), { id: "clip" });
    const { orientations: _, ...free } = part;
    const shop = aShop({ parts: [free], orders: [anOrder({ quantity })] });
    const costing = makeBuildCosting(shop);
    const planned = firstRoute(makeRouteFinder(shop, costing)(free, MACHINE, [FEEDSTOCK]));
    const every = findEveryRoute(free, MACHINE, [FEEDSTOCK]).flatMap((each) =>
      each.status === "route" ? [{ route: each.route }] : [],
    );
    const [chosen, ...ranked] = [
      ...rankWays(costing, MACHINE, [{ route: planned }], quantity),
      ...rankWays(costing, MACHINE, every, quantity),
    ];
    expect(every.length).toBeGreaterThan(1);
    for (const { costPerCopy } of ranked) expect(chosen?.costPerCopy).toBeLessThanOrEqual(costPerCopy + 1e-9);
  }
});
