import { expect, test } from "vitest";
import { depositC, layerLimits } from "../../../core/estimate/layer-limits.ts";
import { aFeedstock, aMachine } from "../../fixtures/a-route.ts";

const PELLET_MACHINE = aMachine({ process: "pellet", chamberC: 18 });
const PELLETS = aFeedstock({
  form: "pellet",
  densityKgPerM3: 1140,
  specificHeatJPerKgK: 1640,
  conductivityWPerMK: 0.17,
  nozzleC: { min: 190, max: 210 },
  platformC: 65,
  bondC: 105,
  carryC: 150,
});

test("filament has the usual shortest layer of 10 s and no longest", () => {
  expect(layerLimits(aMachine(), aFeedstock(), 0.2, 1)).toEqual({
    shortestS: 10,
    longestS: Number.POSITIVE_INFINITY,
  });
});

test("pellets have the window of the growing wall", () => {
  const { shortestS, longestS } = layerLimits(PELLET_MACHINE, PELLETS, 3.8, 8.4);
  expect(Math.abs(shortestS / 53.7 - 1)).toBeLessThan(0.02);
  expect(Math.abs(longestS / 124.4 - 1)).toBeLessThan(0.02);
});

test("the shop's own limits overrule the computed ones, one by one", () => {
  const computed = layerLimits(PELLET_MACHINE, PELLETS, 3.8, 8.4);
  expect(layerLimits(PELLET_MACHINE, { ...PELLETS, minLayerS: 30 }, 3.8, 8.4)).toEqual({
    ...computed,
    shortestS: 30,
  });
  expect(layerLimits(PELLET_MACHINE, { ...PELLETS, maxLayerS: 300 }, 3.8, 8.4)).toEqual({
    ...computed,
    longestS: 300,
  });
  expect(layerLimits(aMachine(), aFeedstock({ minLayerS: 4, maxLayerS: 60 }), 0.2, 1)).toEqual({
    shortestS: 4,
    longestS: 60,
  });
});

test("feedstock is laid in the middle of its range, or as hot as the machine gets", () => {
  expect(depositC(aMachine(), PELLETS)).toBe(200);
  expect(depositC(aMachine({ maxNozzleC: 195 }), PELLETS)).toBe(195);
});

test("air as warm as the bonding temperature sets no longest layer; as warm as carrying, no layer ever cools", () => {
  const warm = layerLimits({ ...PELLET_MACHINE, chamberC: 105 }, PELLETS, 3.8, 8.4);
  expect(warm.longestS).toBe(Number.POSITIVE_INFINITY);
  expect(Number.isFinite(warm.shortestS)).toBe(true);
  expect(layerLimits({ ...PELLET_MACHINE, chamberC: 150 }, PELLETS, 3.8, 8.4).shortestS).toBe(
    Number.POSITIVE_INFINITY,
  );
});

test("feedstock laid colder than it must be to carry needs no time at all", () => {
  expect(layerLimits(PELLET_MACHINE, { ...PELLETS, carryC: 200 }, 3.8, 8.4).shortestS).toBe(0);
});
