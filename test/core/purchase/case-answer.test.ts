import { describe, expect, test } from "vitest";
import { answerCase, demandPoint } from "../../../core/purchase/case-answer.ts";
import { assumptionsOf, NOT_CONSIDERED, recommendation } from "../../../core/purchase/purchase-words.ts";
import type { PurchaseChange } from "../../../core/shop/purchase-change.ts";
import { aCase } from "../../fixtures/a-case.ts";
import { aCosting, aMachine, aShop } from "../../fixtures/a-route.ts";
import { aCandidate, someMoney, someWeeks } from "../../fixtures/some-weeks.ts";

const shop = aShop({
  costing: aCosting({ floorPerM2Year: 100 }),
  machines: [
    aMachine({
      hourRate: {
        purchasePrice: 1000,
        residualValue: 0,
        lifeYears: 4,
        floorM2: 1,
        powerKW: 0,
        maintenancePctPerYear: 5,
        plannedHoursPerYear: 1000,
      },
    }),
  ],
});
const alike: PurchaseChange = { kind: "add-alike", alike: "F1", id: "F2", name: "Second" };
const candidate = aCandidate({ changes: [alike] });
const purchaseCase = aCase({ candidates: [candidate] });

/** Saves so much late cost in each week. */
function saving(...perWeek: number[]): Parameters<typeof answerCase>[3] {
  return {
    without: perWeek.map((late) => someWeeks(52, { lateCost: late })),
    withIt: perWeek.map(() => someWeeks(52)),
    points: [],
  };
}

describe("a candidate judged by its weeks", () => {
  test("gains what its weeks save, less the floor and maintenance of what it adds", () => {
    const { flow } = answerCase(shop, purchaseCase, [candidate], saving(10));
    expect(flow.total).toEqual([-1000, 370, 370, 370, 370]);
    expect(flow.rows.find(({ name }) => name === "standing")?.byYear[1]).toBe(-150);
  });

  test("is no longer charged the floor of a machine that is sold, and pays the shift that is added", () => {
    const sale: PurchaseChange = { kind: "sell-machine", machineId: "F1", proceeds: 100 };
    const shift = { days: [1], start: "14:00", end: "16:00", operators: 1 };
    const added: PurchaseChange = {
      kind: "add-shift",
      calendarId: "day",
      shift,
      premiumPct: 0,
      otherWorkPct: 0,
    };
    const own = aCandidate({ price: 0, changes: [sale, added], lifeYears: 1 });
    const { flow } = answerCase(shop, aCase({ candidates: [own] }), [own], saving(0));
    expect(flow.total).toEqual([100, 150 - 52 * 2 * 36]);
  });

  test("has as its value the mean of the values of its scenarios", () => {
    const { answer, distribution } = answerCase(shop, purchaseCase, [candidate], saving(0, 5, 10, 40));
    expect(distribution.count).toBe(4);
    expect(answer.netPresentValue).toBeCloseTo(distribution.mean, 8);
    expect(distribution.lossChance).toBe(0.5);
  });

  test("that can make nothing is worth minus its price, and what its floor costs", () => {
    const floorless = { ...shop, costing: { ...shop.costing, floorPerM2Year: 0 } };
    const idle = aCandidate({ changes: [], price: 700 });
    expect(answerCase(floorless, aCase(), [idle], saving(0)).answer.netPresentValue).toBe(-700);
  });

  test("grows with demand along the points that were worked out", () => {
    const points = [1, 1.1].map((demandFactor) => ({
      demandFactor,
      change: someMoney({ late: 1000 * demandFactor }),
    }));
    const growing = aCase({ candidates: [candidate], growthPctPerYear: 10 });
    const { flow } = answerCase(shop, growing, [candidate], { ...saving(10), points });
    expect(flow.total[1]).toBeCloseTo(370, 9);
    expect(flow.total[2]).toBeCloseTo(470, 9);
    expect(flow.total[4]).toBeCloseTo(470, 9);
  });

  test("is refused without the same scenarios on both sides: that is a mistake of the program", () => {
    const { without } = saving(1, 2);
    expect(() => answerCase(shop, purchaseCase, [candidate], { without, withIt: [], points: [] })).toThrow(
      RangeError,
    );
    expect(() =>
      answerCase(shop, purchaseCase, [candidate], { without: [], withIt: [], points: [] }),
    ).toThrow(RangeError);
  });

  test("gives a point at a demand: the mean change of the first year", () => {
    const point = demandPoint(1.25, saving(10, 30));
    expect(point.demandFactor).toBe(1.25);
    expect(point.change.late).toBe(52 * 20);
  });
});

const money = (amount: number): string => `${Math.round(amount)} EUR`;

const at = (kind: "above" | "below", crossing: number): Parameters<typeof recommendation>[0]["demand"] => ({
  kind,
  crossings: [crossing],
  points: [],
});

const say = (late: number[], overrides: Partial<Parameters<typeof recommendation>[0]> = {}): string =>
  recommendation(
    {
      names: ["Second"],
      answer: answerCase(shop, purchaseCase, [candidate], saving(...late)),
      demand: null,
      makesNothing: false,
      ...overrides,
    },
    purchaseCase,
    money,
  );

describe("the recommendation", () => {
  test("takes what gains, with its condition", () => {
    expect(say([20], { demand: at("above", 0.823) })).toMatch(
      /^Take Second: over 4 years at 8 % it is worth \d+ EUR more than it costs, as long as demand stays above 82 % of what is expected\.$/,
    );
  });

  test("leaves what loses, and says from where on it would pay", () => {
    expect(say([5], { demand: at("above", 1.4) })).toMatch(
      /^Leave Second: .* it would pay from 140 % of what is expected on\.$/,
    );
  });

  test("names the range of scenarios, and doubts what loses in many of them", () => {
    expect(say([20, 21])).toContain("in the middle 8 of 10 scenarios");
    expect(say([0, 0, 60])).toMatch(/^Think twice about Second: .*; it loses in 67 of 100 scenarios\.$/);
  });

  test("says so of what can make nothing", () => {
    expect(say([0], { makesNothing: true })).toMatch(
      /^Leave Second: it can make nothing that is ordered, so .* loses \d+ EUR\.$/,
    );
  });

  test("says when no demand looked at changes the answer, or several do", () => {
    const points = [
      { factor: 0.5, value: 1 },
      { factor: 1.5, value: 1 },
    ];
    const span = "from 50 to 150 % of what is expected";
    expect(say([20], { demand: { kind: "always", crossings: [], points } })).toContain(
      `whatever demand is ${span}`,
    );
    expect(say([1], { demand: { kind: "never", crossings: [], points } })).toContain(
      `does not pay at any demand ${span}`,
    );
    expect(say([20], { demand: { kind: "several", crossings: [0.6, 1.2], points } })).toContain(
      "at 60 % and 120 %",
    );
  });

  test("goes with what it rests on: interest is counted once, and who decides about nights is said", () => {
    const text = assumptionsOf(purchaseCase).join(" ");
    expect(text).toContain("depreciation and imputed interest are left out");
    expect(text).toContain("seed 1");
    expect(assumptionsOf(aCase({ growthPctPerYear: 5 })).join(" ")).toContain("follow growth");
    expect(NOT_CONSIDERED.join(" ")).toContain("qualified people");
  });
});
