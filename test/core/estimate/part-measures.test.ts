import { describe, expect, test } from "vitest";
import { measuresOfBody } from "../../../core/estimate/part-measures.ts";
import { bandsOf } from "../../../core/estimate/profile-cuts.ts";
import { checkShop } from "../../../core/shop/check-shop.ts";
import { measuresSchema } from "../../../core/shop/part.ts";
import type { Measures } from "../../../core/shop/part.ts";
import { areaInside } from "../../../core/shop/standing.ts";
import type { MeasuredStanding } from "../../../core/shop/standing.ts";
import { aPart, aShop } from "../../fixtures/a-route.ts";
import { ball, box, moved, tShape, tube } from "../../fixtures/bodies.ts";

function standing({ standings }: Measures, up: string): MeasuredStanding {
  const found = standings?.find((each) => each.up === up);
  if (!found) throw new Error(`not measured: ${up}`);
  return found;
}

function bandsUp(measures: Measures, up: string) {
  return standing(measures, up).cuts.map(({ zMm, areaMm2, corners }) => [zMm, areaMm2, corners]);
}

function cutVolumeMm3({ cuts }: MeasuredStanding): number {
  return cuts.reduce((sum, cut, at) => sum + cut.areaMm2 * (cut.zMm - (cuts[at - 1]?.zMm ?? 0)), 0);
}

describe("a box of 60 x 40 x 20 mm", () => {
  const measures = measuresOfBody(box(60, 40, 20));

  test("has its volume, surface and box, and six standings of one cut", () => {
    expect(measures).toMatchObject({ volumeMm3: 48_000, areaMm2: 8800, boxMm: { x: 60, y: 40, z: 20 } });
    expect(measures.standings?.map(({ up, heightMm, cuts }) => [up, heightMm, cuts])).toEqual(
      [
        ["z", 20, 60, 40],
        ["-z", 20, 60, 40],
        ["y", 40, 60, 20],
        ["-y", 40, 60, 20],
        ["x", 60, 20, 40],
        ["-x", 60, 20, 40],
      ].map(([up, heightMm, a, b]) => [
        up,
        heightMm,
        [
          {
            zMm: heightMm,
            areaMm2: Number(a) * Number(b),
            perimeterMm: 2 * (Number(a) + Number(b)),
            islands: 1,
            holes: 0,
            corners: 4,
            thinnestMm: Math.min(Number(a), Number(b)),
          },
        ],
      ]),
    );
  });

  test("is the same wherever it lies", () => {
    const away = measuresOfBody(moved(box(60, 40, 20), (x, y, z) => [x - 500, y + 300, z - 77]));
    expect(away.standings?.map(({ cuts }) => cuts)).toEqual(measures.standings?.map(({ cuts }) => cuts));
  });

  test("fits the document's schema, and its check has nothing to say", () => {
    expect(measuresSchema.safeParse(measures).success).toBe(true);
    const geometry = { kind: "measures" as const, measures };
    const codes = checkShop(aShop({ parts: [aPart({ geometry })] })).map(({ code }) => code);
    expect(codes.filter((code) => code.includes("standing") || code.includes("direction"))).toEqual([]);
  });
});

describe("a T of a slab 30 x 10 x 5 mm on a post 10 x 10 x 10 mm, upright along y", () => {
  const measures = measuresOfBody(tShape());

  test("hangs over upright, not upside down: 200 mm2 with at most 2000 mm3 below", () => {
    expect(standing(measures, "y")).toMatchObject({ overhangAreaMm2: 200, supportVolumeMm3: 2000 });
    expect(standing(measures, "-y")).toMatchObject({ overhangAreaMm2: 0, supportVolumeMm3: 0 });
  });

  test("has two bands, the other way up in the other order", () => {
    expect(bandsUp(measures, "y")).toEqual([
      [10, 100, 4],
      [15, 300, 4],
    ]);
    expect(bandsUp(measures, "-y")).toEqual([
      [5, 300, 4],
      [15, 100, 4],
    ]);
  });

  test("has a footprint that runs counter-clockwise, whichever way is up", () => {
    for (const { hullMm } of measures.standings ?? []) expect(areaInside(hullMm)).toBeGreaterThan(0);
    expect(areaInside(standing(measures, "y").hullMm)).toBeCloseTo(300, 6);
  });
});

describe("directions of its own", () => {
  test("are measured as they are asked for, by their label and a unit vector", () => {
    const buildDirections = [{ label: "on edge", x: 5, y: 0, z: 5 }];
    const tilted = standing(measuresOfBody(box(20, 20, 20), { buildDirections }), "on edge");
    expect(tilted.vector?.x).toBeCloseTo(Math.SQRT1_2, 12);
    expect(tilted.heightMm).toBeCloseTo(20 * Math.SQRT2, 4);
    expect(Math.abs(cutVolumeMm3(tilted) / 8000 - 1)).toBeLessThan(0.001);
    expect(areaInside(tilted.hullMm)).toBeCloseTo(20 * 20 * Math.SQRT2, 2);
    expect(tilted.cuts.length).toBeGreaterThan(20);
  });
});

describe("round bodies", () => {
  test("keep their volume in at most 200 bands, finer where the cut changes faster", () => {
    const measures = measuresOfBody(ball(64, 50));
    for (const each of measures.standings ?? []) {
      expect(each.cuts.length).toBeLessThanOrEqual(200);
      expect(Math.abs(cutVolumeMm3(each) / measures.volumeMm3 - 1)).toBeLessThan(0.001);
      const heights = each.cuts.map(({ zMm }, at) => zMm - (each.cuts[at - 1]?.zMm ?? 0));
      expect(heights[0]).toBeLessThan(Math.max(...heights) / 5);
    }
  });

  test("have no corners however coarsely they are drawn: a tube of 22 sides", () => {
    const { cuts } = standing(measuresOfBody(tube(22, 10, 8, 20)), "z");
    expect(cuts).toHaveLength(1);
    expect(cuts[0]).toMatchObject({ corners: 0, islands: 1, holes: 1 });
    expect(Math.abs((cuts[0]?.thinnestMm ?? 0) - 2)).toBeLessThan(0.05);
  });
});

test("a body without volume has no measures", () => {
  const flat = {
    cornersMm: Float64Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0]),
    triangles: Uint32Array.from([0, 1, 2]),
  };
  expect(() => measuresOfBody(flat)).toThrow("a body without volume has no measures");
});

function fine(areaMm2: number[], islands = areaMm2.map(() => 1)) {
  return {
    areaMm2,
    perimeterMm: areaMm2.map((area) => 4 * Math.sqrt(area)),
    islands,
    holes: areaMm2.map(() => 0),
    corners: areaMm2.map(() => 4),
    thinnestMm: areaMm2.map((area) => Math.sqrt(area)),
  };
}

describe("fine cuts", () => {
  test("that are alike are one band, others are not", () => {
    expect(bandsOf(fine([100, 100, 100, 400]), 8).map(({ zMm, areaMm2 }) => [zMm, areaMm2])).toEqual([
      [6, 100],
      [8, 400],
    ]);
  });

  test("within 2 % of each other count as alike, at their mean and the thinnest of them", () => {
    expect(bandsOf(fine([100, 101]), 2)).toEqual([
      {
        zMm: 2,
        areaMm2: 100.5,
        perimeterMm: expect.closeTo(40.1, 2),
        islands: 1,
        holes: 0,
        corners: 4,
        thinnestMm: 10,
      },
    ]);
    expect(bandsOf(fine([100, 103]), 2)).toHaveLength(2);
  });

  test("with another island are a band of their own", () => {
    expect(bandsOf(fine([100, 100, 100], [1, 2, 1]), 3).map(({ islands }) => islands)).toEqual([1, 2, 1]);
  });

  test("that are all different still make at most 200 bands, and keep their volume", () => {
    const areas = Array.from({ length: 1000 }, (_, at) => 100 + 90 * Math.sin(at));
    const bands = bandsOf(fine(areas), 1000);
    expect(bands.length).toBeLessThanOrEqual(200);
    const volume = bands.reduce(
      (sum, { zMm, areaMm2 }, at) => sum + areaMm2 * (zMm - (bands[at - 1]?.zMm ?? 0)),
      0,
    );
    expect(volume / areas.reduce((sum, area) => sum + area, 0)).toBeCloseTo(1, 6);
  });

  test("that are empty between others have no thickness", () => {
    expect(
      bandsOf(fine([100, 0, 100], [1, 0, 1]), 3).map(({ areaMm2, thinnestMm }) => [areaMm2, thinnestMm]),
    ).toEqual([
      [100, 10],
      [0, 0],
      [100, 10],
    ]);
  });
});

test("of a part that names its directions only those are kept, and the overhang is still that of the body as read", () => {
  const tee = tShape();
  const named = measuresOfBody(tee, { orientations: ["-z", "x"] });
  expect(named.standings?.map(({ up }) => up)).toEqual(["-z", "x", "-x"]);
  expect(named.overhangAreaMm2).toBe(measuresOfBody(tee).overhangAreaMm2);
});
