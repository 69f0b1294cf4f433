import { describe, expect, test } from "vitest";
import { AXIS_DIRECTIONS, type Direction } from "../../core/geometry/direction.ts";
import { turn } from "../../core/geometry/flat-point.ts";
import { layerProfile } from "../../core/geometry/layer-profile.ts";
import { measureBody } from "../../core/geometry/measure.ts";
import type { Mesh } from "../../core/geometry/mesh.ts";
import { footprintHull, heightMm, overhang } from "../../core/geometry/standing.ts";
import { fitsRotated } from "../../core/geometry/turned-box.ts";
import { seededRandom } from "../../core/units/random.ts";
import type { Random } from "../../core/units/random.ts";
import { insideOut, moved, prism, ring, together, torus, tube } from "../fixtures/bodies.ts";

/** Laws that any body obeys, on seeded random ones: columns, tubes and rings, stretched and turned. */

const { z } = AXIS_DIRECTIONS;
const down = AXIS_DIRECTIONS["-z"];
const random = seededRandom(3);
const bodies = Array.from({ length: 16 }, (_, at) => ({ name: `body ${at}`, mesh: randomBody(random) }));

function randomBody(draw: Random): Mesh {
  const between = (low: number, high: number): number => low + draw() * (high - low);
  const sides = 3 + Math.floor(draw() * 30);
  const kinds = [
    () => prism(ring(sides, between(3, 20)), between(2, 40)),
    () => tube(sides + 3, between(12, 20), between(2, 5), between(2, 40)),
    () => torus(200 + Math.floor(draw() * 2000), between(12, 20), between(2, 8)),
  ];
  const shape = kinds[Math.floor(draw() * kinds.length)]!();
  const [wide, deep, high] = [between(0.5, 2), between(0.5, 2), between(0.5, 2)];
  return turned(moved(shape, (a, b, c) => [a * wide, b * deep, c * high]), draw); // biome-ignore format: one line
}

/** The body turned any way, by a random unit quaternion (Shoemake 1992, from memory). */
function turned(mesh: Mesh, draw: Random): Mesh {
  const [share, first, second] = [draw(), 2 * Math.PI * draw(), 2 * Math.PI * draw()];
  const [qx, qy] = [Math.sqrt(1 - share) * Math.sin(first), Math.sqrt(1 - share) * Math.cos(first)];
  const [qz, qw] = [Math.sqrt(share) * Math.sin(second), Math.sqrt(share) * Math.cos(second)];
  return moved(mesh, (a, b, c) => [
    a * (1 - 2 * (qy * qy + qz * qz)) + b * 2 * (qx * qy - qz * qw) + c * 2 * (qx * qz + qy * qw),
    a * 2 * (qx * qy + qz * qw) + b * (1 - 2 * (qx * qx + qz * qz)) + c * 2 * (qy * qz - qx * qw),
    a * 2 * (qx * qz - qy * qw) + b * 2 * (qy * qz + qx * qw) + c * (1 - 2 * (qx * qx + qy * qy)),
  ]);
}

function randomDirection(draw: Random): Direction {
  const height = 2 * draw() - 1;
  const angle = 2 * Math.PI * draw();
  const across = Math.sqrt(1 - height * height);
  return { x: across * Math.cos(angle), y: across * Math.sin(angle), z: height };
}

const near = (value: number, expected: number, tolerance: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(expected)));

describe.each(bodies)("$name", ({ mesh }) => {
  const measures = measureBody(mesh);

  test("is closed in one piece", () => {
    expect(measures).toMatchObject({ closed: true, shells: 1, inverted: false, crowdedEdges: 0 });
    expect(measures.volumeMm3).toBeGreaterThan(0);
  });

  test("keeps volume and surface when turned and moved; its centroid goes with it", () => {
    const elsewhere = measureBody(moved(turned(mesh, random), (a, b, c) => [a + 300, b - 200, c + 100]));
    near(elsewhere.volumeMm3, measures.volumeMm3, 1e-10);
    near(elsewhere.areaMm2, measures.areaMm2, 1e-10);
    const pushed = measureBody(moved(mesh, (a, b, c) => [a + 300, b - 200, c + 100]));
    near(pushed.centroidMm.x, measures.centroidMm.x + 300, 1e-9);
    near(pushed.centroidMm.z, measures.centroidMm.z + 100, 1e-9);
  });

  test("has eight times the volume at twice the size", () => {
    const double = measureBody(moved(mesh, (a, b, c) => [2 * a, 2 * b, 2 * c]));
    near(double.volumeMm3, 8 * measures.volumeMm3, 1e-10);
    near(double.areaMm2, 4 * measures.areaMm2, 1e-10);
  });

  test("mirrored is inside out with the same volume, and inside out again is right", () => {
    const mirrored = moved(mesh, (a, b, c) => [-a, b, c]);
    expect(measureBody(mirrored).inverted).toBe(true);
    near(measureBody(mirrored).volumeMm3, measures.volumeMm3, 1e-10);
    expect(measureBody(insideOut(mirrored)).inverted).toBe(false);
  });

  test("beside another has the sum of both volumes, and one more piece", () => {
    const both = measureBody(
      together(
        mesh,
        moved(mesh, (a, b, c) => [a + 1000, b, c]),
      ),
    );
    near(both.volumeMm3, 2 * measures.volumeMm3, 1e-9);
    expect(both).toMatchObject({ shells: 2, cavities: 0, strayShells: 0 });
  });

  test("has its centroid in its box", () => {
    const { min, max } = measures.boxMm;
    for (const axis of ["x", "y", "z"] as const) {
      expect(measures.centroidMm[axis]).toBeGreaterThan(min[axis]);
      expect(measures.centroidMm[axis]).toBeLessThan(max[axis]);
    }
  });

  test("is made of its layers in any direction: their areas times their height add up to the volume", () => {
    for (const up of [z, randomDirection(random)]) {
      const layers = 100;
      const stepMm = heightMm(mesh, up) / layers;
      const profile = layerProfile(mesh, up, stepMm);
      near(profile.areaMm2.reduce((sum, area) => sum + area * stepMm, 0), measures.volumeMm3, 0.01); // biome-ignore format: one line
      expect(profile.layersWithGaps).toBe(0);
    }
  });

  test("has the same layers from the top as from below, in the other order", () => {
    const stepMm = heightMm(mesh, z) / 37;
    const up = layerProfile(mesh, z, stepMm);
    const under = layerProfile(mesh, down, stepMm);
    for (const [layer, areaMm2] of up.areaMm2.entries()) {
      const other = 36 - layer;
      near(under.areaMm2[other]!, areaMm2, 1e-9);
      near(under.perimeterMm[other]!, up.perimeterMm[layer]!, 1e-9);
      expect(under.islands[other]).toBe(up.islands[layer]);
      expect(under.corners[other]).toBe(up.corners[layer]);
      near(under.thinnestMm[other]!, up.thinnestMm[layer]!, 0.25); // looked at from other points
    }
  });

  test("has the same layers turned inside out", () => {
    const stepMm = heightMm(mesh, z) / 20;
    const [right, wrong] = [layerProfile(mesh, z, stepMm), layerProfile(insideOut(mesh), z, stepMm)];
    for (const [layer, areaMm2] of right.areaMm2.entries()) {
      near(wrong.areaMm2[layer]!, areaMm2, 1e-9);
      expect(wrong.islands[layer]).toBe(right.islands[layer]);
    }
  });

  test("has no cut with less outline than a circle of that area (isoperimetric inequality)", () => {
    const profile = layerProfile(mesh, randomDirection(random), heightMm(mesh, z) / 20);
    for (const [layer, areaMm2] of profile.areaMm2.entries()) {
      expect(profile.perimeterMm[layer]! ** 2).toBeGreaterThanOrEqual(4 * Math.PI * areaMm2 * (1 - 1e-9));
    }
  });

  test("has no thinnest region wider than its cut's box or thinner than nothing", () => {
    const profile = layerProfile(mesh, z, heightMm(mesh, z) / 20);
    const { min, max } = measures.boxMm;
    for (const thinnest of profile.thinnestMm) {
      expect(thinnest).toBeGreaterThan(0);
      expect(thinnest).toBeLessThanOrEqual(Math.hypot(max.x - min.x, max.y - min.y));
    }
  });

  test("hangs over less the flatter the limit, and never by more than its surface", () => {
    const areas = [0, 30, 45, 60, 89].map((limit) => overhang(mesh, z, limit).areaMm2);
    expect(areas.toSorted((a, b) => b - a)).toEqual(areas);
    expect(areas[0]).toBeLessThan(measures.areaMm2);
  });

  test("with all that faces down supported: space below and above it and its volume fill its shadow's column (Gauss)", () => {
    // Each vertical line that meets material n times is counted n times, below it, in it and above it.
    const [below, above] = [overhang(mesh, z, 0, -1), overhang(mesh, down, 0, -1)];
    const shadowMm2 = projectedMm2(mesh);
    const filledMm3 = below.supportVolumeMm3 + above.supportVolumeMm3 + measures.volumeMm3;
    near(filledMm3, shadowMm2 * heightMm(mesh, z), 1e-3);
  });

  test("mirrored top to bottom hangs over as it did upside down", () => {
    const mirrored = insideOut(moved(mesh, (a, b, c) => [a, b, -c]));
    near(overhang(mirrored, z).areaMm2, overhang(mesh, down).areaMm2, 1e-9);
    near(overhang(mirrored, z).supportVolumeMm3, overhang(mesh, down).supportVolumeMm3, 1e-9);
  });

  test("has a footprint that does not depend on which end is up", () => {
    near(areaOf(footprintHull(mesh, z, 10_000)), areaOf(footprintHull(mesh, down, 10_000)), 1e-9);
    expect(footprintHull(mesh, z).length).toBeLessThanOrEqual(24);
  });

  test("has a footprint in few corners that encloses every corner of the body", () => {
    const hull = footprintHull(mesh, z, 6);
    expect(hull.length).toBeLessThanOrEqual(6);
    let least = Infinity;
    for (let at = 0; at < mesh.cornersMm.length; at += 3) {
      for (const [side, from] of hull.entries()) {
        const corner = { x: mesh.cornersMm[at]!, y: mesh.cornersMm[at + 1]! };
        least = Math.min(least, turn(from, hull[(side + 1) % hull.length]!, corner));
      }
    }
    expect(least).toBeGreaterThan(-1e-6);
  });

  test("fits its own smallest turned box, and a platform a little smaller no way along a side", () => {
    const hull = footprintHull(mesh, z);
    const smallest = fitsRotated(hull, Infinity, Infinity)!;
    expect(fitsRotated(hull, smallest.xMm, smallest.yMm)).not.toBeNull();
    expect(smallest.xMm * smallest.yMm).toBeGreaterThanOrEqual(areaOf(hull) * (1 - 1e-9));
    const side = 0.999 * Math.min(smallest.xMm, smallest.yMm, ...narrowest(hull));
    expect(fitsRotated(hull, side, 1e6)).toBeNull();
  });
});

/** Area of all that faces down, seen from below; what hides behind more of it counts as well. */
function projectedMm2({ cornersMm, triangles }: Mesh): number {
  let sum = 0;
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [0, 1, 2].map((step) => {
      const corner = 3 * triangles[at + step]!;
      return { x: cornersMm[corner]!, y: cornersMm[corner + 1]! };
    });
    sum += Math.max(0, -turn(a!, b!, c!) / 2);
  }
  return sum;
}

/** Widths of a hull at every half degree. */
function narrowest(hull: readonly { x: number; y: number }[]): number[] {
  return Array.from({ length: 360 }, (_, half) => {
    const angle = (half * Math.PI) / 360;
    const reach = hull.map((point) => Math.cos(angle) * point.x + Math.sin(angle) * point.y);
    return Math.max(...reach) - Math.min(...reach);
  });
}

function areaOf(hull: readonly { x: number; y: number }[]): number {
  return hull.reduce((sum, { x, y }, at) => {
    const next = hull[(at + 1) % hull.length]!;
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
}
