import { describe, expect, test } from "vitest";
import { layerKinds } from "../../../core/estimate/layer-kinds.ts";
import type { LayerKind } from "../../../core/estimate/layer-kinds.ts";
import type { Measures, Part } from "../../../core/shop/part.ts";
import { aPart } from "../../fixtures/a-route.ts";

const BOX: Measures = { volumeMm3: 48_000, areaMm2: 8800, boxMm: { x: 60, y: 40, z: 20 } };

function partOf(measures: Measures, overrides: Partial<Part> = {}): Part {
  return aPart({ geometry: { kind: "measures", measures }, ...overrides });
}

function volumeMm3(kinds: readonly LayerKind[], layerHeightMm: number): number {
  return kinds.reduce((sum, { count, cut }) => sum + count * cut.areaMm2 * layerHeightMm, 0);
}

function layersOfBox(layerHeightMm: number) {
  return layerKinds(partOf(BOX, { solidLayers: 0 }), "z", layerHeightMm)[0]?.count;
}

describe("without cuts the body is a prism", () => {
  test("a box has its own cross-section on every axis", () => {
    const [, onZ] = layerKinds(partOf(BOX), "z", 0.2);
    expect(onZ).toEqual({
      count: 92,
      solid: false,
      cut: { areaMm2: 2400, perimeterMm: 200, islands: 1, shrinkPerMm: 8 },
    });
    const [, onX] = layerKinds(partOf(BOX), "x", 0.2);
    expect(onX?.count).toBe(300 - 8);
    expect(onX?.cut).toEqual({ areaMm2: 800, perimeterMm: 120, islands: 1, shrinkPerMm: 8 });
  });

  test("a cylinder keeps area, outline and volume", () => {
    const r = 10;
    const cylinder = {
      volumeMm3: Math.PI * r * r * 30,
      areaMm2: 2 * Math.PI * r * (30 + r),
      boxMm: { x: 20, y: 20, z: 30 },
    };
    const kinds = layerKinds(partOf(cylinder, { solidLayers: 0 }), "z", 0.3);
    expect(kinds).toHaveLength(1);
    expect(kinds[0]?.cut.perimeterMm).toBeCloseTo(2 * Math.PI * r, 9);
    expect(kinds[0]?.cut.shrinkPerMm).toBe(2 * Math.PI);
    expect(volumeMm3(kinds, 0.3)).toBeCloseTo(cylinder.volumeMm3, 6);
  });

  test("the outline is never shorter than a circle's, whatever surface was typed", () => {
    const [kind] = layerKinds(partOf({ ...BOX, areaMm2: 1 }), "z", 0.2);
    expect(kind?.cut.perimeterMm).toBeCloseTo(2 * Math.sqrt(Math.PI * 2400), 9);
  });

  test("a height that is not a whole number of layers is rounded up, dust is not", () => {
    expect(layersOfBox(0.3)).toBe(67);
    expect(layersOfBox(0.1)).toBe(200);
    expect(layersOfBox(30)).toBe(1);
  });

  test("a part of fewer layers than its solid ones is solid throughout", () => {
    expect(
      layerKinds(partOf(BOX, { solidLayers: 60 }), "z", 0.2).map(({ count, solid }) => [count, solid]),
    ).toEqual([[100, true]]);
  });
});

test("the allowance grows a box on every side", () => {
  const finishing = { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 2 };
  const kinds = layerKinds(partOf(BOX, { finishing, solidLayers: 0 }), "z", 0.2);
  expect(kinds[0]?.count).toBe(120);
  expect(kinds[0]?.cut.areaMm2).toBeCloseTo(64 * 44, 9);
  expect(kinds[0]?.cut.perimeterMm).toBeCloseTo(2 * (64 + 44), 9);
});

describe("with cuts", () => {
  const step: Measures = {
    ...BOX,
    layers: [
      { zMm: 5, areaMm2: 2400, perimeterMm: 200, islands: 1 },
      { zMm: 15, areaMm2: 400, perimeterMm: 80, islands: 2 },
    ],
  };

  test("each layer takes the nearest cut", () => {
    const kinds = layerKinds(partOf(step, { solidLayers: 0 }), "z", 0.2);
    expect(kinds.map(({ count, cut }) => [count, cut.areaMm2, cut.islands])).toEqual([
      [50, 2400, 1],
      [50, 400, 2],
    ]);
  });

  test("solid layers are the first and last ones", () => {
    const kinds = layerKinds(partOf(step, { solidLayers: 3 }), "z", 0.2);
    expect(kinds.map(({ count, solid, cut }) => [count, solid, cut.areaMm2])).toEqual([
      [3, true, 2400],
      [47, false, 2400],
      [3, true, 400],
      [47, false, 400],
    ]);
  });

  test("they count along z only", () => {
    expect(layerKinds(partOf(step, { solidLayers: 0 }), "x", 0.2)).toHaveLength(1);
  });

  test("cuts that are all empty count as none", () => {
    const empty = { ...BOX, layers: [{ zMm: 1, areaMm2: 0, perimeterMm: 0, islands: 0 }] };
    expect(layerKinds(partOf(empty), "z", 0.2)).toEqual(layerKinds(partOf(BOX), "z", 0.2));
  });

  test("a cone of a thousand cuts becomes some dozens of kinds and keeps its volume", () => {
    const layers = Array.from({ length: 1000 }, (_, index) => {
      const zMm = (index + 0.5) * 0.1;
      const radius = 50 * (1 - zMm / 100);
      return { zMm, areaMm2: Math.PI * radius ** 2, perimeterMm: 2 * Math.PI * radius, islands: 1 };
    });
    const cone = {
      volumeMm3: (Math.PI * 2500 * 100) / 3,
      areaMm2: 25_000,
      boxMm: { x: 100, y: 100, z: 100 },
      layers,
    };
    const kinds = layerKinds(partOf(cone, { solidLayers: 0 }), "z", 0.1);
    expect(kinds.length).toBeGreaterThan(20);
    expect(kinds.length).toBeLessThan(400);
    expect(kinds.reduce((sum, { count }) => sum + count, 0)).toBe(1000);
    expect(volumeMm3(kinds, 0.1) / cone.volumeMm3).toBeCloseTo(1, 5);
  });
});
