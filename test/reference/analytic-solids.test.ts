/** Volume and surface of solids with a closed formula (geometry, no source needed), and of the prisms between them. */
import { describe, expect, test } from "vitest";
import { AXIS_DIRECTIONS } from "../../core/geometry/direction.ts";
import { layerProfile } from "../../core/geometry/layer-profile.ts";
import { measureBody } from "../../core/geometry/measure.ts";
import type { Mesh } from "../../core/geometry/mesh.ts";
import { ball, box, moved, prism, ring, torus, tube } from "../fixtures/bodies.ts";

/** The corner of a cube cut off: three edges of 10 mm at right angles. */
const cornerTetrahedron: Mesh = {
  cornersMm: Float64Array.from([0, 0, 0, 10, 0, 0, 0, 10, 0, 0, 0, 10]),
  triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]),
};

/** All edges 10 mm: every other corner of a cube. */
const regularTetrahedron = moved(
  {
    cornersMm: Float64Array.from([1, 1, 1, 1, -1, -1, -1, 1, -1, -1, -1, 1]),
    triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]),
  },
  (x, y, z) => [x * 10 * Math.SQRT1_2 / 2, (y * 10 * Math.SQRT1_2) / 2, (z * 10 * Math.SQRT1_2) / 2], // biome-ignore format: one line
);

const prismVolumeMm3 = (sides: number): number => (sides / 2) * 100 * Math.sin((2 * Math.PI) / sides) * 20;

describe("volume and surface", () => {
  test.each<[string, Mesh, number, number]>([
    ["a box 2 x 3 x 4", box(2, 3, 4), 24, 52],
    ["a box 10 x 20 x 30", box(10, 20, 30), 6000, 2200],
    ["a cube's corner of 10", cornerTetrahedron, 1000 / 6, 150 + (Math.sqrt(3) / 2) * 100],
    ["a regular tetrahedron of 10", regularTetrahedron, 1000 / (6 * Math.SQRT2), 100 * Math.sqrt(3)],
    [
      "a 64-gon prism r 10 h 20",
      prism(ring(64, 10), 20),
      prismVolumeMm3(64),
      2 * (prismVolumeMm3(64) / 20) + 64 * 20 * 20 * Math.sin(Math.PI / 64),
    ],
    [
      "a 22-gon prism r 10 h 20",
      prism(ring(22, 10), 20),
      prismVolumeMm3(22),
      2 * (prismVolumeMm3(22) / 20) + 22 * 20 * 20 * Math.sin(Math.PI / 22),
    ],
    ["a square tube 20 / 10 x 30", tube(4, 10 * Math.SQRT2, 5 * Math.SQRT2, 30), 9000, 600 + 3600],
  ])("of %s are exact", (_, mesh, volumeMm3, areaMm2) => {
    const measures = measureBody(mesh);
    expect(measures.closed).toBe(true);
    expect(measures.volumeMm3 / volumeMm3).toBeCloseTo(1, 12);
    expect(measures.areaMm2 / areaMm2).toBeCloseTo(1, 12);
  });

  test.each<[string, Mesh, number, number]>([
    ["a ball r 10 (Archimedes)", ball(256, 10), (4000 * Math.PI) / 3, 400 * Math.PI],
    ["a cylinder r 10 h 20", prism(ring(512, 10), 20), 2000 * Math.PI, 600 * Math.PI],
    ["a torus R 30 r 10 (Pappus)", torus(60_000, 30, 10), 6000 * Math.PI ** 2, 1200 * Math.PI ** 2],
  ])("of %s are approached from below by its mesh", (_, mesh, volumeMm3, areaMm2) => {
    const { volumeMm3: volume, areaMm2: area } = measureBody(mesh);
    expect(volume).toBeLessThan(volumeMm3);
    expect(volume / volumeMm3).toBeGreaterThan(0.999);
    expect(area).toBeLessThan(areaMm2);
    expect(area / areaMm2).toBeGreaterThan(0.999);
  });

  test("of prisms with 64 and 22 sides are 6273.097 and 6198.116 mm3", () => {
    expect(measureBody(prism(ring(64, 10), 20)).volumeMm3).toBeCloseTo(6273.097, 3);
    expect(measureBody(prism(ring(22, 10), 20)).volumeMm3).toBeCloseTo(6198.116, 3);
  });
});

describe("centroid", () => {
  test("of a tetrahedron is the mean of its corners", () => {
    const { centroidMm } = measureBody(cornerTetrahedron);
    for (const value of Object.values(centroidMm)) expect(value).toBeCloseTo(2.5, 12);
  });

  test("of an L of two equal squares is between their middles", () => {
    const bent = prism([[10, 10], [10, 20], [0, 20], [0, 0], [10, 0]], 10); // biome-ignore format: one line
    expect(measureBody(bent).centroidMm).toEqual({ x: 5, y: 10, z: 5 });
  });
});

describe("the cut of a ball at every height", () => {
  const radiusMm = 10;
  const profile = layerProfile(ball(256, radiusMm), AXIS_DIRECTIONS.z, 0.5);

  test("is a circle of radius sqrt(r2 - z2): area, outline and thinnest region", () => {
    for (const [layer, zMm] of profile.zMm.entries()) {
      const cutRadiusMm = Math.sqrt(radiusMm ** 2 - (zMm - radiusMm) ** 2);
      expect(profile.areaMm2[layer]! / (Math.PI * cutRadiusMm ** 2)).toBeCloseTo(1, 2);
      expect(profile.perimeterMm[layer]! / (2 * Math.PI * cutRadiusMm)).toBeCloseTo(1, 2);
      expect(profile.thinnestMm[layer]! / (2 * cutRadiusMm)).toBeCloseTo(1, 2);
    }
  });
});

describe("the cut of a torus", () => {
  const profile = layerProfile(torus(60_000, 30, 10), AXIS_DIRECTIONS.z, 1);

  test("along its axis is a ring whose wall is the chord 2 sqrt(r2 - z2)", () => {
    for (const [layer, zMm] of profile.zMm.entries()) {
      const wallMm = 2 * Math.sqrt(100 - (zMm - 10) ** 2);
      expect(profile.areaMm2[layer]! / (2 * Math.PI * 30 * wallMm)).toBeCloseTo(1, 2);
      expect(profile.thinnestMm[layer]! / wallMm).toBeCloseTo(1, 1);
      expect(profile.islands[layer]).toBe(1);
    }
  });

  test("across its axis is two islands while the hole is met", () => {
    const across = layerProfile(torus(60_000, 30, 10), AXIS_DIRECTIONS.x, 1);
    for (const [layer, zMm] of across.zMm.entries()) {
      expect(across.islands[layer], `at ${zMm}`).toBe(Math.abs(zMm - 40) < 20 ? 2 : 1);
    }
  });
});

test("the worked box 60 x 40 x 20 in layers of 0.2 mm has 100 layers of 2400 mm2 and 200 mm", () => {
  const profile = layerProfile(box(60, 40, 20), AXIS_DIRECTIONS.z, 0.2);
  expect(profile.zMm).toHaveLength(100);
  for (const area of profile.areaMm2) expect(area).toBeCloseTo(2400, 9);
  for (const perimeter of profile.perimeterMm) expect(perimeter).toBeCloseTo(200, 9);
});

test("the worked tube, 1000 mm across its middle line, 8.4 mm wall, 600 mm high, in layers of 3.8 mm: 158 layers of 8.4 mm", () => {
  const profile = layerProfile(tube(720, 504.2, 495.8, 600), AXIS_DIRECTIONS.z, 3.8);
  expect(profile.zMm).toHaveLength(158);
  for (const thinnest of profile.thinnestMm) expect(thinnest).toBeCloseTo(8.4, 1);
  for (const area of profile.areaMm2) expect(area / (Math.PI * 1000 * 8.4)).toBeCloseTo(1, 4);
});
