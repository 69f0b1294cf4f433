import { describe, expect, test } from "vitest";
import { packPlatform } from "../../../../core/plan/packing/platform-packing.ts";
import type { PlacedPiece, Size } from "../../../../core/plan/packing/packing-task.ts";
import { seededRandom } from "../../../../core/units/random.ts";

describe("pieces that fit", () => {
  test("no pieces have no places", () => {
    expect(packPlatform([], { x: 10, y: 10 }, 5)).toEqual([]);
  });

  test("one piece as large as the platform needs no gap to the edge", () => {
    expect(packPlatform([{ x: 240, y: 200 }], { x: 240, y: 200 }, 5)).toEqual([
      { x: 0, y: 0, turned: false },
    ]);
  });

  test("one piece that fits only turned is turned", () => {
    expect(packPlatform([{ x: 200, y: 240 }], { x: 240, y: 200 }, 5)).toEqual([{ x: 0, y: 0, turned: true }]);
  });

  test("two pieces with the gap between them, below, at and above the room for it", () => {
    const pieces = [
      { x: 60, y: 40 },
      { x: 60, y: 40 },
    ];
    expect(packPlatform(pieces, { x: 124.9, y: 40 }, 5)).toBeNull();
    expectPacked(pieces, { x: 125, y: 40 }, 5);
    expectPacked(pieces, { x: 125.1, y: 40 }, 5);
  });

  test("a full grid of equal pieces, whichever way it has to be turned", () => {
    const grid = Array.from({ length: 35 }, () => ({ x: 40, y: 30 }));
    expectPacked(grid, { x: 220, y: 240 }, 5);
    expectPacked(grid, { x: 240, y: 220 }, 5);
    expect(packPlatform([...grid, { x: 40, y: 30 }], { x: 220, y: 240 }, 5)).toBeNull();
  });

  test("a pinwheel of four around a hole, which neither rows nor columns can hold", () => {
    const pieces = [
      { x: 6, y: 4 },
      { x: 6, y: 4 },
      { x: 6, y: 4 },
      { x: 6, y: 4 },
      { x: 2, y: 2 },
    ];
    expectPacked(pieces, { x: 10, y: 10 }, 0);
  });

  test("thirds of a millimetre fill a platform in spite of floating-point dust", () => {
    expectPacked(
      Array.from({ length: 9 }, () => ({ x: 10 / 3, y: 10 / 3 })),
      { x: 10, y: 10 },
      0,
    );
  });
});

describe("pieces that do not fit", () => {
  test("one piece too long in both ways", () => {
    expect(packPlatform([{ x: 241, y: 10 }], { x: 240, y: 200 }, 5)).toBeNull();
  });

  test("more area than the platform has", () => {
    const pieces = Array.from({ length: 5 }, () => ({ x: 5, y: 5 }));
    expect(packPlatform(pieces, { x: 10, y: 10 }, 0)).toBeNull();
  });

  test("enough area but no arrangement: two squares of 6 on 10 x 10", () => {
    const pieces = [
      { x: 6, y: 6 },
      { x: 6, y: 6 },
    ];
    expect(packPlatform(pieces, { x: 10, y: 10 }, 0)).toBeNull();
  });
});

describe("laws on 400 seeded platforms", () => {
  const random = seededRandom(20_261_130);
  const side = (longest: number): number => Math.round(longest * (0.05 + 0.95 * random()) * 10) / 10;
  const cases = Array.from({ length: 400 }, () => {
    const platform = { x: 100 + side(200), y: 100 + side(200) };
    const pieces = Array.from({ length: 1 + Math.floor(random() * 14) }, () => ({
      x: side(110),
      y: side(110),
    }));
    return { pieces, platform, gapMm: random() < 0.3 ? 0 : side(10) };
  });

  test("places lie inside, pieces keep their gap, and some of the cases fit and some do not", () => {
    const found = cases.map(({ pieces, platform, gapMm }) => {
      const places = packPlatform(pieces, platform, gapMm);
      if (places) expectValid(pieces, places, platform, gapMm);
      return places !== null;
    });
    expect(found.filter(Boolean).length).toBeGreaterThan(100);
    expect(found.filter((fits) => !fits).length).toBeGreaterThan(50);
  });

  test("the order and the turn in which pieces are given do not matter", () => {
    for (const { pieces, platform, gapMm } of cases.slice(0, 150)) {
      const fits = packPlatform(pieces, platform, gapMm) !== null;
      const other = pieces
        .toReversed()
        .map(({ x, y }, index) => (index % 2 === 0 ? { x: y, y: x } : { x, y }));
      expect(packPlatform(other, platform, gapMm) !== null).toBe(fits);
    }
  });

  test("four or five pieces cut from a platform by straight cuts, with nothing to spare, always fit it again", () => {
    for (let round = 0; round < 60; round++) {
      expectPacked(cutUp({ x: 200, y: 160 }, 4 + (round % 2), random), { x: 200, y: 160 }, 0);
    }
  });
});

/** Cuts a platform into so many pieces, always the largest one across its longer side. */
function cutUp(platform: Size, count: number, random: () => number): Size[] {
  const pieces = [platform];
  while (pieces.length < count) {
    pieces.sort((a, b) => b.x * b.y - a.x * a.y);
    const { x, y } = pieces.shift() ?? platform;
    const share = 0.3 + 0.4 * random();
    if (x >= y) pieces.push({ x: x * share, y }, { x: x * (1 - share), y });
    else pieces.push({ x, y: y * share }, { x, y: y * (1 - share) });
  }
  return pieces;
}

function expectPacked(pieces: readonly Size[], platform: Size, gapMm: number): void {
  const places = packPlatform(pieces, platform, gapMm);
  expect(places).not.toBeNull();
  expectValid(pieces, places ?? [], platform, gapMm);
}

/** Judged with nothing of the packing itself: inside the platform, and apart by the gap in x or in y. */
function expectValid(
  pieces: readonly Size[],
  places: readonly PlacedPiece[],
  platform: Size,
  gapMm: number,
): void {
  const dust = 1e-4;
  expect(places.length).toBe(pieces.length);
  const boxes = places.map(({ x, y, turned }, index) => {
    const size = pieces[index] ?? { x: 0, y: 0 };
    return { left: x, low: y, right: x + (turned ? size.y : size.x), high: y + (turned ? size.x : size.y) };
  });
  for (const [index, a] of boxes.entries()) {
    expect(Math.min(a.left, a.low)).toBeGreaterThanOrEqual(-dust);
    expect(a.right).toBeLessThanOrEqual(platform.x + dust);
    expect(a.high).toBeLessThanOrEqual(platform.y + dust);
    for (const b of boxes.slice(0, index)) {
      const apart = Math.max(a.left - b.right, b.left - a.right, a.low - b.high, b.low - a.high);
      expect(apart).toBeGreaterThanOrEqual(gapMm - dust);
    }
  }
}
