import { describe, expect, test } from "vitest";
import type { Mesh } from "../../../core/geometry/mesh.ts";
import { measureBody } from "../../../core/geometry/measure.ts";
import { bodyDrawing } from "../../../core/report/body-drawing.ts";
import { boxMesh, coarseMesh } from "../../../core/report/coarse-mesh.ts";
import { cutFaces, type DrawnFace, drawnFaces } from "../../../core/report/drawn-faces.ts";

/** A sphere of radius 10 about the origin in bands and sectors. */
function sphere(bands: number): Mesh {
  const corners: number[] = [];
  const triangles: number[] = [];
  const sectors = 2 * bands;
  for (let band = 0; band <= bands; band++) {
    const polar = (Math.PI * band) / bands;
    for (let sector = 0; sector < sectors; sector++) {
      const around = (2 * Math.PI * sector) / sectors;
      corners.push(
        10 * Math.sin(polar) * Math.cos(around),
        10 * Math.sin(polar) * Math.sin(around),
        10 * Math.cos(polar),
      );
    }
  }
  const corner = (band: number, sector: number): number => band * sectors + (sector % sectors);
  for (let band = 0; band < bands; band++) {
    for (let sector = 0; sector < sectors; sector++) {
      const [a, b, c, d] = [
        corner(band, sector),
        corner(band + 1, sector),
        corner(band + 1, sector + 1),
        corner(band, sector + 1),
      ];
      triangles.push(a, b, c, a, c, d);
    }
  }
  return { cornersMm: Float64Array.from(corners), triangles: Uint32Array.from(triangles) };
}

function seenAreaMm2(faces: readonly DrawnFace[]): number {
  return faces.reduce((sum, { corners: [a, b, c] }) => {
    return sum + ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2;
  }, 0);
}

function longest({ corners }: DrawnFace): number {
  const sides = corners.map((from, side) => {
    const to = corners[(side + 1) % 3]!;
    return Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  });
  return Math.max(...sides);
}

function polygons(markup: string): number {
  return (markup.match(/Z/g) ?? []).length;
}

describe("a box", () => {
  const faces = drawnFaces(boxMesh({ x: 60, y: 40, z: 20 }));

  test("is closed and turned outwards", () => {
    expect(measureBody(boxMesh({ x: 60, y: 40, z: 20 }))).toMatchObject({ closed: true, volumeMm3: 48_000 });
  });

  test("shows three of its faces, each in two triangles whose shared side is no edge", () => {
    expect(faces).toHaveLength(6);
    expect(faces.map(({ edges }) => edges.filter(Boolean).length)).toEqual([2, 2, 2, 2, 2, 2]);
    expect(new Set(faces.map(({ light }) => light.toFixed(6))).size).toBe(3);
  });

  test("covers what a box seen from 58 degrees aside and 27 above covers", () => {
    const [aside, above] = [(58 * Math.PI) / 180, (27 * Math.PI) / 180];
    const area =
      40 * 20 * Math.cos(above) * Math.cos(aside) +
      60 * 20 * Math.cos(above) * Math.sin(aside) +
      60 * 40 * Math.sin(above);
    expect(seenAreaMm2(faces)).toBeCloseTo(area, 6);
  });

  test("is lit most on top", () => {
    const top = faces.filter(({ light }) => light === Math.max(...faces.map((face) => face.light)));
    expect(seenAreaMm2(top)).toBeCloseTo(60 * 40 * Math.sin((27 * Math.PI) / 180), 6);
  });
});

describe("faces cut smaller", () => {
  const faces = drawnFaces(boxMesh({ x: 60, y: 40, z: 20 }));

  test("cover the same, and have no side longer than asked for", () => {
    const cut = cutFaces(faces, 9, 10_000);
    expect(seenAreaMm2(cut)).toBeCloseTo(seenAreaMm2(faces), 6);
    expect(Math.max(...cut.map(longest))).toBeLessThanOrEqual(9);
  });

  test("are never more than asked for", () => {
    expect(cutFaces(faces, 0.001, 100).length).toBeLessThanOrEqual(100);
    expect(cutFaces(faces, 0.001, 5)).toHaveLength(6);
  });
});

describe("a coarser mesh", () => {
  test("has fewer triangles, the same outline and nearly the same volume", () => {
    const fine = sphere(60);
    const coarse = coarseMesh(fine, 16);
    expect(coarse.triangles.length).toBeLessThan(fine.triangles.length / 3);
    expect(measureBody(coarse).volumeMm3 / measureBody(fine).volumeMm3).toBeGreaterThan(0.93);
    expect(seenAreaMm2(drawnFaces(coarse))).toBeGreaterThan(0.95 * Math.PI * 100);
    expect(seenAreaMm2(drawnFaces(coarse))).toBeLessThan(1.02 * Math.PI * 100);
  });
});

describe("a drawing", () => {
  test("has at most 1500 triangles, however fine the body is", () => {
    const markup = bodyDrawing(sphere(120), "a sphere")!.markup;
    expect(polygons(markup)).toBeLessThanOrEqual(1500);
    expect(polygons(markup)).toBeGreaterThan(300);
    expect(markup.length).toBeLessThan(120_000);
  });

  test("draws what is nearer later: a plate before a block hides it", () => {
    const block = boxMesh({ x: 10, y: 10, z: 10 });
    const plate = boxMesh({ x: 30, y: 1, z: 30 });
    const moved = plate.cornersMm.map((value, at) => [value - 10, value - 20, value - 10][at % 3]!);
    const both: Mesh = {
      cornersMm: Float64Array.from([...block.cornersMm, ...moved]),
      triangles: Uint32Array.from([...block.triangles, ...plate.triangles.map((corner) => corner + 8)]),
    };
    const whole = bodyDrawing(both, "both")!.markup;
    const behind = bodyDrawing({ cornersMm: both.cornersMm, triangles: block.triangles }, "block")!.markup;
    expect(polygons(whole)).toBeGreaterThan(polygons(behind));
    const paths = [...whole.matchAll(/<path class="t(\d)" d="M([\d.]+) ([\d.]+)/g)];
    const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(whole)!;
    const last = paths.at(-1)!;
    expect(Number(last[2])).toBeLessThan(Number(width));
    expect(Number(last[3])).toBeLessThan(Number(height));
    const nearest = drawnFaces(both).toSorted((a, b) => b.corners[0][2] - a.corners[0][2])[0]!;
    const plateLights = drawnFaces({ cornersMm: Float64Array.from(moved), triangles: plate.triangles });
    expect(plateLights.map(({ light }) => light)).toContain(nearest.light);
  });

  test("needs no style of its own and shows its label as text", () => {
    const { markup } = bodyDrawing(boxMesh({ x: 1, y: 1, z: 1 }), '"><script>')!;
    expect(markup).not.toMatch(/style=|<script|href/);
    expect(markup).toContain('aria-label="&quot;&gt;&lt;script&gt;"');
  });

  test("of nothing is nothing", () => {
    expect(bodyDrawing({ cornersMm: new Float64Array(0), triangles: new Uint32Array(0) }, "")).toBeNull();
  });
});
