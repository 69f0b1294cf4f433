/**
 * Bead, mass and flow identities. Exact arithmetic from the definitions A = w h and M = rho A v, common practice, no source;
 * the worked box and tube were computed by hand from the same definitions.
 */
import { describe, expect, test } from "vitest";
import {
  beadAreaMm2,
  freeBeadAreaMm2,
  massFlowKgPerH,
  massKg,
  speedMmPerS,
} from "../../core/estimate/bead.ts";
import { deposit } from "../../core/estimate/deposit.ts";
import type { Bead, Deposit } from "../../core/estimate/deposit.ts";
import { depositS } from "../../core/estimate/layer-work.ts";
import type { Part } from "../../core/shop/part.ts";
import { kgFromLb, lbFromKg, S_PER_H } from "../../core/units/conversions.ts";
import { aNozzle, aPart } from "../fixtures/a-route.ts";

describe("bead area", () => {
  test.each([
    [0.45, 0.2, 0.09, 0.0814159],
    [8.382, 3.81, 31.93542, 28.820248],
    [15.875, 5.08, 80.645, 75.1068967],
  ])("%f x %f mm is %f mm2 side by side and %f mm2 alone", (widthMm, heightMm, rectangle, rounded) => {
    expect(beadAreaMm2(widthMm, heightMm) / rectangle).toBeCloseTo(1, 6);
    expect(freeBeadAreaMm2(widthMm, heightMm) / rounded).toBeCloseTo(1, 6);
  });

  test("a free bead of 0.45 x 0.20 mm has 0.9046 of the rectangle", () => {
    expect(freeBeadAreaMm2(0.45, 0.2) / beadAreaMm2(0.45, 0.2)).toBeCloseTo(0.9046, 4);
  });

  test("a bead narrower than high is a programmer's mistake, as wide as high is a circle", () => {
    expect(() => freeBeadAreaMm2(0.19, 0.2)).toThrow(RangeError);
    expect(freeBeadAreaMm2(0.2, 0.2)).toBeCloseTo(Math.PI * 0.01, 12);
  });
});

test.each([
  [1.75, 2.40528],
  [2.85, 6.3794],
])(
  "filament of %f mm, a bead as wide as high, has %f mm2: its feed is the flow over that",
  (diameterMm, areaMm2) => {
    expect(freeBeadAreaMm2(diameterMm, diameterMm)).toBeCloseTo(areaMm2, 5);
  },
);

describe("mass flow", () => {
  test("0.45 x 0.20 mm at 60 mm/s and 1240 kg/m3 is 24.1056 g/h or 0.053144 lb/h", () => {
    const kgPerH = massFlowKgPerH(60 * beadAreaMm2(0.45, 0.2), 1240);
    expect(kgPerH / 0.0241056).toBeCloseTo(1, 6);
    expect(lbFromKg(kgPerH)).toBeCloseTo(0.053144, 6);
  });

  test("8.382 x 3.81 mm at 100 mm/s and 1140 kg/m3 is 13.1063 kg/h or 28.8944 lb/h", () => {
    const kgPerH = massFlowKgPerH(100 * beadAreaMm2(8.382, 3.81), 1140);
    expect(kgPerH).toBeCloseTo(13.1063, 4);
    expect(lbFromKg(kgPerH)).toBeCloseTo(28.8944, 4);
  });

  test.each([
    [10, 34.61],
    [40, 138.43],
    [100, 346.09],
  ])("the same bead takes %i lb/h at %f mm/s", (lbPerH, speed) => {
    const flowMm3PerS = kgFromLb(lbPerH) / 1140 / 1e-9 / S_PER_H;
    expect(speedMmPerS(flowMm3PerS, 8.382, 3.81)).toBeCloseTo(speed, 2);
  });
});

describe("worked box of 60 x 40 x 20 mm, bead 0.45 x 0.2, 2 walls, 20 % infill, 4 + 4 solid layers", () => {
  const box = boxDeposit();

  test("walls take 392.8 mm a layer, infill 988.107 mm sparse and 4940.533 mm solid", () => {
    const [solid, sparse] = box.layers;
    expect(sparse?.count).toBe(92);
    expect(solid?.count).toBe(8);
    expect(sparse?.path.wallMm).toBeCloseTo(392.8, 9);
    expect(sparse?.path.infillMm).toBeCloseTo(988.107, 3);
    expect(solid?.path.infillMm).toBeCloseTo(4940.533, 3);
  });

  test("its path is 169 710.08 mm, its volume 15 273.907 mm3 and its mass 18.9396 g", () => {
    expect(box.volumeMm3 / beadAreaMm2(0.45, 0.2)).toBeCloseTo(169_710.08, 2);
    expect(box.volumeMm3).toBeCloseTo(15_273.907, 3);
    expect(massKg(box.volumeMm3, 1240) * 1000).toBeCloseTo(18.9396, 4);
  });

  test("at a constant 60 mm/s it takes 2828.50 s", () => {
    const motion = { speedMmPerS: 60, accelerationMmPerS2: 1e12, cornerMmPerS: 60 };
    const seconds = box.layers.reduce((s, layer) => s + layer.count * depositS(layer.path, layer, motion), 0);
    expect(seconds).toBeCloseTo(2828.5, 2);
  });
});

describe("worked tube of 1000 mm centre-line diameter, 600 mm high, bead 8.4 x 3.8 mm", () => {
  const tube = tubeDeposit();

  test("it has 158 layers of 3141.593 mm and a mass of 18.0624 kg at 1140 kg/m3", () => {
    expect(tube.layerCount).toBe(158);
    expect(tube.layers[0]?.path.wallMm).toBeCloseTo(3141.593, 3);
    expect(massKg(tube.volumeMm3, 1140)).toBeCloseTo(18.0624, 3);
  });

  test.each([
    ["at 80 mm/s", 80, 0, 39.27, 1.7235],
    ["capped at 8 kg/h", 8 / 1140 / 1e-9 / S_PER_H / (8.4 * 3.8), 0, 51.443, 2.2578],
    ["capped at 8 kg/h with at least 54 s a layer", 8 / 1140 / 1e-9 / S_PER_H / (8.4 * 3.8), 54, 54, 2.37],
  ])("%s a layer takes its time", (_, speed, shortestS, layerS, hours) => {
    const seconds = Math.max(shortestS, (tube.layers[0]?.path.wallMm ?? 0) / speed);
    expect(seconds).toBeCloseTo(layerS, 2);
    expect((158 * seconds) / S_PER_H).toBeCloseTo(hours, 3);
  });

  test("80 mm/s is 2553.6 mm3/s or 10.480 kg/h", () => {
    expect(80 * beadAreaMm2(8.4, 3.8)).toBeCloseTo(2553.6, 6);
    expect(massFlowKgPerH(2553.6, 1140)).toBeCloseTo(10.48, 3);
  });
});

function boxDeposit(): Deposit {
  const measures = { volumeMm3: 48_000, areaMm2: 8800, boxMm: { x: 60, y: 40, z: 20 } };
  const part = aPart({
    geometry: { kind: "measures", measures },
    shells: 2,
    infillPct: 20,
    solidLayers: 4,
  });
  return depositOf(part, 60, 20, { beadWidthMm: 0.45, layerHeightMm: 0.2 });
}

function tubeDeposit(): Deposit {
  const areaMm2 = Math.PI * 1000 * 8.4;
  const measures = {
    volumeMm3: areaMm2 * 600,
    areaMm2: 2 * Math.PI * 1000 * 600 + 2 * areaMm2,
    boxMm: { x: 1008.4, y: 1008.4, z: 600 },
  };
  const part = aPart({ geometry: { kind: "measures", measures }, shells: 1, infillPct: 0, solidLayers: 0 });
  return depositOf(part, 1008.4, 600, { beadWidthMm: 8.4, layerHeightMm: 3.8 });
}

function depositOf(part: Part, acrossMm: number, heightMm: number, bead: Bead): Deposit {
  const footprintMm = { x: acrossMm, y: acrossMm };
  const standing = { up: "z", rotationDeg: 0, footprintMm, heightMm, copies: 1 };
  return deposit({ part, process: "filament", nozzle: aNozzle(), standing, bead });
}
