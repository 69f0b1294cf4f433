import { describe, expect, test } from "vitest";
import { breakEvenOf, seekBreakEven } from "../../../core/purchase/break-even.ts";
import { withFeedstockPrice } from "../../../core/purchase/feedstock-price.ts";
import { aFeedstock, aShop } from "../../fixtures/a-route.ts";

function points(...values: [number, number][]): { factor: number; value: number }[] {
  return values.map(([factor, value]) => ({ factor, value }));
}

const linear = (factor: number): Promise<number> => Promise.resolve(12 * 2000 * factor - 18_000);

describe("the break-even of a value", () => {
  test("lies where the line between two points passes zero, in whatever order they come", () => {
    expect(breakEvenOf(points([1, 300], [0.5, -100]))).toMatchObject({ kind: "above", crossings: [0.625] });
    expect(breakEvenOf(points([0.5, 100], [1, -300]))).toMatchObject({ kind: "below", crossings: [0.625] });
  });

  test("is not there where every point gains, or every one loses; nothing gained counts as a gain", () => {
    expect(breakEvenOf(points([1, 0], [2, 5]))).toMatchObject({ kind: "always", crossings: [] });
    expect(breakEvenOf(points([1, -1], [2, -5]))).toMatchObject({ kind: "never", crossings: [] });
    expect(breakEvenOf(points([1, -1]))).toMatchObject({ kind: "never" });
  });

  test("is several where the value turns back", () => {
    const answer = breakEvenOf(points([0, -10], [1, 10], [2, -10]));
    expect(answer).toMatchObject({ kind: "several", crossings: [0.5, 1.5] });
  });

  test("of a machine that earns per hour and costs per year is fixed cost over contribution (closed form)", async () => {
    // 2000 h at 12 an hour against 18 000 a year: T* = 18 000 / 12 = 1500 h, three quarters of the demand.
    const answer = await seekBreakEven(linear, [0.5, 1, 1.5], 1);
    expect(answer.kind).toBe("above");
    expect(answer.crossings[0]).toBeCloseTo(0.75, 12);
  });

  test("comes closer to the true one with each evaluation where the works fills up, and never asks twice", async () => {
    const asked: number[] = [];
    const worth = (factor: number): Promise<number> => {
      asked.push(factor);
      return Promise.resolve(1 - Math.exp(-3 * factor) - 0.8);
    };
    const truth = -Math.log(0.2) / 3;
    const rough = await seekBreakEven(worth, [0, 2, 2], 0);
    const fine = await seekBreakEven(worth, [0, 2], 5);
    expect(Math.abs((rough.crossings[0] ?? 0) - truth)).toBeGreaterThan(0.1);
    expect(Math.abs((fine.crossings[0] ?? 0) - truth)).toBeLessThan(0.02);
    expect(asked).toHaveLength(2 + 2 + 5);
  });
});

test("feedstocks of one form change their price, the others and those without one do not", () => {
  const feedstocks = [
    aFeedstock({ id: "a", form: "filament", pricePerKg: 20 }),
    aFeedstock({ id: "b", form: "pellet", pricePerKg: 4 }),
    aFeedstock({ id: "c", form: "pellet", pricePerKg: null }),
  ];
  const prices = withFeedstockPrice(aShop({ feedstocks }), "pellet", 1.5).feedstocks.map(
    ({ pricePerKg }) => pricePerKg,
  );
  expect(prices).toEqual([20, 6, null]);
});
