/**
 * Volume, surface, cuts and footprints against an independent geometry library: manifold-3d 3.5 (Apache-2.0; guaranteed
 * manifold booleans), on named solids and on seeded random ones. Its meshes come in 32-bit floats, so agreement is to 1e-5.
 */
import Module from "manifold-3d";
import type { Manifold, ManifoldToplevel } from "manifold-3d";
import { beforeAll, describe, expect, test } from "vitest";
import { AXIS_DIRECTIONS } from "../../core/geometry/direction.ts";
import { layerProfile } from "../../core/geometry/layer-profile.ts";
import { measureBody } from "../../core/geometry/measure.ts";
import type { Mesh } from "../../core/geometry/mesh.ts";
import { footprintHull } from "../../core/geometry/standing.ts";
import { seededRandom } from "../../core/units/random.ts";

let wasm: ManifoldToplevel;

beforeAll(async () => {
  wasm = await Module();
  wasm.setup();
});

type Make = (kit: ManifoldToplevel) => Manifold;

const SOLIDS: readonly [string, Make][] = [
  ["cube", ({ Manifold }) => Manifold.cube([30, 20, 10])],
  ["tetrahedron", ({ Manifold }) => Manifold.tetrahedron().scale(17)],
  ["cylinder", ({ Manifold }) => Manifold.cylinder(25, 8, 8, 90)],
  ["cone", ({ Manifold }) => Manifold.cylinder(25, 12, 0, 64)],
  ["frustum", ({ Manifold }) => Manifold.cylinder(25, 12, 5, 48)],
  ["sphere", ({ Manifold }) => Manifold.sphere(15, 96)],
  ["ellipsoid", ({ Manifold }) => Manifold.sphere(10, 64).scale([1, 2, 0.7])],
  ["hollow sphere", ({ Manifold }) => Manifold.sphere(15, 64).subtract(Manifold.sphere(12, 64))],
  ["pipe", ({ Manifold }) => Manifold.cylinder(30, 10, 10, 72).subtract(Manifold.cylinder(30, 8, 8, 72))],
  ["drilled block", ({ Manifold }) => drilled(Manifold.cube([40, 30, 20]), Manifold.cylinder(20, 3, 3, 40))],
  ["cross-drilled ball", ({ Manifold }) => crossDrilled(Manifold.sphere(15, 80), Manifold.cylinder(40, 5, 5, 48, true))],
  ["angle", ({ Manifold }) => Manifold.cube([40, 30, 4]).add(Manifold.cube([4, 30, 35]))],
  ["slab on a post", ({ Manifold }) => Manifold.cube([10, 10, 10], true).add(Manifold.cube([30, 10, 5], true).translate([0, 0, 7.5]))],
  ["tray with two walls", ({ Manifold }) => Manifold.cube([60, 40, 15]).subtract(Manifold.cube([26, 36, 15]).translate([2, 2, 2])).subtract(Manifold.cube([28, 36, 15]).translate([30, 2, 2]))],
  ["star column", ({ CrossSection }) => CrossSection.ofPolygons([starOutline()]).extrude(20)],
  ["twisted square", ({ CrossSection }) => CrossSection.square([12, 12], true).extrude(30, 40, 70)],
  ["tapered column", ({ CrossSection }) => CrossSection.circle(12, 60).extrude(25, 5, 0, [0.5, 0.3])],
  ["torus", ({ CrossSection }) => CrossSection.circle(5, 48).translate([20, 0]).revolve(96)],
  ["half ring", ({ CrossSection }) => CrossSection.square([6, 9]).translate([15, 0]).revolve(80, 180)],
  ["two separate balls in a shell", ({ Manifold }) => Manifold.cube([60, 30, 30], true).subtract(Manifold.cube([56, 26, 26], true)).add(Manifold.sphere(8, 40).translate([-12, 0, 0])).add(Manifold.sphere(6, 40).translate([14, 0, 0]))],
]; // biome-ignore format: one solid a line

describe("named solids", () => {
  test.each(SOLIDS)("%s", (_, make) => {
    compare(make(wasm).rotate([11, 23, 37]), 12);
  });

  test("the library's ball of 64 segments, r 10, has 4165.137 mm3 and 1252.779 mm2", () => {
    const { volumeMm3, areaMm2 } = measureBody(meshOf(wasm.Manifold.sphere(10, 64)));
    expect(volumeMm3).toBeCloseTo(4165.137, 2);
    expect(areaMm2).toBeCloseTo(1252.779, 2);
  });

  test("are twenty", () => {
    expect(SOLIDS).toHaveLength(20);
  });
});

describe("random solids", () => {
  test.each(Array.from({ length: 25 }, (_, seed) => seed + 1))(
    "seed %i: boxes, balls and columns added and taken away",
    (seed) => {
      compare(randomSolid(seed), 10);
    },
  );
});

/** Compares all that both can measure: the whole body, so many cuts and the footprint. */
function compare(solid: Manifold, layers: number): void {
  const mesh = meshOf(solid);
  const measures = measureBody(mesh);
  const bounds = solid.boundingBox();
  const scaleMm3 = solid.surfaceArea() ** 1.5;
  expect(measures).toMatchObject({ closed: true, inverted: false, strayShells: 0 });
  expect(Math.abs(measures.volumeMm3 - solid.volume()) / scaleMm3).toBeLessThan(1e-6);
  expect(measures.areaMm2 / solid.surfaceArea()).toBeCloseTo(1, 5);
  expect(measures.boxMm.min.z).toBeCloseTo(bounds.min[2], 4);
  expect(measures.boxMm.max.x).toBeCloseTo(bounds.max[0], 4);
  const heightMm = measures.boxMm.max.z - measures.boxMm.min.z;
  const profile = layerProfile(mesh, AXIS_DIRECTIONS.z, heightMm / layers);
  expect(profile.layersWithGaps).toBe(0);
  for (const [layer, zMm] of profile.zMm.entries()) {
    const slice = solid.slice(measures.boxMm.min.z + zMm);
    const tolerance = 1e-5 * Math.max(1, solid.surfaceArea());
    expect(Math.abs(profile.areaMm2[layer]! - slice.area()), `area of layer ${layer}`).toBeLessThan(
      tolerance,
    );
    expect(Math.abs(profile.perimeterMm[layer]! - outlineMm(slice.toPolygons()))).toBeLessThan(tolerance);
    expect(profile.islands[layer], `islands of layer ${layer}`).toBe(slice.decompose().length);
    slice.delete();
  }
  const hull = footprintHull(mesh, AXIS_DIRECTIONS.z, 10_000);
  expect(areaOf(hull) / solid.project().hull().area()).toBeCloseTo(1, 5);
}

function meshOf(solid: Manifold): Mesh {
  const { numProp, vertProperties, triVerts } = solid.getMesh();
  const count = vertProperties.length / numProp;
  const cornersMm = new Float64Array(3 * count);
  for (let corner = 0; corner < count; corner++) {
    for (let axis = 0; axis < 3; axis++)
      cornersMm[3 * corner + axis] = vertProperties[numProp * corner + axis]!;
  }
  return { cornersMm, triangles: triVerts };
}

function outlineMm(polygons: readonly (readonly [number, number])[][]): number {
  let lengthMm = 0;
  for (const polygon of polygons) {
    for (const [at, [x, y]] of polygon.entries()) {
      const [nextX, nextY] = polygon[(at + 1) % polygon.length]!;
      lengthMm += Math.hypot(nextX - x, nextY - y);
    }
  }
  return lengthMm;
}

function areaOf(hull: readonly { x: number; y: number }[]): number {
  return hull.reduce((sum, { x, y }, at) => {
    const next = hull[(at + 1) % hull.length]!;
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
}

function starOutline(): [number, number][] {
  return Array.from({ length: 14 }, (_, at) => {
    const radius = at % 2 === 0 ? 15 : 7;
    return [radius * Math.cos((Math.PI * at) / 7), radius * Math.sin((Math.PI * at) / 7)];
  });
}

function drilled(block: Manifold, hole: Manifold): Manifold {
  const places = [[8, 8], [20, 15], [32, 22]] as const; // biome-ignore format: one line
  return places.reduce((body, [x, y]) => body.subtract(hole.translate([x, y, 0])), block);
}

function crossDrilled(body: Manifold, hole: Manifold): Manifold {
  return body
    .subtract(hole)
    .subtract(hole.rotate([90, 0, 0]))
    .subtract(hole.rotate([0, 90, 0]));
}

function randomSolid(seed: number): Manifold {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + random() * (high - low);
  const piece = (): Manifold => {
    const kind = Math.floor(random() * 3);
    const { Manifold } = wasm;
    const size = between(6, 20);
    let shape = Manifold.cube([size, between(6, 20), between(6, 20)], true);
    if (kind === 1) shape = Manifold.sphere(size / 2, 24 + 4 * Math.floor(random() * 10));
    if (kind === 2)
      shape = Manifold.cylinder(
        between(6, 25),
        size / 2,
        between(2, 10),
        16 + Math.floor(random() * 40),
        true,
      );
    const turned = shape.rotate([between(0, 360), between(0, 360), between(0, 360)]);
    return turned.translate([between(-12, 12), between(-12, 12), between(-12, 12)]);
  };
  let solid = piece();
  for (let step = 0; step < 6; step++) {
    const next = piece();
    const joined = random() < 0.6 ? solid.add(next) : solid.subtract(next);
    if (!joined.isEmpty()) solid = joined;
  }
  return solid;
}
