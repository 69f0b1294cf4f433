import { describe, expect, test } from "vitest";
import { AXIS_DIRECTIONS, standUp } from "../../../core/geometry/direction.ts";
import { measureBody } from "../../../core/geometry/measure.ts";
import { footprintHull, heightMm, overhang } from "../../../core/geometry/standing.ts";
import { fitsRotated } from "../../../core/geometry/turned-box.ts";
import { ball, box, insideOut, moved, prism, ring, tShape } from "../../fixtures/bodies.ts";

const { x, y, z } = AXIS_DIRECTIONS;
const down = AXIS_DIRECTIONS["-z"];

describe("turning a direction up", () => {
  test("of an axis only swaps and negates coordinates, and never mirrors", () => {
    const body = box(2, 3, 4);
    for (const up of Object.values(AXIS_DIRECTIONS)) {
      const stood = standUp(body, up).mesh;
      expect(measureBody(stood)).toMatchObject({ inverted: false, closed: true });
      expect([...stood.cornersMm].every((value) => Number.isInteger(value))).toBe(true);
    }
  });

  test("gives the body's extent along that direction as height", () => {
    const body = box(2, 3, 4);
    expect([x, y, z, down].map((up) => heightMm(body, up))).toEqual([2, 3, 4, 4]);
    const diagonal = 1 / Math.sqrt(3);
    expect(heightMm(body, { x: diagonal, y: diagonal, z: diagonal })).toBeCloseTo(9 * diagonal, 10);
  });

  test("needs a unit vector", () => {
    expect(() => heightMm(box(1, 1, 1), { x: 0, y: 0, z: 2 })).toThrow("not a unit vector: length 2");
    expect(() => heightMm(box(1, 1, 1), { x: 0, y: 0, z: 0 })).toThrow(RangeError);
    expect(() => heightMm(box(1, 1, 1), { x: 0, y: Number.NaN, z: 1 })).toThrow(RangeError);
  });
});

describe("overhang", () => {
  test("of a cube on the platform is nothing", () => {
    expect(overhang(box(10, 10, 10), z)).toEqual({ areaMm2: 0, supportVolumeMm3: 0 });
  });

  test("of a slab on a post is what sticks out, with the space down to the platform", () => {
    expect(overhang(tShape(), y).areaMm2).toBeCloseTo(200, 10);
    expect(overhang(tShape(), y).supportVolumeMm3).toBeCloseTo(2000, 9);
  });

  test("of the same with the slab down is nothing", () => {
    expect(overhang(tShape(), AXIS_DIRECTIONS["-y"])).toEqual({ areaMm2: 0, supportVolumeMm3: 0 });
  });

  test("is the same for a body turned inside out", () => {
    expect(overhang(insideOut(tShape()), y)).toEqual(overhang(tShape(), y));
  });

  test.each([
    [44, 0],
    [45, 0],
    [46, 100 * Math.SQRT2],
  ])("of a ledge that leans %i degrees from the vertical is %f mm2", (degrees, areaMm2) => {
    const reachMm = 10 * Math.tan((degrees * Math.PI) / 180);
    const leaning = prism([[0, 0], [10, 0], [10 + reachMm, 10], [0, 10]], 10); // biome-ignore format: one line
    const expected = areaMm2 === 0 ? 0 : 10 * Math.hypot(10, reachMm);
    expect(overhang(leaning, y).areaMm2).toBeCloseTo(expected, 9);
  });

  test("of a ball at 45 degrees is the cap below that latitude, by Archimedes' area 2 pi r h", () => {
    const cap = 2 * Math.PI * 10 * 10 * (1 - Math.SQRT1_2);
    const { areaMm2 } = overhang(ball(256, 10), z, 45, 0);
    expect(Math.abs(areaMm2 / cap - 1)).toBeLessThan(0.02);
  });

  test("does not count what lies on the platform within the contact height", () => {
    const raised = box(10, 10, 10);
    const withFoot = moved(raised, (a, b, c) => [a, b, c === 0 && a === 0 ? 0.2 : c]);
    expect(overhang(withFoot, z, 45, 0.3).areaMm2).toBe(0);
    expect(overhang(withFoot, z, 45, 0.1).areaMm2).toBeGreaterThan(90);
  });
});

describe("footprint", () => {
  test("of a box is its four corners, counter-clockwise", () => {
    expect(footprintHull(box(20, 30, 5), z)).toEqual([
      { x: 0, y: 0 },
      { x: 20, y: 0 },
      { x: 20, y: 30 },
      { x: 0, y: 30 },
    ]);
  });

  test("of an L is its hull of five corners", () => {
    const bent = prism([[10, 10], [10, 40], [0, 40], [0, 0], [40, 0], [40, 10]], 5); // biome-ignore format: one line
    expect(footprintHull(bent, z)).toHaveLength(5);
  });

  test("in at most 24 corners encloses the whole outline and is hardly larger", () => {
    const round = prism(ring(1000, 50), 5);
    const hull = footprintHull(round, z);
    expect(hull).toHaveLength(24);
    for (const [a, b] of ring(1000, 50)) expect(isEnclosed(hull, a, b)).toBe(true);
    expect(areaOf(hull) / (Math.PI * 2500)).toBeLessThan(1.01);
  });

  test("of a disc of a hundred thousand corners is found in good time", () => {
    const started = performance.now();
    const hull = footprintHull(prism(ring(50_000, 50), 5), z);
    expect(hull).toHaveLength(24);
    expect(areaOf(hull)).toBeGreaterThan(Math.PI * 2499.99);
    expect(areaOf(hull) / (Math.PI * 2500)).toBeLessThan(1.01);
    expect(performance.now() - started).toBeLessThan(5000);
  });

  test("of a body seen edge on is still drawn around it", () => {
    const sheet = {
      cornersMm: Float64Array.from([0, 0, 0, 10, 0, 0, 0, 0, 10]),
      triangles: Uint32Array.from([0, 1, 2]),
    };
    expect(footprintHull(sheet, z)).toEqual([
      { x: 0, y: 0 },
      { x: 10, y: 0 },
    ]);
  });
});

describe("turning about the vertical", () => {
  const rod = footprintHull(box(120, 5, 5), z);

  test("lets a long rod lie across a platform that it does not fit straight", () => {
    const turned = fitsRotated(rod, 100, 100);
    expect(turned?.angleDeg).toBeGreaterThan(30);
    expect(turned?.xMm).toBeLessThanOrEqual(100.000001);
    expect(turned?.yMm).toBeLessThanOrEqual(100.000001);
  });

  test("is not enough for a rod that is longer than the diagonal less its own width", () => {
    const longest = 100 * Math.SQRT2 - 5;
    expect(fitsRotated(footprintHull(box(longest - 0.001, 5, 5), z), 100, 100)?.angleDeg).toBeCloseTo(45, 1);
    expect(fitsRotated(footprintHull(box(longest + 0.001, 5, 5), z), 100, 100)).toBeNull();
  });

  test("by a quarter is found where the platform is deeper than wide", () => {
    expect(fitsRotated(rod, 10, 130)).toMatchObject({ angleDeg: 90 });
    expect(fitsRotated(rod, 130, 10)).toMatchObject({ angleDeg: 0 });
  });

  test("without limits gives the smallest box, along a side", () => {
    const turned = moved(box(40, 10, 5), (a, b, c) => {
      const angle = (20 * Math.PI) / 180;
      return [a * Math.cos(angle) - b * Math.sin(angle), a * Math.sin(angle) + b * Math.cos(angle), c];
    });
    const smallest = fitsRotated(footprintHull(turned, z), Infinity, Infinity);
    expect(smallest && smallest.xMm * smallest.yMm).toBeCloseTo(400, 8);
    expect(smallest?.angleDeg).toBeCloseTo(70, 6);
  });

  test("finds what a search over every hundredth of a degree finds", () => {
    const hull = footprintHull(prism(ring(5, 30), 5), z);
    for (const side of [54, 55, 56, 57, 58, 59, 60]) {
      expect(fitsRotated(hull, side, side) !== null, `${side}`).toBe(isFittingByTrial(hull, side));
    }
  });
});

type Hull = ReturnType<typeof footprintHull>;

function isEnclosed(hull: Hull, a: number, b: number): boolean {
  return hull.every((from, at) => {
    const to = hull[(at + 1) % hull.length]!;
    return (to.x - from.x) * (b - from.y) - (to.y - from.y) * (a - from.x) >= -1e-9;
  });
}

function areaOf(hull: Hull): number {
  return hull.reduce((sum, from, at) => {
    const to = hull[(at + 1) % hull.length]!;
    return sum + (from.x * to.y - to.x * from.y) / 2;
  }, 0);
}

function isFittingByTrial(hull: Hull, sideMm: number): boolean {
  for (let degrees = 0; degrees < 180; degrees += 0.01) {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const across = hull.map((point) => cos * point.x - sin * point.y);
    const along = hull.map((point) => sin * point.x + cos * point.y);
    if (Math.max(...across) - Math.min(...across) > sideMm) continue;
    if (Math.max(...along) - Math.min(...along) <= sideMm) return true;
  }
  return false;
}
