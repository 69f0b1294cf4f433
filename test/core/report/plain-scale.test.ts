import { describe, expect, test } from "vitest";
import { amountUnit, plainScale } from "../../../core/report/plain-scale.ts";

describe("a plain scale", () => {
  test("goes from round number to round number and holds 0", () => {
    const { low, high, ticks, at } = plainScale([-30, 95], 5);
    expect([low, high, ticks]).toEqual([-40, 100, [-40, -20, 0, 20, 40, 60, 80, 100]]);
    expect([at(-40), at(0), at(100)]).toEqual([0, 40 / 140, 1]);
  });

  test.each([[[5, 9]], [[-5, -9]], [[0, 0]], [[]], [[-341_630, 213_165]], [[1e9]], [[0.003]]])(
    "%j: every value lies within, 0 is named, ticks rise",
    (values) => {
      const { low, high, ticks, at } = plainScale(values, 5);
      for (const value of [...values, 0]) {
        expect(at(value)).toBeGreaterThanOrEqual(0);
        expect(at(value)).toBeLessThanOrEqual(1);
      }
      expect(high).toBeGreaterThan(low);
      expect(ticks).toContain(0);
      expect(ticks.length).toBeLessThan(12);
      expect(ticks).toEqual(ticks.toSorted((a, b) => a - b));
    },
  );
});

describe("the unit of amounts", () => {
  test.each([
    [9_999, 1, "EUR"],
    [10_000, 1000, "thousand EUR"],
    [-10_000, 1000, "thousand EUR"],
    [9_999_999, 1000, "thousand EUR"],
    [10_000_000, 1_000_000, "million EUR"],
  ])("%d: %d", (value, divisor, words) => {
    expect(amountUnit([0, value], "EUR")).toEqual({ divisor, words });
  });
});
