import { describe, expect, test } from "vitest";
import { largestLine, lineSizes, meanBuildCopies } from "../../../core/purchase/line-sizes.ts";

describe("sizes of order lines", () => {
  test("are counted by part and quantity, in order", () => {
    const lines = [
      { partId: "b", quantity: 8 },
      { partId: "a", quantity: 5 },
      { partId: "b", quantity: 5 },
      { partId: "b", quantity: 8, lines: 0.5 },
    ];
    expect(lineSizes(lines)).toEqual([
      { partId: "a", sizes: [{ quantity: 5, lines: 1 }] },
      {
        partId: "b",
        sizes: [
          { quantity: 5, lines: 1 },
          { quantity: 8, lines: 1.5 },
        ],
      },
    ]);
  });
});

describe("copies in a mean build", () => {
  const sizes = {
    partId: "a",
    sizes: [
      { quantity: 5, lines: 1 },
      { quantity: 45, lines: 1 },
    ],
  };

  test("are all copies over the builds of lines that do not share any", () => {
    expect(meanBuildCopies(sizes, 1, 40)).toBeCloseTo(50 / 3, 12);
    expect(meanBuildCopies(sizes, 1, 45)).toBe(25);
    expect(meanBuildCopies(sizes, 1, 1)).toBe(1);
  });

  test("leave out lines that are too small for a build", () => {
    expect(meanBuildCopies(sizes, 6, 45)).toBe(45);
    expect(meanBuildCopies(sizes, 46, 50)).toBe(0);
  });

  test("the largest line is the last", () => {
    expect(largestLine(sizes)).toBe(45);
  });
});
