import { array, assert, boolean, constantFrom, double, integer, property, record } from "fast-check";
import { describe, expect, test } from "vitest";
import { answerCase } from "../../core/purchase/case-answer.ts";
import { CASH_ROWS, cashFlow, type CashQuestion } from "../../core/purchase/cash-flow.ts";
import { demandOf } from "../../core/purchase/demand.ts";
import { valueOf } from "../../core/purchase/most-to-pay.ts";
import { netPresentValue } from "../../core/purchase/present-value.ts";
import { makeScenarios } from "../../core/purchase/scenarios.ts";
import type { Candidate } from "../../core/shop/purchase-case.ts";
import { aCase } from "../fixtures/a-case.ts";
import { aShop } from "../fixtures/a-route.ts";
import { aCandidate, someMoney, someWeeks } from "../fixtures/some-weeks.ts";

const money = (max: number) => double({ min: 0, max, noNaN: true });

const candidate = record({
  price: money(1e6),
  installation: money(1e5),
  training: money(1e4),
  yearlyCost: money(1e4),
  residualValue: money(1e5),
  lifeYears: integer({ min: 1, max: 15 }),
  sale: boolean(),
}).map(({ sale, ...own }): Candidate => {
  const changes = [
    { kind: "sell-machine" as const, machineId: "F1", proceeds: 500, bookValue: 300, laterValue: 20 },
  ];
  return aCandidate({ ...own, changes: sale ? changes : [] });
});

const year = record({ revenue: money(1e6), feedstock: money(1e5), late: money(1e5) }).map(
  ({ revenue, feedstock, late }) => someMoney({ revenue, feedstock: -feedstock, late: late - 5e4 }),
);

/** Any candidates at any rates; `lowestRatePct` says from where on. */
const questionFrom = (lowestRatePct: number) =>
  record({
    candidates: array(candidate, { minLength: 1, maxLength: 3 }),
    yearly: array(year, { minLength: 1, maxLength: 4 }),
    financing: record({
      discountPctPerYear: double({ min: lowestRatePct, max: 99, noNaN: true }),
      taxPct: double({ min: 0, max: 99, noNaN: true }),
      depreciation: constantFrom("none" as const, "straight-line" as const),
    }),
    standingPerYear: double({ min: -1e5, max: 1e5, noNaN: true }),
    wagesPerYear: double({ min: -1e5, max: 0, noNaN: true }),
  });

const RUNS = { seed: 20_261_125, numRuns: 300 };

/** Adding up in another order leaves the last digits open. */
function near(one: number, other: number, size: number): void {
  expect(Math.abs(one - other)).toBeLessThanOrEqual(1e-9 * Math.max(1, size));
}

function sizeOf({ rows }: ReturnType<typeof cashFlow>): number {
  return Math.max(...rows.flatMap(({ byYear }) => byYear.map(Math.abs)));
}

describe("a table of cash", () => {
  test("adds up: its rows give its total in every year, and each row stands in it once", () => {
    assert(
      property(questionFrom(-50), (question) => {
        const flow = cashFlow(question);
        expect(flow.rows.map(({ name }) => name)).toEqual(CASH_ROWS);
        for (const [at, total] of flow.total.entries()) {
          const sum = flow.rows.reduce((all, { byYear }) => all + (byYear[at] ?? Number.NaN), 0);
          near(sum, total, sizeOf(flow));
        }
      }),
      RUNS,
    );
  });

  test("is worth what its rows are worth together", () => {
    assert(
      property(questionFrom(-20), (question) => {
        const flow = cashFlow(question);
        const rate = question.financing.discountPctPerYear / 100;
        const byRow = flow.rows.map(({ byYear }) => netPresentValue(byYear, rate));
        const size = byRow.reduce((sum, value) => sum + Math.abs(value), 0);
        near(
          byRow.reduce((sum, value) => sum + value, 0),
          valueOf(question),
          size,
        );
      }),
      RUNS,
    );
  });
});

const doubled = (
  question: CashQuestion,
  field: "price" | "installation" | "training" | "yearlyCost",
): CashQuestion => ({
  ...question,
  candidates: question.candidates.map((own) => ({ ...own, [field]: 2 * own[field] })),
});

describe("doubling what is paid", () => {
  test.each(["price", "installation", "training", "yearlyCost"] as const)(
    "of the %s never raises the net present value, at rates of 0 and above, with any tax and depreciation",
    (field) => {
      assert(
        property(questionFrom(0), (question) => {
          const value = valueOf(question);
          const size = sizeOf(cashFlow(question)) * 20;
          expect(valueOf(doubled(question, field))).toBeLessThanOrEqual(value + 1e-9 * Math.max(1, size));
        }),
        RUNS,
      );
    },
  );
});

test("the value of the mean scenario is the mean of the values: nothing is counted twice or lost between them", () => {
  const scenario = record({ late: money(500), revenue: money(900), bought: money(200) });
  assert(
    property(array(scenario, { minLength: 1, maxLength: 6 }), candidate, (scenarios, own) => {
      const results = {
        without: scenarios.map(({ late }) => someWeeks(52, { lateCost: late })),
        withIt: scenarios.map(({ revenue, bought }) => someWeeks(52, { revenue, boughtOutCost: bought })),
        points: [],
      };
      const { answer, distribution, flow } = answerCase(aShop(), aCase(), [own], results);
      near(answer.netPresentValue, distribution.mean, sizeOf(flow) * 20);
      expect(distribution.p10).toBeLessThanOrEqual(distribution.p50);
      expect(distribution.p50).toBeLessThanOrEqual(distribution.p90);
    }),
    { seed: 7, numRuns: 60 },
  );
});

describe("scenarios", () => {
  const rows = record({
    day: integer({ min: 0, max: 400 }),
    quantity: integer({ min: 1, max: 500 }),
  }).map(({ day, quantity }) => ({
    dueOn: new Date(Date.UTC(2025, 5, 1 + day)).toISOString().slice(0, 10),
    partId: "clip",
    quantity,
  }));
  const drawn = record({
    history: array(rows, { minLength: 1, maxLength: 40 }),
    seed: integer({ min: 0, max: 2 ** 31 }),
    growthPctPerYear: integer({ min: -50, max: 100 }),
    weeks: integer({ min: 1, max: 20 }),
    factor: double({ min: 0, max: 3, noNaN: true }),
  });

  test("of equal seeds are equal, whatever else is drawn beside them", () => {
    assert(
      property(drawn, ({ history, seed, growthPctPerYear, weeks, factor }) => {
        const purchaseCase = aCase({
          demand: { kind: "rows", rows: history },
          seed,
          growthPctPerYear,
          weeks,
        });
        const demand = demandOf(aShop(), purchaseCase, new Map());
        const three = makeScenarios(demand, purchaseCase, 3, factor);
        const longer = makeScenarios(demand, { ...purchaseCase, weeks: weeks + 5 }, 5, factor);
        expect(makeScenarios(demand, purchaseCase, 3, factor)).toEqual(three);
        expect(longer.slice(0, 3).map((own) => own.weeks.slice(0, weeks))).toEqual(
          three.map((own) => own.weeks),
        );
        expect(JSON.parse(JSON.stringify(three))).toEqual(three);
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  test("hold whole orders of the past only, and more of them when demand is larger", () => {
    assert(
      property(drawn, ({ history, seed, growthPctPerYear, weeks, factor }) => {
        const purchaseCase = aCase({
          demand: { kind: "rows", rows: history },
          seed,
          growthPctPerYear,
          weeks,
        });
        const demand = demandOf(aShop(), purchaseCase, new Map());
        const known = new Set(history.map(({ quantity }) => quantity));
        const count = (by: number): number =>
          makeScenarios(demand, purchaseCase, 1, by).reduce(
            (sum, own) => sum + own.weeks.reduce((all, { lines }) => all + lines.length, 0),
            0,
          );
        for (const own of makeScenarios(demand, purchaseCase, 2, factor)) {
          for (const { lines } of own.weeks)
            expect(lines.every(({ quantity }) => known.has(quantity))).toBe(true);
        }
        expect(count(2 * factor)).toBeGreaterThanOrEqual(count(factor));
      }),
      { seed: 4, numRuns: 60 },
    );
  });
});
