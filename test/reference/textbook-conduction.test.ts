/**
 * Cooling of lumps and slabs after Incropera and DeWitt, "Fundamentals of Heat and Mass Transfer", chapter 5 (examples
 * recalled from memory, values recomputed). The formulas live in this file: the estimate uses the growing wall instead, and
 * these show why, and that its answer lies under the lumped bound.
 */
import { describe, expect, test } from "vitest";
import { topLayerMeanC } from "../../core/estimate/layer-temperature.ts";
import { layerWindow } from "../../core/estimate/layer-window.ts";

describe("slab with both faces cooled", () => {
  test.each([
    [0.1, 0.3111, 1.0161],
    [1, 0.8603, 1.1191],
    [10, 1.4289, 1.262],
  ])("Bi %f has first root %f and factor %f", (biot, root, factor) => {
    const zeta = slabRoot(biot, 0);
    expect(Math.abs(zeta - root)).toBeLessThan(1e-4);
    expect(Math.abs(slabFactor(zeta) - factor)).toBeLessThan(1e-4);
  });

  test.each([
    [1, 1, 0.53386, 0.34818],
    [0.5, 0.5, 0.86411, 0.68688],
  ])("Bi %f after Fo %f keeps %f at its centre and %f at its face", (biot, fourier, centre, face) => {
    expect(Math.abs(slabShare(biot, fourier, 0) - centre)).toBeLessThan(1e-5);
    expect(Math.abs(slabShare(biot, fourier, 1) - face)).toBeLessThan(1e-5);
  });

  test("Bi 0.05 after Fo 20 keeps 0.37704 where a lump keeps 0.36788", () => {
    expect(Math.abs(slabShare(0.05, 20, 0) - 0.37704)).toBeLessThan(1e-5);
    expect(Math.exp(-0.05 * 20)).toBeCloseTo(0.36788, 5);
  });

  test("a steel pipe wall of 40 mm in hot oil for 8 minutes is 43.0 degC inside and 45.3 degC at the oil", () => {
    const biot = (500 * 0.04) / 63.9;
    const fourier = ((63.9 / (7832 * 434)) * 480) / 0.04 ** 2;
    expect(biot).toBeCloseTo(0.313, 4);
    expect(fourier).toBeCloseTo(5.64, 2);
    expect(Math.abs(60 - 80 * slabShare(biot, fourier, 0) - 43.02)).toBeLessThan(0.3);
    expect(Math.abs(60 - 80 * slabShare(biot, fourier, 1) - 45.36)).toBeLessThan(0.3);
    const megajoulePerM = (7832 * 434 * Math.PI * 0.04 * 80 * (1 - slabMeanShare(biot, fourier))) / 1e6;
    expect(megajoulePerM).toBeCloseTo(27.25, 1);
  });

  test("Bi 4.482 after Fo 0.08456 leaves 197.917 of 200 degC at the still face in air of 20 degC", () => {
    expect(20 + 180 * slabShare(4.482, 0.08456, 0)).toBeCloseTo(197.917, 3);
  });
});

describe("lumped bodies", () => {
  test("a thermocouple bead with a time constant of 1 s is 0.7059 mm wide and needs 5.165 s", () => {
    expect((6 * 400 * 1) / (8500 * 400)).toBeCloseTo(7.059e-4, 6);
    expect(Math.log((200 - 25) / (200 - 199))).toBeCloseTo(5.165, 3);
  });

  test("a wall of 8.4 mm cools from 200 to 105 degC in 327.31 s by its two faces alone; the growing wall is far quicker", () => {
    const tauS = (1140 * 1640 * 0.0084) / (2 * 18);
    expect(tauS).toBeCloseTo(436.24, 2);
    const lumpedS = tauS * Math.log((200 - 20) / (105 - 20));
    expect(lumpedS).toBeCloseTo(327.31, 1);
    const wall = {
      layerHeightMm: 3.8,
      wallWidthMm: 8.4,
      depositC: 200,
      platformC: 65,
      airC: 20,
      densityKgPerM3: 1140,
      specificHeatJPerKgK: 1640,
      conductivityWPerMK: 0.17,
      convectionWPerM2K: 7,
      emissivity: 0.85,
    };
    expect(layerWindow(wall, { carryC: 150, bondC: 105 }).longestS).toBeLessThan(0.5 * lumpedS);
    const facesOnly = { ...wall, conductivityWPerMK: 1e-12, convectionWPerM2K: 18, emissivity: 0 };
    const meanC = topLayerMeanC(facesOnly, lumpedS, { layers: 1, cellsPerLayer: 1, stepsPerLayer: 4000 });
    expect(meanC).toBeCloseTo(105, 1);
  });
});

/** n-th root of zeta tan zeta = Bi, by halving within its branch. */
function slabRoot(biot: number, n: number): number {
  let low = n * Math.PI;
  let high = low + Math.PI / 2;
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (middle * Math.tan(middle) < biot) low = middle;
    else high = middle;
  }
  return low;
}

function slabFactor(zeta: number): number {
  return (4 * Math.sin(zeta)) / (2 * zeta + Math.sin(2 * zeta));
}

function slabMeanShare(biot: number, fourier: number): number {
  let share = 0;
  for (let n = 0; n < 20; n++) {
    const zeta = slabRoot(biot, n);
    share += (slabFactor(zeta) * Math.exp(-(zeta ** 2) * fourier) * Math.sin(zeta)) / zeta;
  }
  return share;
}

function slabShare(biot: number, fourier: number, place: number): number {
  let share = 0;
  for (let n = 0; n < 20; n++) {
    const zeta = slabRoot(biot, n);
    share += slabFactor(zeta) * Math.exp(-(zeta ** 2) * fourier) * Math.cos(zeta * place);
  }
  return share;
}
