import { expect, test } from "vitest";
import { cheapestSplit } from "../../../core/quote/build-split.ts";
import { seededRandom } from "../../../core/units/random.ts";

test("builds of 3 and 1 copies at 18 and 10 make 4 copies for 28", () => {
  expect(cheapestSplit([0, 10, 14, 18], 1, 4)).toEqual({
    sizes: [
      { copies: 3, builds: 1 },
      { copies: 1, builds: 1 },
    ],
    cost: 28,
  });
});

test("a quantity that no allowed builds add up to has no split, the next one has", () => {
  expect(cheapestSplit([0, 9, 9, 9], 2, 1)).toBeNull();
  expect(cheapestSplit([0, 9, 9], 2, 3)).toBeNull();
  expect(cheapestSplit([0, 9, 9], 2, 4)?.cost).toBe(18);
});

test("without a single build that fits there is no split, and none of 0 copies", () => {
  expect(cheapestSplit([0], 1, 3)).toBeNull();
  expect(cheapestSplit([0, 4], 1, 0)).toBeNull();
});

test("a million copies are divided at once, and all of them", () => {
  const costs = Float64Array.from({ length: 38 }, (_, copies) => (copies === 0 ? 0 : 5 + copies * 2));
  const split = cheapestSplit(costs, 1, 1_000_000);
  expect(split?.sizes.reduce((sum, { copies, builds }) => sum + copies * builds, 0)).toBe(1_000_000);
  expect(split?.cost).toBeCloseTo(2_000_000 + 5 * Math.ceil(1_000_000 / 37), 6);
});

/** Every way to add up to a quantity. */
function tried(costs: readonly number[], least: number, quantity: number): number {
  if (quantity === 0) return 0;
  let best = Infinity;
  for (let build = least; build < costs.length && build <= quantity; build++) {
    best = Math.min(best, costs[build]! + tried(costs, least, quantity - build));
  }
  return best;
}

test("on 200 random tables the split costs what trying every way gives", () => {
  const random = seededRandom(7);
  for (let round = 0; round < 200; round++) {
    const costs = [0, ...Array.from({ length: 1 + Math.floor(random() * 5) }, () => 1 + random() * 20)];
    const least = 1 + Math.floor(random() * 2);
    const quantity = 1 + Math.floor(random() * 11);
    const expected = tried(costs, least, quantity);
    const split = cheapestSplit(costs, least, quantity);
    if (expected === Infinity) expect(split).toBeNull();
    else expect(split?.cost).toBeCloseTo(expected, 9);
  }
});
