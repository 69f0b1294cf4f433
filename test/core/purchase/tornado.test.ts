import { describe, expect, test } from "vitest";
import { distributionOf } from "../../../core/purchase/distribution.ts";
import { valueOf } from "../../../core/purchase/most-to-pay.ts";
import { tornadoOf, type TornadoBar, type TornadoInput } from "../../../core/purchase/tornado.ts";
import { aCandidate, aQuestion, someMoney } from "../../fixtures/some-weeks.ts";

function bar(bars: readonly TornadoBar[], input: TornadoInput): TornadoBar | undefined {
  return bars.find((own) => own.input === input);
}

describe("the tornado", () => {
  const question = aQuestion({
    yearly: [someMoney({ revenue: 300, feedstock: 150, labour: -20, late: -30 })],
    candidates: [aCandidate({ residualValue: 100 })],
  });
  const bars = tornadoOf(question, [], 0);

  test("moves the value by the price paid at the start, one for one", () => {
    const price = bar(bars, "price");
    expect(price?.low.value).toBeCloseTo(valueOf(question) + 200, 9);
    expect(price?.high.value).toBeCloseTo(valueOf(question) - 200, 9);
  });

  test("has the widest bar first, and no bar of what does not matter", () => {
    const spreads = bars.map(({ spread }) => spread);
    expect(spreads).toEqual(spreads.toSorted((a, b) => b - a));
    expect(bar(bars, "boughtOutPrices")).toBeUndefined();
    expect(bar(bars, "energy")).toBeUndefined();
    expect(bars.every(({ spread }) => spread > 0)).toBe(true);
  });

  test("changes one input alone: part prices by a tenth are a tenth of the revenue over the life", () => {
    const annuity = (valueOf(aQuestion({ yearly: [someMoney({ revenue: 1 })] })) + 1000) / 1;
    expect(bar(bars, "partPrices")?.spread).toBeCloseTo(0.2 * 300 * annuity, 6);
    expect(bar(bars, "feedstockPrices")?.spread).toBeCloseTo(0.4 * 150 * annuity, 6);
  });

  test("names life in years and the discount rate in % per year", () => {
    expect(bar(bars, "life")).toMatchObject({ unit: "years", low: { at: 3 }, high: { at: 5 } });
    expect(bar(bars, "discountRate")).toMatchObject({ unit: "pctPerYear", low: { at: 7 }, high: { at: 13 } });
    expect((bar(bars, "discountRate")?.low.value ?? 0) > (bar(bars, "discountRate")?.high.value ?? 0)).toBe(
      true,
    );
  });

  test("keeps a life of at least one year, and a rate above -100 %", () => {
    const short = aQuestion({
      candidates: [aCandidate({ lifeYears: 1 })],
      financing: { discountPctPerYear: -98, taxPct: 0, depreciation: "none" },
    });
    const own = tornadoOf(short, [], 0);
    expect(bar(own, "life")?.low.at).toBe(1);
    expect(bar(own, "discountRate")?.low.at).toBe(-99);
  });

  test("has demand only where other demands were worked out, and reads it from them", () => {
    const points = [0.8, 1, 1.2].map((demandFactor) => ({
      demandFactor,
      change: someMoney({ revenue: 1000 * demandFactor }),
    }));
    const annuity = valueOf(aQuestion({ yearly: [someMoney({ revenue: 1 })] })) + 1000;
    expect(bar(bars, "demand")).toBeUndefined();
    const asPoints = aQuestion({ yearly: Array.from({ length: 4 }, () => someMoney({ revenue: 1000 })) });
    expect(bar(tornadoOf(asPoints, points, 0), "demand")?.spread).toBeCloseTo(200 * annuity, 6);
  });
});

describe("the distribution of a value", () => {
  test("has quantiles, mean and the share of losses; 0 is no loss", () => {
    const answer = distributionOf([20, -10, 0, 30, 10]);
    expect(answer).toMatchObject({ count: 5, mean: 10, p50: 10, lossChance: 0.2 });
    expect(answer.p10).toBeCloseTo(-6, 12);
    expect(answer.p90).toBeCloseTo(26, 12);
    // Sample standard deviation 15.811, over the root of 5.
    expect(answer.meanError).toBeCloseTo(7.0710678, 6);
    expect(answer.lossChanceError).toBeCloseTo(Math.sqrt(0.16 / 5), 12);
  });

  test("of one scenario claims no error of the mean that it cannot know, and of none does not exist", () => {
    expect(distributionOf([4])).toMatchObject({ p10: 4, p90: 4, meanError: 0 });
    expect(() => distributionOf([])).toThrow(RangeError);
  });
});
