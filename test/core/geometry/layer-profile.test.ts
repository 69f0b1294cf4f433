import { describe, expect, test } from "vitest";
import { AXIS_DIRECTIONS } from "../../../core/geometry/direction.ts";
import { layerProfile } from "../../../core/geometry/layer-profile.ts";
import type { Mesh } from "../../../core/geometry/mesh.ts";
import { ball, box, insideOut, moved, prism, ring, tShape, together, tube, welded, without } from "../../fixtures/bodies.ts"; // biome-ignore format: one line

const { x, y, z } = AXIS_DIRECTIONS;

/** The cut of a body at its middle, from one layer as high as the body. */
function middleCut(mesh: Mesh, up = z) {
  const profile = layerProfile(mesh, up, 1e6);
  expect(profile.zMm).toHaveLength(1);
  return {
    areaMm2: profile.areaMm2[0]!,
    perimeterMm: profile.perimeterMm[0]!,
    islands: profile.islands[0]!,
    corners: profile.corners[0]!,
    thinnestMm: profile.thinnestMm[0]!,
  };
}

describe("layers", () => {
  test("are cut at their middles, the last one at the middle of what is left", () => {
    expect([...layerProfile(box(10, 10, 1), z, 0.4).zMm]).toEqual([
      0.2,
      expect.closeTo(0.6),
      expect.closeTo(0.9),
    ]);
  });

  test("of a height that is a whole number of them, but for rounding, are just that many", () => {
    expect(layerProfile(box(10, 10, 20), z, 0.2).zMm).toHaveLength(100);
    expect(layerProfile(box(10, 10, 0.3), z, 0.1).zMm).toHaveLength(3);
    expect(layerProfile(box(10, 10, 20.01), z, 0.2).zMm).toHaveLength(101);
  });

  test("higher than the body are one", () => {
    expect([...layerProfile(box(10, 10, 1), z, 5).zMm]).toEqual([0.5]);
  });

  test("need a height, and there are at most 200 000 of them", () => {
    expect(() => layerProfile(box(1, 1, 1), z, 0)).toThrow("layer height must be positive: 0");
    expect(() => layerProfile(box(1, 1, 1), z, Number.NaN)).toThrow(RangeError);
    expect(() => layerProfile(box(1, 1, 1e6), z, 0.1)).toThrow("too many layers");
  });
});

describe("a cut", () => {
  test("through a box has its area, outline, one island, four corners and its short side as thinnest", () => {
    const cut = middleCut(box(60, 40, 20));
    expect(cut).toEqual({
      areaMm2: expect.closeTo(2400, 9),
      perimeterMm: expect.closeTo(200, 9),
      islands: 1,
      corners: 4,
      thinnestMm: expect.closeTo(40, 9),
    });
  });

  test("through a tube takes its hole off and counts both outlines", () => {
    const cut = middleCut(tube(360, 10, 8, 5));
    expect(cut.areaMm2).toBeCloseTo(180 * Math.sin(Math.PI / 180) * 36 * 1, 6);
    expect(cut.perimeterMm).toBeCloseTo(720 * Math.sin(Math.PI / 360) * 18, 6);
    expect(cut.islands).toBe(1);
    expect(cut.corners).toBe(0);
    expect(cut.thinnestMm).toBeCloseTo(2, 3);
  });

  test("through a tube lying down has two islands", () => {
    expect(middleCut(tube(360, 10, 8, 5), x)).toMatchObject({ islands: 2, corners: 8 });
  });

  test("through boxes beside each other has an island for each", () => {
    const three = together(...[0, 20, 40].map((at) => moved(box(10, 10, 10), (a, b, c) => [a + at, b, c])));
    expect(middleCut(three)).toMatchObject({ areaMm2: expect.closeTo(300, 9), islands: 3, corners: 12 });
  });

  test("through boxes that touch along an edge has two islands", () => {
    const touching = welded(
      together(
        box(10, 10, 10),
        moved(box(10, 10, 10), (a, b, c) => [a + 10, b + 10, c]),
      ),
    );
    expect(middleCut(touching)).toMatchObject({ areaMm2: expect.closeTo(200, 9), islands: 2, corners: 8 });
  });

  test("is the same through a body turned inside out", () => {
    const turned = middleCut(insideOut(tube(64, 10, 8, 5)));
    for (const [name, value] of Object.entries(middleCut(tube(64, 10, 8, 5)))) {
      expect(turned[name as keyof typeof turned], name).toBeCloseTo(value, 9);
    }
  });

  test("through a cavity takes it off", () => {
    const hollow = moved(box(2, 2, 2), (a, b, c) => [a + 4, b + 4, c + 4]);
    const cut = middleCut(together(box(10, 10, 10), insideOut(hollow)));
    expect(cut).toMatchObject({
      areaMm2: expect.closeTo(96, 9),
      perimeterMm: expect.closeTo(48, 9),
      islands: 1,
    });
    expect(cut.thinnestMm).toBeCloseTo(4, 9);
  });

  test("at the height of corners and flat faces is neither empty nor double", () => {
    const steps = prism([[20, 10], [20, 20], [0, 20], [0, 0], [40, 0], [40, 10]], 10); // biome-ignore format: one line
    const profile = layerProfile(steps, y, 20);
    expect(profile.zMm[0]).toBe(10);
    expect(profile.areaMm2[0]).toBeCloseTo(400, 9);
    const twoLayers = layerProfile(steps, y, 10);
    expect([...twoLayers.areaMm2]).toEqual([expect.closeTo(400, 9), expect.closeTo(200, 9)]);
  });

  test("through corners of a ball on the plane is one closed loop", () => {
    const cut = middleCut(ball(64, 10));
    expect(cut).toMatchObject({ islands: 1, corners: 0 });
    expect(cut.areaMm2).toBeCloseTo(32 * 100 * Math.sin((2 * Math.PI) / 64), 9);
  });
});

describe("corners", () => {
  test.each([
    [35, 35],
    [36, 36],
    [37, 0],
  ])("of a polygon of %i sides (360 / n degrees a turn) are %i", (sides, corners) => {
    expect(middleCut(prism(ring(sides, 10), 5)).corners).toBe(corners);
  });

  test("are not made by points along a straight side", () => {
    const dotted = prism([[0, 0], [1, 0], [2, 0], [9.999, 0], [10, 0], [10, 10], [0, 10]], 5); // biome-ignore format: one line
    expect(middleCut(dotted).corners).toBe(4);
  });

  test("are not made by noise as small as a 32-bit float's", () => {
    const noisy = prism([[0, 0], [5, 0], [5.00001, 0.00001], [10, 0], [10, 10], [0, 10]], 5); // biome-ignore format: one line
    expect(middleCut(noisy).corners).toBe(4);
  });
});

/** A wedge of 50 mm that opens by so many degrees. */
function wedge(degrees: number) {
  const half = 50 * Math.tan((degrees * Math.PI) / 360);
  return middleCut(prism([[0, 0], [50, -half], [50, half]], 5)); // biome-ignore format: one line
}

describe("the thinnest region", () => {
  test.each([0.4, 1, 3])("of a plate is its thickness: %f mm", (thickMm) => {
    expect(middleCut(box(60, thickMm, 20)).thinnestMm).toBeCloseTo(thickMm, 9);
  });

  test("of a disc is its diameter, of a hollow one its wall", () => {
    expect(middleCut(prism(ring(360, 10), 5)).thinnestMm).toBeCloseTo(20, 2);
    expect(middleCut(tube(360, 10, 9.5, 5)).thinnestMm).toBeCloseTo(0.5, 3);
  });

  test("of a tube with its hole off the middle is the wall at the near side", () => {
    const outer = tube(360, 10, 5, 5);
    const shifted = moved(outer, (a, b, c) => [Math.hypot(a, b) < 6 ? a + 4 : a, b, c]);
    expect(middleCut(shifted).thinnestMm).toBeCloseTo(1, 2);
  });

  test("of a slab on a post, cut through both, is the slab or the post, whichever is thinner", () => {
    expect(middleCut(tShape()).thinnestMm).toBeCloseTo(5, 9);
  });

  test("of a rib on a block is the rib, though it is a small part of the outline", () => {
    const ribbed = prism([[50, 100], [0, 100], [0, 0], [100, 0], [100, 100], [51, 100], [51, 105], [50, 105]], 5); // biome-ignore format: one line
    expect(middleCut(ribbed).thinnestMm).toBeCloseTo(1, 9);
  });

  test("of an equilateral triangle, whose sides do not face each other, is the inscribed circle's diameter", () => {
    expect(middleCut(prism(ring(3, 10), 5)).thinnestMm).toBeCloseTo(10, 9);
  });

  test("of a wedge that opens by 20 degrees goes towards its edge, by 40 degrees it is the inscribed circle's", () => {
    expect(wedge(20).thinnestMm).toBeLessThan(0.5);
    const { areaMm2, perimeterMm, thinnestMm } = wedge(40);
    expect(thinnestMm).toBeCloseTo((4 * areaMm2) / perimeterMm, 9);
  });

  test("is that of the thinnest island", () => {
    const two = together(
      box(10, 10, 10),
      moved(box(10, 2, 10), (a, b, c) => [a, b + 20, c]),
    );
    expect(middleCut(two).thinnestMm).toBeCloseTo(2, 9);
  });

  test("is the overlap where two bodies overlap, since each is cut by itself", () => {
    const overlapping = together(
      box(20, 20, 10),
      moved(box(20, 20, 10), (a, b, c) => [a + 19, b, c]),
    );
    expect(middleCut(overlapping).thinnestMm).toBeCloseTo(1, 9);
  });

  test("is not the width of a gap", () => {
    const near = together(
      box(20, 20, 10),
      moved(box(20, 20, 10), (a, b, c) => [a + 20.1, b, c]),
    );
    expect(middleCut(near).thinnestMm).toBeCloseTo(20, 9);
  });
});

describe("a damaged body", () => {
  test("with an open outline is closed by a straight line, and says in how many layers", () => {
    const open = without(prism(ring(64, 10), 20), 2 * 62, 2 * 62 + 1);
    const profile = layerProfile(open, z, 1);
    expect(profile.layersWithGaps).toBe(20);
    expect(profile.areaMm2[10]).toBeCloseTo(layerProfile(prism(ring(64, 10), 20), z, 1).areaMm2[10]!, 9);
  });

  test("with triangles turned the wrong way still has whole outlines", () => {
    const whole = prism(ring(64, 10), 20);
    const triangles = whole.triangles.slice();
    for (const at of [130, 140, 150]) triangles.set([triangles[3 * at + 1]!, triangles[3 * at]!], 3 * at);
    const profile = layerProfile({ cornersMm: whole.cornersMm, triangles }, z, 1);
    expect(profile.layersWithGaps).toBe(0);
    expect(profile.areaMm2[10]).toBeCloseTo(layerProfile(whole, z, 1).areaMm2[10]!, 9);
    expect(profile.islands[10]).toBe(1);
  });

  test("with triangles that name a corner twice is cut as if they were not there", () => {
    const whole = box(10, 10, 10);
    const folded = {
      cornersMm: whole.cornersMm,
      triangles: Uint32Array.from([0, 0, 4, ...whole.triangles, 2, 6, 2]),
    };
    expect(middleCut(folded)).toEqual(middleCut(whole));
  });
});

test("the areas of all layers add up to the volume", () => {
  const profile = layerProfile(ball(128, 10), z, 0.05);
  const volumeMm3 = profile.areaMm2.reduce((sum, area) => sum + area * 0.05, 0);
  expect(Math.abs(volumeMm3 / ((4000 / 3) * Math.PI) - 1)).toBeLessThan(0.002);
});
