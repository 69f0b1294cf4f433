import { describe, expect, test } from "vitest";
import { answerOf } from "../../../core/purchase/answer.ts";
import { cashFlow, type CashFlow, type CashRowName } from "../../../core/purchase/cash-flow.ts";
import { mostToPay, valueOf } from "../../../core/purchase/most-to-pay.ts";
import { aCandidate, aQuestion, someMoney } from "../../fixtures/some-weeks.ts";

function row(flow: CashFlow, name: CashRowName): readonly number[] {
  return flow.rows.find((own) => own.name === name)?.byYear ?? [];
}

describe("cash by year", () => {
  test("is the price, then the running gain of each year", () => {
    expect(cashFlow(aQuestion()).total).toEqual([-1000, 400, 400, 400, 400]);
  });

  test("holds installation and training at the start, yearly costs each year, the residual at the end", () => {
    const candidates = [aCandidate({ installation: 50, training: 30, yearlyCost: 20, residualValue: 100 })];
    expect(cashFlow(aQuestion({ candidates })).total).toEqual([-1080, 380, 380, 380, 480]);
  });

  test("uses the running money of the last year given for every later one", () => {
    const yearly = [someMoney({ revenue: 100 }), someMoney({ revenue: 300, late: -50 })];
    expect(cashFlow(aQuestion({ yearly })).total).toEqual([-1000, 100, 250, 250, 250]);
  });

  test("takes what a sold machine brings now, and gives up what it would have brought later", () => {
    const changes = [{ kind: "sell-machine" as const, machineId: "F1", proceeds: 200, laterValue: 50 }];
    const flow = cashFlow(aQuestion({ candidates: [aCandidate({ changes })] }));
    expect(row(flow, "sale")).toEqual([200, 0, 0, 0, 0]);
    expect(row(flow, "valueGivenUp")).toEqual([0, 0, 0, 0, -50]);
  });

  test("taxes the gain less straight-line depreciation: 400 x 0.75 + 0.25 x 250", () => {
    const financing = { discountPctPerYear: 10, taxPct: 25, depreciation: "straight-line" as const };
    expect(cashFlow(aQuestion({ financing })).total).toEqual([-1000, 362.5, 362.5, 362.5, 362.5]);
  });

  test("taxes the whole gain where nothing is depreciated, and lets training lower the tax of year 1", () => {
    const financing = { discountPctPerYear: 10, taxPct: 25, depreciation: "none" as const };
    const candidates = [aCandidate({ training: 40 })];
    expect(cashFlow(aQuestion({ financing, candidates })).total).toEqual([-1040, 310, 300, 300, 300]);
  });

  test("taxes a sale above book value at the start and gives relief below it", () => {
    const financing = { discountPctPerYear: 10, taxPct: 25, depreciation: "none" as const };
    const sold = (bookValue: number): readonly number[] => {
      const changes = [{ kind: "sell-machine" as const, machineId: "F1", proceeds: 200, bookValue }];
      return row(cashFlow(aQuestion({ financing, candidates: [aCandidate({ changes })] })), "tax");
    };
    expect(sold(100)[0]).toBe(-25);
    expect(sold(300)[0]).toBe(25);
  });

  test("replaces the shorter life by its like and counts what is left of its last price", () => {
    const short = aCandidate({ id: "short", lifeYears: 2, price: 600, residualValue: 100 });
    const long = aCandidate({ id: "long", lifeYears: 5, price: 1000 });
    const flow = cashFlow(aQuestion({ candidates: [short, long] }));
    expect(row(flow, "price")).toEqual([-1600, 0, -600, 0, -600, 0]);
    // After 1 of 2 years 600 is worth 350.
    expect(row(flow, "residual")).toEqual([0, 0, 100, 0, 100, 350]);
  });
});

const rateOf = (...total: number[]): object => answerOf({ rows: [], total }, aQuestion().financing).rate;

describe("the figures of a cash flow", () => {
  test("compare lives of 1 and 2 years by what having them costs each year", () => {
    const yearly = [someMoney({})];
    const financing = { discountPctPerYear: 10, taxPct: 0, depreciation: "none" as const };
    const costOf = (price: number, lifeYears: number): number => {
      const candidates = [aCandidate({ price, lifeYears })];
      return answerOf(cashFlow(aQuestion({ candidates, yearly, financing })), financing).equivalentAnnualCost;
    };
    expect(costOf(1000, 1)).toBeCloseTo(1100, 9);
    expect(costOf(1735.5371900826, 2)).toBeCloseTo(1000, 6);
  });

  test("leave gains out of the cost of having, and put them into the value", () => {
    const { financing } = aQuestion();
    const few = answerOf(cashFlow(aQuestion()), financing);
    const many = answerOf(cashFlow(aQuestion({ yearly: [someMoney({ revenue: 500 })] })), financing);
    expect(many.equivalentAnnualCost).toBe(few.equivalentAnnualCost);
    expect(many.equivalentAnnualValue - few.equivalentAnnualValue).toBeCloseTo(100, 9);
  });

  test("count a sale against the outlay", () => {
    const changes = [{ kind: "sell-machine" as const, machineId: "F1", proceeds: 300 }];
    const question = aQuestion({ candidates: [aCandidate({ changes, training: 50 })] });
    expect(answerOf(cashFlow(question), question.financing).outlay).toBe(750);
  });

  test("say that a rate is unique, not unique, or that there is none", () => {
    expect(rateOf(-100, 110)).toMatchObject({ kind: "unique" });
    expect(rateOf(-1600, 10_000, -10_000)).toMatchObject({ kind: "not-unique" });
    expect(rateOf(-100, -1)).toEqual({ kind: "none" });
    expect(rateOf(0, 0, 0)).toEqual({ kind: "none" });
  });

  test("of a candidate that can make nothing are minus its price, never paid back, without a rate", () => {
    const question = aQuestion({ yearly: [someMoney({})] });
    const answer = answerOf(cashFlow(question), question.financing);
    expect(answer).toMatchObject({
      netPresentValue: -1000,
      rate: { kind: "none" },
      modifiedRate: null,
      paybackYears: Number.POSITIVE_INFINITY,
    });
  });
});

describe("the most to pay", () => {
  test("is the price at which the value is nothing, residual, tax and depreciation included", () => {
    const financing = { discountPctPerYear: 7, taxPct: 30, depreciation: "straight-line" as const };
    const question = aQuestion({
      financing,
      candidates: [aCandidate({ residualValue: 120, installation: 80 })],
    });
    const price = mostToPay(question) ?? Number.NaN;
    expect(price).toBeGreaterThan(1000);
    expect(valueOf({ ...question, candidates: [{ ...question.candidates[0]!, price }] })).toBeCloseTo(0, 8);
  });

  test("is below 0 for what is not even worth having as a gift, and null for two at once", () => {
    expect(mostToPay(aQuestion({ yearly: [someMoney({ late: -10 })] }))).toBeLessThan(0);
    expect(mostToPay(aQuestion({ candidates: [aCandidate(), aCandidate({ id: "other" })] }))).toBeNull();
  });
});
