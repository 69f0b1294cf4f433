/**
 * Temperature of a growing wall. Structure and inputs of the model: Compton, Post, Duty, Love and Kunc (2017), "Thermal
 * analysis of additive manufacturing of large-scale thermoplastic polymer composites", Additive Manufacturing 17:77-86, from
 * a published reproduction. The temperatures are this model's own regression values (computed once on a finer grid), so they
 * guard against change; fins, slabs and the no-loss wall check it against closed forms (Incropera and DeWitt; Carslaw and
 * Jaeger; from memory). The model always stands on a platform of fixed temperature and always loses heat at its top, so a
 * slab with a still foot (Bi 4.482, Fo 0.08456: 197.917 degC; the series alone is in textbook-conduction.test.ts) and one
 * layer without inner resistance (161.497 degC) cannot be run in it: the first is replaced by the slab on a held foot, the
 * second by the thin sheet.
 */
import { describe, expect, test } from "vitest";
import { radiativeWPerM2K, topLayerMeanC } from "../../core/estimate/layer-temperature.ts";
import type { GrowingWall } from "../../core/estimate/layer-temperature.ts";
import { layerWindow } from "../../core/estimate/layer-window.ts";
import { tabledWindow } from "../../core/estimate/window-table.ts";

const GRID = { layers: 8, cellsPerLayer: 8, stepsPerLayer: 120 };

const WALL: GrowingWall = {
  layerHeightMm: 3.8,
  wallWidthMm: 8.4,
  depositC: 200,
  platformC: 65,
  airC: 18,
  densityKgPerM3: 1140,
  specificHeatJPerKgK: 1640,
  conductivityWPerMK: 0.17,
  convectionWPerM2K: 7,
  emissivity: 0.85,
};
const NEEDS = { carryC: 150, bondC: 105 };

describe("mean of the top layer before the next one, regression values within 0.5 K", () => {
  test.each([
    [20, 4.064, 40, 172.8],
    [20, 4.064, 120, 130.5],
    [8.4, 3.8, 30, 170.5],
    [8.4, 3.8, 60, 145.0],
    [8.4, 3.8, 90, 124.0],
    [8.4, 3.8, 120, 107.1],
    [8.4, 3.8, 180, 82.7],
    [8.4, 3.8, 300, 55.3],
  ])("wall %f mm, layer %f mm, every %i s: %f degC", (wallWidthMm, layerHeightMm, layerS, expectedC) => {
    const meanC = topLayerMeanC({ ...WALL, wallWidthMm, layerHeightMm }, layerS, GRID);
    expect(Math.abs(meanC - expectedC)).toBeLessThan(0.5);
  });

  test("8 layers are enough: 40 layers differ by less than 1.5 %", () => {
    const many = topLayerMeanC(WALL, 120, { ...GRID, layers: 40 });
    expect(Math.abs(topLayerMeanC(WALL, 120, GRID) / many - 1)).toBeLessThan(0.015);
  });
});

describe("closed forms", () => {
  test("a wall that loses nothing stays as hot as it was laid", () => {
    const still = { ...WALL, convectionWPerM2K: 0, emissivity: 0, platformC: 200 };
    expect(topLayerMeanC(still, 100, GRID)).toBeCloseTo(200, 9);
  });

  test("one tall layer left for long is a fin with a convecting tip (Incropera and DeWitt, fin of case A, from memory)", () => {
    const fin = {
      ...WALL,
      layerHeightMm: 40,
      wallWidthMm: 20,
      convectionWPerM2K: 10,
      emissivity: 0,
      platformC: 80,
      airC: 20,
    };
    const meanC = topLayerMeanC(fin, 1e6, { layers: 1, cellsPerLayer: 200, stepsPerLayer: 200 });
    const m = Math.sqrt((2 * 10) / (0.17 * 0.02));
    const tip = 10 / (m * 0.17);
    const [sinh, cosh] = [Math.sinh(m * 0.04), Math.cosh(m * 0.04)];
    const meanShare = (sinh + tip * (cosh - 1)) / (m * 0.04 * (cosh + tip * sinh));
    expect(meanC).toBeCloseTo(20 + 60 * meanShare, 1);
  });

  test("a fin of 20 x 40 mm at 80 degC with a still tip is 25.571 degC at its tip (Incropera and DeWitt, case B, from memory)", () => {
    // A thousandth of width and convection keeps the fin's profile and takes the heat from its tip.
    const fin = {
      ...WALL,
      layerHeightMm: 0.1,
      wallWidthMm: 20 / 1000,
      convectionWPerM2K: 10 / 1000,
      emissivity: 0,
      platformC: 80,
      airC: 20,
    };
    const tipC = topLayerMeanC(fin, 1e9, { layers: 400, cellsPerLayer: 1, stepsPerLayer: 1 });
    const m = Math.sqrt((2 * 10) / (0.17 * 0.02));
    expect(tipC).toBeCloseTo(20 + 60 / Math.cosh(m * 0.04), 2);
    expect(Math.abs(tipC - 25.571)).toBeLessThan(0.01);
  });

  test.each([
    [4.482, 0.08456],
    [1, 0.5],
    [20, 0.2],
  ])(
    "a slab on a foot as cold as the air, its top at Bi %f, follows its series at Fo %f",
    (biot, fourier) => {
      const heightM = 0.03048;
      const slab = {
        ...WALL,
        layerHeightMm: heightM * 1000,
        wallWidthMm: Number.POSITIVE_INFINITY,
        convectionWPerM2K: (biot * 0.17) / heightM,
        emissivity: 0,
        platformC: 20,
        airC: 20,
      };
      const layerS = fourier * heightM ** 2 * ((1140 * 1640) / 0.17);
      const meanC = topLayerMeanC(slab, layerS, { layers: 1, cellsPerLayer: 200, stepsPerLayer: 4000 });
      expect(Math.abs(meanC - (20 + 180 * heldFootShare(biot, fourier)))).toBeLessThan(0.05);
    },
  );

  test("a thin tall sheet cools like a lumped body of time constant rho cp W / 2h", () => {
    const sheet = {
      ...WALL,
      layerHeightMm: 2000,
      wallWidthMm: 2,
      convectionWPerM2K: 18,
      emissivity: 0,
      airC: 20,
    };
    const tauS = (1140 * 1640 * 0.002) / (2 * 18);
    const meanC = topLayerMeanC(sheet, tauS, { layers: 1, cellsPerLayer: 400, stepsPerLayer: 2000 });
    expect(meanC).toBeCloseTo(20 + 180 / Math.E, 0);
  });
});

describe("radiation as a coefficient (law of Stefan and Boltzmann), emissivity 0.87 in 20 degC", () => {
  test.each([
    [200, 11.71],
    [105, 7.58],
  ])("at %i degC is %f W/(m2 K)", (surfaceC, coefficient) => {
    expect(Math.abs(radiativeWPerM2K(0.87, surfaceC + 273.15, 293.15) - coefficient)).toBeLessThan(0.005);
  });

  test("times the difference it is the difference of the fourth powers, and a mirror radiates nothing", () => {
    const watt = radiativeWPerM2K(1, 473.15, 293.15) * 180;
    expect(watt).toBeCloseTo(5.670374419e-8 * (473.15 ** 4 - 293.15 ** 4), 9);
    expect(radiativeWPerM2K(0, 473.15, 293.15)).toBe(0);
  });
});

describe("layer window of 20 % carbon fibre ABS, carries at 150 and bonds at 105 degC, within 2 %", () => {
  test.each([
    [2, 1, 10.4, 23.4],
    [4, 2, 24.2, 55.1],
    [8.4, 3.8, 53.7, 124.4],
    [15.9, 5.08, 87.0, 205.5],
    [20, 4.064, 79.1, 189.5],
    [Number.POSITIVE_INFINITY, 3.8, 113.2, 303.4],
  ])(
    "wall %f mm, layer %f mm: %f to %f s, directly and by the table",
    (wallWidthMm, layerHeightMm, shortest, longest) => {
      const { wallWidthMm: _, ...stuff } = { ...WALL, layerHeightMm };
      const windows = [
        layerWindow({ ...stuff, wallWidthMm }, NEEDS),
        tabledWindow(stuff, NEEDS, wallWidthMm),
      ];
      for (const { shortestS, longestS } of windows) {
        expect(Math.abs(shortestS / shortest - 1)).toBeLessThan(0.02);
        expect(Math.abs(longestS / longest - 1)).toBeLessThan(0.02);
      }
    },
  );

  test.each([
    [18, 124],
    [40, 145],
    [60, 177],
    [80, 241],
  ])("in air of %i degC one bead of 8.4 x 3.8 mm bonds within %i s", (airC, longest) => {
    expect(Math.abs(layerWindow({ ...WALL, airC }, NEEDS).longestS / longest - 1)).toBeLessThan(0.02);
  });

  test.each([
    [{ convectionWPerM2K: 5 }, 149],
    [{ convectionWPerM2K: 7 }, 133],
    [{ convectionWPerM2K: 10 }, 115],
    [{ convectionWPerM2K: 15 }, 94],
    [{ conductivityWPerMK: 0.25 }, 124],
    [{ conductivityWPerMK: 0.4 }, 113],
  ])("laid at 210 degC with %o it bonds within %i s (coarse values, within 3 %%)", (changed, longest) => {
    const longestS = layerWindow({ ...WALL, depositC: 210, ...changed }, NEEDS).longestS;
    expect(Math.abs(longestS / longest - 1)).toBeLessThan(0.03);
  });

  test("a large bead of 12.7 x 5.08 mm every 272 s (single-bead study, MIT 2.830 page) is near its glass transition", () => {
    const meanC = topLayerMeanC(
      { ...WALL, wallWidthMm: 12.7, layerHeightMm: 5.08, depositC: 277 },
      272,
      GRID,
    );
    expect(Math.abs(meanC - 102)).toBeLessThan(3);
  });
});

/**
 * Mean share of its heat that a slab keeps with its foot held cold and its top at Bi: zeta cot zeta = -Bi, one root in each
 * half turn from n pi + pi/2 (Carslaw and Jaeger, from memory).
 */
function heldFootShare(biot: number, fourier: number): number {
  let share = 0;
  for (let n = 0; n < 40; n++) {
    let low = (n + 0.5) * Math.PI;
    let high = (n + 1) * Math.PI;
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2;
      if (middle / Math.tan(middle) > -biot) low = middle;
      else high = middle;
    }
    const size = (2 * (1 - Math.cos(low)) ** 2) / (low * (low - Math.sin(low) * Math.cos(low)));
    share += size * Math.exp(-(low ** 2) * fourier);
  }
  return share;
}
