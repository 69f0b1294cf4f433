import { expect, test } from "vitest";
import { circleMm, layerPath } from "../../../core/estimate/layer-path.ts";

const SQUARE = { areaMm2: 100, perimeterMm: 40, islands: 1, shrinkPerMm: 8 };

test("walls of a square lie half a bead, one and a half beads ... inside", () => {
  const one = layerPath(SQUARE, { beadWidthMm: 1, walls: 1, density: 0 });
  expect(one).toEqual({ wallMm: 36, walls: 1, infillMm: 0, infillLineMm: 0 });
  expect(layerPath(SQUARE, { beadWidthMm: 1, walls: 3, density: 0 }).wallMm).toBe(36 + 28 + 20);
});

test("infill fills what the walls leave: 8 x 8 mm at half density with beads of 1 mm is 32 mm", () => {
  const path = layerPath(SQUARE, { beadWidthMm: 1, walls: 1, density: 0.5 });
  expect(path.infillMm).toBe(32);
  expect(path.infillLineMm).toBeCloseTo((Math.PI * 64) / 32, 12);
});

test("walls stop when there is no room for more, and never take more than the area", () => {
  const path = layerPath(SQUARE, { beadWidthMm: 1, walls: 50, density: 1 });
  expect(path.walls).toBe(5);
  expect(path.wallMm).toBe(100);
  expect(path.infillMm).toBe(0);
});

test("a wall as thick as one bead, counted by both its faces, is one bead and not two", () => {
  const ring = { areaMm2: 1000 * 8, perimeterMm: 2000, islands: 1, shrinkPerMm: 2 * Math.PI };
  expect(layerPath(ring, { beadWidthMm: 8, walls: 1, density: 0 }).wallMm).toBe(1000);
});

test("an empty cut has no path", () => {
  const empty = { areaMm2: 0, perimeterMm: 0, islands: 1, shrinkPerMm: 8 };
  expect(layerPath(empty, { beadWidthMm: 1, walls: 2, density: 1 })).toEqual({
    wallMm: 0,
    walls: 0,
    infillMm: 0,
    infillLineMm: 0,
  });
});

test("many islands shrink faster: each outline loses its own corners", () => {
  const twice = { areaMm2: 200, perimeterMm: 80, islands: 2, shrinkPerMm: 8 };
  expect(layerPath(twice, { beadWidthMm: 1, walls: 2, density: 0 }).wallMm).toBe(2 * (36 + 28));
});

test("a circle has the shortest outline: 62.83 mm around 314.16 mm2", () => {
  expect(circleMm(100 * Math.PI)).toBeCloseTo(20 * Math.PI, 12);
});
