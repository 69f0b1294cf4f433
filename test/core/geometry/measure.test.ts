import { describe, expect, test } from "vitest";
import { bodyFindings } from "../../../core/geometry/body-findings.ts";
import { measureBody } from "../../../core/geometry/measure.ts";
import { box, insideOut, moved, prism, ring, together, welded, without } from "../../fixtures/bodies.ts";

const cube = box(10, 10, 10);
const at = (x: number, y: number, z: number) => moved(cube, (a, b, c) => [a + x, b + y, c + z]);
const codes = (mesh: typeof cube): string[] =>
  bodyFindings(measureBody(mesh), "a.stl").map(({ code }) => code);

describe("a closed body", () => {
  test("has its volume, surface, box and centroid, and nothing to say about it", () => {
    const measures = measureBody(moved(box(2, 3, 4), (x, y, z) => [x + 5, y - 6, z + 7]));
    expect(measures).toMatchObject({ closed: true, openEdges: 0, shells: 1, inverted: false, triangles: 12 });
    expect(measures.volumeMm3).toBeCloseTo(24, 10);
    expect(measures.areaMm2).toBeCloseTo(52, 10);
    expect(measures.boxMm).toEqual({ min: { x: 5, y: -6, z: 7 }, max: { x: 7, y: -3, z: 11 } });
    expect(measures.centroidMm.x).toBeCloseTo(6, 10);
    expect(measures.centroidMm.y).toBeCloseTo(-4.5, 10);
    expect(measures.centroidMm.z).toBeCloseTo(9, 10);
    expect(codes(box(2, 3, 4))).toEqual([]);
  });

  test("keeps its volume far from the origin", () => {
    const far = moved(cube, (x, y, z) => [x + 1e6, y + 1e6, z - 1e6]);
    expect(measureBody(far).volumeMm3).toBeCloseTo(1000, 6);
  });

  test("turned inside out as a whole has a positive volume and says so", () => {
    const measures = measureBody(insideOut(cube));
    expect(measures).toMatchObject({ closed: true, inverted: true, strayShells: 0 });
    expect(measures.volumeMm3).toBeCloseTo(1000, 10);
    expect(measures.centroidMm.z).toBeCloseTo(5, 10);
    expect(codes(insideOut(cube))).toEqual(["inverted"]);
  });

  test("ignores corners that belong to no triangle", () => {
    const extra = {
      cornersMm: Float64Array.from([...cube.cornersMm, 1e30, 1e30, 1e30]),
      triangles: cube.triangles,
    };
    expect(measureBody(extra).boxMm.max).toEqual({ x: 10, y: 10, z: 10 });
    expect(measureBody(extra).volumeMm3).toBeCloseTo(1000, 10);
  });
});

describe("pieces and cavities", () => {
  const hollow = moved(box(2, 2, 2), (x, y, z) => [x + 4, y + 4, z + 4]);

  test("of a body with a cavity: the cavity is taken off and is not another piece", () => {
    const measures = measureBody(together(cube, insideOut(hollow)));
    expect(measures).toMatchObject({ shells: 2, cavities: 1, strayShells: 0, inverted: false, closed: true });
    expect(measures.volumeMm3).toBeCloseTo(992, 10);
    expect(codes(together(cube, insideOut(hollow)))).toEqual([]);
  });

  test("of a body with a cavity turned inside out as a whole: the same", () => {
    const measures = measureBody(insideOut(together(cube, insideOut(hollow))));
    expect(measures).toMatchObject({ shells: 2, cavities: 1, strayShells: 0, inverted: true });
    expect(measures.volumeMm3).toBeCloseTo(992, 10);
  });

  test("two boxes apart are two pieces", () => {
    expect(measureBody(together(cube, at(20, 0, 0)))).toMatchObject({
      shells: 2,
      cavities: 0,
      strayShells: 0,
    });
    expect(codes(together(cube, at(20, 0, 0)))).toEqual(["several-pieces"]);
  });

  test("a piece turned inside out that lies in no other is told apart from a cavity", () => {
    const mesh = together(cube, insideOut(moved(box(5, 5, 5), (x, y, z) => [x + 20, y, z])));
    expect(measureBody(mesh)).toMatchObject({ shells: 2, cavities: 0, strayShells: 1 });
    expect(codes(mesh)).toContain("inverted-pieces");
  });

  test("two boxes that touch along an edge are closed, with one crowded edge", () => {
    const touching = welded(together(cube, at(10, 10, 0)));
    const measures = measureBody(touching);
    expect(measures).toMatchObject({ closed: true, crowdedEdges: 1, openEdges: 0, shells: 2 });
    expect(measures.volumeMm3).toBeCloseTo(2000, 9);
    expect(codes(touching)).toEqual(["several-pieces", "crowded-edges"]);
  });

  test("two boxes that touch at a corner are two pieces without a crowded edge", () => {
    expect(measureBody(welded(together(cube, at(10, 10, 10))))).toMatchObject({ crowdedEdges: 0, shells: 2 });
  });

  test("the same box twice is closed, with each edge crowded", () => {
    expect(measureBody(welded(together(cube, cube)))).toMatchObject({
      closed: true,
      crowdedEdges: 18,
      shells: 2,
    });
  });
});

describe("a damaged body", () => {
  test("without one triangle is open at three edges", () => {
    expect(measureBody(without(cube, 0))).toMatchObject({ closed: false, openEdges: 3 });
    const [finding] = bodyFindings(measureBody(without(cube, 0)), "a.stl");
    expect(finding).toMatchObject({ severity: "error", code: "open-surface", where: "a.stl" });
    expect(finding?.sentence).toContain("3 edges");
    expect(finding?.sentence).toContain("cannot be trusted");
  });

  test("without two neighbouring triangles is open at four edges", () => {
    expect(measureBody(without(cube, 0, 2)).openEdges).toBe(4);
  });

  test("as separate triangles that share no corner is open at every edge", () => {
    const soup = {
      cornersMm: Float64Array.from(
        Array.from(cube.triangles).flatMap((c) => Array.from(cube.cornersMm.subarray(3 * c, 3 * c + 3))),
      ),
      triangles: Uint32Array.from(cube.triangles.keys()),
    };
    expect(measureBody(soup)).toMatchObject({ openEdges: 36, shells: 12, closed: false });
    expect(measureBody(welded(soup))).toMatchObject({ openEdges: 0, shells: 1, closed: true });
  });

  test("with one triangle turned is wrongly turned at three edges and not open", () => {
    const turned = cube.triangles.slice();
    turned.set([turned[1]!, turned[0]!], 0);
    const mesh = { cornersMm: cube.cornersMm, triangles: turned };
    expect(measureBody(mesh)).toMatchObject({ closed: false, misturnedEdges: 3, openEdges: 0, shells: 1 });
    expect(codes(mesh)).toContain("misturned-triangles");
  });

  test("with a fin on one edge is open there, the edge is crowded, and the fin is a piece of its own", () => {
    const fin = {
      cornersMm: Float64Array.from([...cube.cornersMm, 20, 20, 20]),
      triangles: Uint32Array.from([...cube.triangles, 0, 1, 8]),
    };
    expect(measureBody(fin)).toMatchObject({ closed: false, openEdges: 3, crowdedEdges: 1, shells: 2 });
  });
});

describe("triangles of no area", () => {
  test("that name a corner twice are counted and leave the body closed", () => {
    const mesh = {
      cornersMm: cube.cornersMm,
      triangles: Uint32Array.from([...cube.triangles, 0, 0, 1, 2, 2, 2]),
    };
    expect(measureBody(mesh)).toMatchObject({
      closed: true,
      degenerateTriangles: 2,
      shells: 1,
      triangles: 14,
    });
  });

  test("with three corners on a line are counted and leave the body closed", () => {
    const withPoint = prism([[0, 0], [5, 0], [10, 0], [10, 10], [0, 10]], 10); // biome-ignore format: one line
    expect(measureBody(withPoint)).toMatchObject({ closed: true, degenerateTriangles: 2, openEdges: 0 });
    expect(measureBody(withPoint).volumeMm3).toBeCloseTo(1000, 10);
  });
});

test("a fan of a hundred thousand triangles around one corner is paired in linear time", () => {
  const started = performance.now();
  const disc = prism(ring(50_000, 100), 10);
  expect(measureBody(disc)).toMatchObject({ closed: true, shells: 1 });
  expect(performance.now() - started).toBeLessThan(5000);
});

test("a flat sheet with two sides encloses no volume, and that is said", () => {
  const sheet = {
    cornersMm: Float64Array.from([0, 0, 0, 10, 0, 0, 0, 10, 0]),
    triangles: Uint32Array.from([0, 1, 2, 0, 2, 1]),
  };
  expect(measureBody(sheet)).toMatchObject({ closed: true, volumeMm3: 0, openEdges: 0 });
  expect(codes(sheet)).toEqual(["no-volume"]);
});

test("a plate is called very thin below 0.2 mm on average, not above", () => {
  expect(codes(box(1000, 1000, 0.19))).toEqual(["very-thin"]);
  expect(codes(box(1000, 1000, 0.21))).toEqual([]);
});

test("a body without triangles is a programmer's mistake", () => {
  expect(() => measureBody({ cornersMm: new Float64Array(0), triangles: new Uint32Array(0) })).toThrow(
    RangeError,
  );
});
