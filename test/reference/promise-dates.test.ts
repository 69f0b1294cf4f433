import { describe, expect, test } from "vitest";
import { availableToPromise } from "../../core/quote/available-to-promise.ts";
import {
  lognormalMeanExcess,
  lognormalOf,
  lognormalQuantile,
  lognormalShareBelow,
  lognormalSum,
} from "../../core/quote/lognormal-law.ts";
import { normalQuantile, normalShareBelow } from "../../core/quote/normal-law.ts";
import { likelihoodError, sampleQuantile } from "../../core/quote/sample-quantile.ts";
import { threePointMoments } from "../../core/quote/three-point.ts";
import { seededRandom } from "../../core/units/random.ts";

describe("the normal law", () => {
  test.each([
    [0.8, 0.841621],
    [0.9, 1.281552],
    [0.95, 1.644854],
    [0.975, 1.959964],
    [0.99, 2.326348],
  ])("has its quantile of %d at %d (printed tables, from memory)", (share, z) => {
    expect(normalQuantile(share)).toBeCloseTo(z, 6);
    expect(normalShareBelow(z)).toBeCloseTo(share, 6);
    expect(normalQuantile(1 - share)).toBeCloseTo(-z, 6);
  });

  test("gives back every share, far tails too", () => {
    for (const share of [1e-12, 1e-6, 0.001, 0.3, 0.5, 0.7, 0.999, 1 - 1e-6]) {
      expect(Math.abs(normalShareBelow(normalQuantile(share)) / share - 1)).toBeLessThan(1e-3);
    }
  });

  test("has no quantile at 0, at 1 and beyond", () => {
    for (const share of [0, 1, -0.1, 1.1, Number.NaN])
      expect(() => normalQuantile(share)).toThrow(RangeError);
  });
});

describe("the lognormal law of mean 20 h and variation 0.3 (own instance, recomputed)", () => {
  const law = lognormalOf(20, 0.3);

  test("has mu 2.952643 and sigma 0.293560", () => {
    expect(law.mu).toBeCloseTo(2.952643, 6);
    expect(law.sigma).toBeCloseTo(0.29356, 6);
  });

  test.each([
    [0.5, 19.1565],
    [0.8, 24.5254],
    [0.9, 27.9064],
    [0.95, 31.0472],
  ])("is kept with likelihood %d by %d h", (likelihood, hours) => {
    expect(Math.abs(lognormalQuantile(law, likelihood) - hours)).toBeLessThan(2e-4);
  });

  test("is over within 24 h with 0.7787 and takes 0.6756 h beyond 26 h on average", () => {
    expect(lognormalShareBelow(law, 24)).toBeCloseTo(0.7787, 4);
    expect(lognormalMeanExcess(law, 26)).toBeCloseTo(0.6756, 4);
  });

  test("quotes at the critical fractile: 60 a late hour, 5 an early one, level 0.923077, 29.116 h", () => {
    expect(lognormalQuantile(law, 60 / 65)).toBeCloseTo(29.116, 3);
  });

  test("is never over before 0 h, and exceeds 0 h by its whole mean", () => {
    expect(lognormalShareBelow(law, 0)).toBe(0);
    expect(lognormalMeanExcess(law, 0)).toBeCloseTo(20, 9);
  });
});

describe("the sum of lognormal times (Fenton 1960, from memory)", () => {
  test("keeps mean and variance", () => {
    const sum = lognormalSum([lognormalOf(20, 0.3), lognormalOf(20, 0.3)]);
    const expected = lognormalOf(40, 0.3 / Math.SQRT2);
    expect(sum.mu).toBeCloseTo(expected.mu, 12);
    expect(sum.sigma).toBeCloseTo(expected.sigma, 12);
  });

  test("has its 90 % quantile within 1 % of 200 000 drawn sums", () => {
    const laws = [lognormalOf(5, 0.3), lognormalOf(8, 0.2), lognormalOf(3, 0.5)];
    const random = seededRandom(7);
    const drawn = Float64Array.from({ length: 200_000 }, () =>
      laws.reduce((sum, law) => sum + lognormalQuantile(law, random() || 0.5), 0),
    ).toSorted();
    const simulated = sampleQuantile(drawn, 0.9);
    expect(Math.abs(lognormalQuantile(lognormalSum(laws), 0.9) / simulated - 1)).toBeLessThan(0.01);
  });
});

describe("three points", () => {
  test("2, 3 and 10 give mean 4 and variance 1.7778; a path of 44 with variance 9 keeps 47 with 0.841345 (Hillier and Lieberman, project example, from memory)", () => {
    const { mean, variance } = threePointMoments({ least: 2, likely: 3, most: 10 });
    expect(mean).toBe(4);
    expect(variance).toBeCloseTo(1.7778, 4);
    expect(normalShareBelow((47 - 44) / 3)).toBeCloseTo(0.841345, 6);
  });

  test("out of order have no mean", () => {
    expect(() => threePointMoments({ least: 3, likely: 2, most: 10 })).toThrow(RangeError);
  });
});

describe("quantiles of a sample", () => {
  test("interpolate by type 7: 1, 2, 3, 4, 10 at 0.9 give 7.6 (Hyndman and Fan 1996, from memory)", () => {
    expect(sampleQuantile([1, 2, 3, 4, 10], 0.9)).toBeCloseTo(7.6, 12);
    expect(sampleQuantile([1, 2, 3, 4, 10], 0)).toBe(1);
    expect(sampleQuantile([1, 2, 3, 4, 10], 1)).toBe(10);
  });

  test("of nothing do not exist", () => {
    expect(() => sampleQuantile([], 0.5)).toThrow(RangeError);
  });

  test("of 2000 runs know a likelihood of 0.9 within 0.0067", () => {
    expect(likelihoodError(0.9, 2000)).toBeCloseTo(0.0067, 4);
  });
});

describe("available to promise", () => {
  test("64 in stock, orders 33 20 10 4 2, 70 made in periods 3, 5, 7, 8: 11, 56, 68, 70, 70 (Stevenson, from memory)", () => {
    const ordered = [33, 20, 10, 4, 2, 0, 0, 0];
    const made = [0, 0, 70, 0, 70, 0, 70, 70];
    expect(availableToPromise(64, ordered, made)).toEqual([11, null, 56, null, 68, null, 70, 70]);
  });

  test("takes what one make cannot cover from the make before it, and says what is short in the first period", () => {
    expect(availableToPromise(10, [0, 0, 30], [5, 20, 0])).toEqual([5, 0, null]);
    expect(availableToPromise(10, [40, 0], [5, 5])).toEqual([-25, 5]);
  });
});
