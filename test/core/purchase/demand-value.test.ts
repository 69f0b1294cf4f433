import { describe, expect, test } from "vitest";
import { breakEvenDemand, valueAtDemand } from "../../../core/purchase/demand-value.ts";
import { valueOf } from "../../../core/purchase/most-to-pay.ts";
import { aCandidate, aQuestion, someMoney } from "../../fixtures/some-weeks.ts";

/** A gain in proportion to demand. */
function proportional(perYear: number): { demandFactor: number; change: ReturnType<typeof someMoney> }[] {
  return [0.5, 1, 2].map((demandFactor) => ({
    demandFactor,
    change: someMoney({ revenue: perYear * demandFactor }),
  }));
}

describe("the value at other demands", () => {
  const question = aQuestion({ yearly: Array.from({ length: 4 }, () => someMoney({ revenue: 1000 })) });

  test("moves by the gain of every year", () => {
    const more = valueAtDemand(question, proportional(1000), 0, 2) - valueOf(question);
    expect(more).toBeCloseTo(1000 * ((1 - 1.1 ** -4) / 0.1), 8);
    expect(valueAtDemand(question, proportional(1000), 0, 1)).toBeCloseTo(valueOf(question), 9);
  });

  test("looks at each year from the demand it has grown to", () => {
    const yearly = [0, 1, 2, 3].map((year) => someMoney({ revenue: 1000 * 1.1 ** year }));
    const grown = aQuestion({ yearly });
    const half = valueAtDemand(grown, proportional(1000), 10, 0.5);
    expect(half + 1000).toBeCloseTo((valueOf(grown) + 1000) / 2, 8);
  });
});

test("with no demand at all nothing changes, whatever the year has beyond the points", () => {
  const yearly = [someMoney({ revenue: 1500 })];
  const question = aQuestion({ candidates: [aCandidate({ price: 0 })], yearly });
  const none = [{ demandFactor: 0, change: someMoney({}) }, ...proportional(1000)];
  expect(valueAtDemand(question, none, 0, 0)).toBeCloseTo(0, 9);
  expect(valueAtDemand(question, none, 0, 0.5)).toBeCloseTo(valueOf(question) / 2, 9);
});

describe("the break-even demand", () => {
  // A machine of 0 to buy, 18 000 a year to have, that earns 12 an hour in 2 000 h: T* = 1 500 h (closed form).
  const toy = aQuestion({
    candidates: [aCandidate({ price: 0 })],
    yearly: [someMoney({ revenue: 24_000 })],
    standingPerYear: -18_000,
  });

  test("is fixed cost over contribution, whatever the life and the rate", () => {
    for (const discountPctPerYear of [0, 8, 30]) {
      const financing = { discountPctPerYear, taxPct: 0, depreciation: "none" as const };
      const answer = breakEvenDemand({ ...toy, financing }, proportional(24_000), 0);
      expect(answer?.kind).toBe("above");
      expect(answer?.crossings[0]).toBeCloseTo(0.75, 9);
    }
  });

  test("is not known where fewer than two demands were worked out", () => {
    expect(breakEvenDemand(toy, [], 0)).toBeNull();
    expect(breakEvenDemand(toy, proportional(24_000).slice(0, 1), 0)).toBeNull();
  });

  test("goes down to no demand at all, at which only the fixed cost is left", () => {
    const [none] = breakEvenDemand(toy, proportional(24_000), 0)?.points ?? [];
    expect(none?.factor).toBe(0);
    expect(none?.value).toBeCloseTo(-18_000 * ((1 - 1.1 ** -4) / 0.1), 6);
  });
});
