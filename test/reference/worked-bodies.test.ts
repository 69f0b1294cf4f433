/**
 * The worked box and tube of bead-identities.test.ts and motion-time.test.ts, this time from their meshes: measured, cut into
 * bands, laid down and timed as a part from a file is. The figures were computed by hand from the definitions (common
 * practice, no source).
 */
import { describe, expect, test } from "vitest";
import { findRoutes } from "../../core/estimate/find-routes.ts";
import { layerTimes } from "../../core/estimate/layer-times.ts";
import { measuresOfBody } from "../../core/estimate/part-measures.ts";
import { depositionMin, slowestLayerS } from "../../core/estimate/print-time.ts";
import type { Route } from "../../core/estimate/route.ts";
import { layerProfile } from "../../core/geometry/layer-profile.ts";
import type { Feedstock } from "../../core/shop/feedstock.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Part } from "../../core/shop/part.ts";
import { aFeedstock, aMachine, aNozzle } from "../fixtures/a-route.ts";
import { box, tube } from "../fixtures/bodies.ts";
import { firstRoute } from "../fixtures/first-route.ts";
import { cfAbsPellets, fromMesh, gantry } from "../fixtures/large-format.ts";

function routeOf(part: Part, machine: Machine, feedstock: Feedstock): Route {
  return firstRoute(findRoutes(part, machine, [feedstock]));
}

describe("the box of 60 x 40 x 20 mm, bead 0.45 x 0.2 mm, 2 walls, 20 %, 4 + 4 solid layers", () => {
  const mesh = box(60, 40, 20);
  const part = fromMesh(measuresOfBody(mesh), {
    smallestFeatureMm: 0.45,
    maxLayerHeightMm: 0.2,
    shells: 2,
    solidLayers: 4,
    infillPct: 20,
  });
  const machine = aMachine({
    maxSpeedMmPerS: 60,
    accelerationMmPerS2: 1000,
    layerChangeS: 0,
    travelS: 0,
    nozzles: [aNozzle({ beadWidthMm: { min: 0.45, max: 0.45 } })],
  });
  const feedstock = aFeedstock({ minLayerS: 0.001 });
  const route = routeOf(part, machine, feedstock);

  test("weighs 18.9396 g and takes 3004.68 s", () => {
    expect(route.massKgPerCopy * 1000).toBeCloseTo(18.9396, 4);
    expect(depositionMin({ route, copies: 1 }) * 60).toBeCloseTo(3004.68, 1);
  });

  test("has 4 solid layers of 94.6695 s, 92 of 24.4275 s and 4 solid ones again, from its bands as from its exact cuts", () => {
    const exact = layerProfile(mesh, { x: 0, y: 0, z: 1 }, 0.2);
    for (const cuts of [{}, { exact }]) {
      const { layers } = layerTimes({ part, machine, feedstock, route, ...cuts }, 1);
      expect(layers).toHaveLength(100);
      for (const { layer, workS } of layers) {
        expect(workS).toBeCloseTo(layer <= 4 || layer > 96 ? 94.6695 : 24.4275, 3);
      }
    }
  });
});

describe("the tube of 1000 mm centre-line diameter, 600 mm high, bead 8.4 x 3.8 mm, as a mesh of 720 sides", () => {
  const part = fromMesh(measuresOfBody(tube(720, 504.2, 495.8, 600)), {
    smallestFeatureMm: 8.5,
    maxLayerHeightMm: 3.8,
    shells: 1,
    solidLayers: 0,
    infillPct: 0,
  });
  const laid = (maxSpeedMmPerS: number, minLayerS: number): Route =>
    routeOf(
      part,
      gantry(8.4, 3.8, { maxSpeedMmPerS, envelopeMm: { x: 1200, y: 1200, z: 700 } }),
      cfAbsPellets({ minLayerS }),
    );

  test("weighs 18.0624 kg in 158 layers", () => {
    const route = laid(80, 0.001);
    expect(Math.abs(route.massKgPerCopy / 18.0624 - 1)).toBeLessThan(1e-4);
    expect(route.layerGroups.reduce((sum, { count }) => sum + count, 0)).toBe(158);
  });

  test.each([
    ["at 80 mm/s", 80, 0.001, 39.27, 1.7235],
    ["capped at 8 kg/h", 61.069, 0.001, 51.443, 2.2578],
    ["capped at 8 kg/h with at least 54 s a layer", 61.069, 54, 54, 2.37],
  ])(
    "%s a layer takes its time within 0.5 %%, which starting and ending the bead add",
    (_, speed, least, layerS, hours) => {
      const route = laid(speed, least);
      const slowest = slowestLayerS({ route, copies: 1 });
      expect(slowest / layerS).toBeGreaterThan(1 - 1e-4);
      expect(slowest / layerS).toBeLessThan(1.005);
      expect(Math.abs(depositionMin({ route, copies: 1 }) / 60 / hours - 1)).toBeLessThan(0.005);
    },
  );
});
