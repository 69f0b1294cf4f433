import { expect, test } from "vitest";
import { countOf } from "../../../../core/plan/bound/whole-builds.ts";

const TWENTY_BY_FIFTEEN = { row: 0, most: 15, rest: 5 };

test("a build counts in part below the rest, wholly from the rest to the size", () => {
  const counts = [1, 3, 5, 6, 15].map((copies) => countOf(TWENTY_BY_FIFTEEN, copies));
  expect(counts).toEqual([0.2, 0.6, 1, 1, 1]);
});

test("every way to build a quantity reaches the count that is needed", () => {
  for (let quantity = 2; quantity <= 24; quantity++) {
    for (let most = 2; most < quantity; most++) {
      if (quantity % most === 0) continue;
      const whole = { row: 0, most, rest: quantity % most };
      expect(leastCount(quantity, (copies) => countOf(whole, copies))).toBeGreaterThanOrEqual(
        Math.ceil(quantity / most) - 1e-9,
      );
    }
  }
});

/** Least sum of counts over all ways to add builds up to the quantity. */
function leastCount(quantity: number, count: (copies: number) => number): number {
  const least = [0];
  for (let total = 1; total <= quantity; total++) {
    const sums = Array.from({ length: total }, (_, at) => least[total - at - 1]! + count(at + 1));
    least.push(Math.min(...sums));
  }
  return least[quantity]!;
}
