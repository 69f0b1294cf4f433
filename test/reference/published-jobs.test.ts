/**
 * Large prints that were reported, estimated from a body. Sources: the trim tool, 1650 lb of about 20 % carbon fibre ABS in
 * 30 h, 17.5 x 5.5 x 1.5 ft (Oak Ridge National Laboratory, 2016, reported alike by six outlets); the replica sports car,
 * 500 lb in 24 h (Oak Ridge, 2015, CompositesWorld and two more, one of which says 205 kg). Bead, speed and machine were not
 * published: the bead of 8.382 x 3.81 mm is a usual one of that class, the speed is the mean that mass and time imply with it.
 * So these do not prove the estimate right; they show that path, ramps, corners and changes of layer of a body of that size
 * come to the published time within the band of 10 % in which estimates are quoted. Published error of such an estimator on
 * three desktop machines: under 8.5 % (Medina-Sanchez and others, 2019, Materials 12(23) 3982, abstract).
 */
import { describe, expect, test } from "vitest";
import { massFlowKgPerH } from "../../core/estimate/bead.ts";
import { findRoutes } from "../../core/estimate/find-routes.ts";
import { measuresOfBody } from "../../core/estimate/part-measures.ts";
import { depositionMin } from "../../core/estimate/print-time.ts";
import type { Route } from "../../core/estimate/route.ts";
import type { Feedstock } from "../../core/shop/feedstock.ts";
import { kgFromLb, mmFromIn } from "../../core/units/conversions.ts";
import { aFeedstock, aMachine, aNozzle } from "../fixtures/a-route.ts";
import { box } from "../fixtures/bodies.ts";
import { firstRoute } from "../fixtures/first-route.ts";
import { cfAbsPellets, fromMesh, gantry } from "../fixtures/large-format.ts";

const BAND = 0.1;
const BEAD = [8.382, 3.81] as const;

/** Layers of a quarter of an hour are far beyond what bonds in open air, so that limit is set aside as those works did. */
const PELLETS = cfAbsPellets({ minLayerS: 1, maxLayerS: 36_000 });

/** A body of a box's size that is filled until it has a mass, with two walls around it. */
function filledTo(massKg: number, sidesMm: readonly [number, number, number], maxSpeedMmPerS: number): Route {
  const [x, y, z] = sidesMm;
  const measures = measuresOfBody(box(x, y, z));
  const machine = gantry(...BEAD, { maxSpeedMmPerS, layerChangeS: 10 });
  const laid = (infillPct: number): Route =>
    firstRoute(
      findRoutes(
        fromMesh(measures, {
          smallestFeatureMm: 8.4,
          maxLayerHeightMm: 4,
          shells: 2,
          solidLayers: 0,
          infillPct,
        }),
        machine,
        [PELLETS],
      ),
    );
  const [empty, full] = [laid(0).massKgPerCopy, laid(100).massKgPerCopy];
  return laid((100 * (massKg - empty)) / (full - empty));
}

describe("the trim tool of 2016", () => {
  const sidesMm = [mmFromIn(17.5 * 12), mmFromIn(5.5 * 12), mmFromIn(1.5 * 12)] as const;
  const route = filledTo(kgFromLb(1650), sidesMm, 190);

  test("takes 30 h within the band when laid at the mean speed of 190 mm/s, in 120 layers of about 15 min", () => {
    expect(route.massKgPerCopy).toBeCloseTo(748.4, 0);
    const hours = depositionMin({ route, copies: 1 }) / 60;
    expect(Math.abs(hours / 30 - 1)).toBeLessThan(BAND);
    const layers = route.layerGroups.reduce((sum, { count }) => sum + count, 0);
    expect(layers).toBe(120);
    expect(Math.abs((hours * 60) / layers / 15 - 1)).toBeLessThan(BAND);
  });

  test("takes no less than 16.5 h at the 100 lb/h that the machine's makers named as its most", () => {
    const fastest = filledTo(kgFromLb(1650), sidesMm, 346.09);
    expect(massFlowKgPerH(fastest.flowCm3PerH / 3.6, 1140)).toBeCloseTo(kgFromLb(100), 1);
    const hours = depositionMin({ route: fastest, copies: 1 }) / 60;
    expect(hours).toBeGreaterThan(16.5);
    expect(hours).toBeLessThan(30);
  });

  test("is refused in open air by the temperature model unless the works set its own longest layer", () => {
    const part = fromMesh(measuresOfBody(box(...sidesMm)), {
      smallestFeatureMm: 8.4,
      maxLayerHeightMm: 4,
      shells: 2,
      solidLayers: 0,
      infillPct: 15,
    });
    const [answer] = findRoutes(part, gantry(...BEAD, { maxSpeedMmPerS: 190 }), [cfAbsPellets()]);
    expect(answer?.status === "refused" && answer.reasons.map(({ code }) => code)).toEqual([
      "layer-too-slow",
    ]);
  });
});

test("the replica sports car of 2015, 227 kg, takes 24 h within the band at the mean speed of 72 mm/s", () => {
  const route = filledTo(227, [3900, 1550, 1000], 72);
  expect(route.massKgPerCopy).toBeCloseTo(227, 0);
  expect(Math.abs(depositionMin({ route, copies: 1 }) / 60 / 24 - 1)).toBeLessThan(BAND);
});

/**
 * Woern and others (2018), Materials 11(8) 1413: a small granulate printer is 6.5 to 13 times as fast as filament printers. The
 * bores are ours: 1.75 mm for granulate, as that machine had (from memory), against the usual 0.4 and 0.5 mm of desktop printers.
 */
describe("a small granulate printer against filament printers", () => {
  const part = fromMesh(measuresOfBody(box(80, 80, 80)), {
    smallestFeatureMm: 3,
    maxLayerHeightMm: 1,
    shells: 2,
    solidLayers: 2,
    infillPct: 20,
  });
  const hours = (boreMm: number, flowCm3PerH: number, feedstock: Feedstock): number => {
    const nozzle = aNozzle({
      diameterMm: boreMm,
      beadWidthMm: { min: 1.15 * boreMm, max: 1.15 * boreMm },
      layerHeightMm: { min: 0.5 * boreMm, max: 0.5 * boreMm },
      flowCm3PerH,
    });
    const machine = aMachine({
      process: feedstock.form,
      nozzles: [nozzle],
      maxSpeedMmPerS: 60,
      accelerationMmPerS2: 1000,
      chamberC: 25,
    });
    const route = firstRoute(findRoutes(part, machine, [feedstock]));
    return depositionMin({ route, copies: 1 }) / 60;
  };

  test("of 1.75 mm against 0.4 and 0.5 mm: between 6.5 and 13 times as fast, within the band at either end", () => {
    const granulate = hours(1.75, 600, cfAbsPellets({ minLayerS: 1, maxLayerS: 3600 }));
    for (const boreMm of [0.4, 0.5]) {
      const ratio = hours(boreMm, 40, aFeedstock()) / granulate;
      expect(ratio).toBeGreaterThan(6.5 * (1 - BAND));
      expect(ratio).toBeLessThan(13 * (1 + BAND));
    }
  });
});
