import { irr, mirr, npv, pmt } from "financial";
import { describe, expect, test } from "vitest";
import { answerOf } from "../../core/purchase/answer.ts";
import { cashFlow, type CashQuestion } from "../../core/purchase/cash-flow.ts";
import { capitalRecovery } from "../../core/purchase/equivalent-annual.ts";
import type { Financing } from "../../core/shop/purchase-case.ts";
import { seededRandom } from "../../core/units/random.ts";
import { aCandidate, aQuestion, someMoney } from "../fixtures/some-weeks.ts";

/** Textbook projects through the whole way from a candidate to its figures: the first flow is its price. */
function project(
  flows: readonly number[],
  ratePct: number,
  gains: "revenue" | "standing" = "revenue",
): CashQuestion {
  const [first = 0, ...years] = flows;
  return aQuestion({
    candidates: [aCandidate({ price: -first, lifeYears: years.length })],
    financing: financing(ratePct),
    yearly: gains === "revenue" ? years.map((revenue) => someMoney({ revenue })) : [someMoney({})],
    standingPerYear: gains === "standing" ? (years[0] ?? 0) : 0,
  });
}

function financing(discountPctPerYear: number, taxPct = 0): Financing {
  return { discountPctPerYear, taxPct, depreciation: "straight-line" };
}

function figures(question: CashQuestion): ReturnType<typeof answerOf> {
  return answerOf(cashFlow(question), question.financing);
}

describe("Brigham and Ehrhardt's projects S and L as candidates (from memory, reproduced)", () => {
  test.each([
    ["S", [-1000, 500, 400, 300, 100], 78.8198, 0.144888, 2.3333, 2.9533, 0.121063],
    ["L", [-1000, 100, 300, 400, 675], 100.403, 0.135492, 3.2963, 3.7822, 0.126628],
  ] as const)("%s", (_, flows, value, rate, plain, discounted, modified) => {
    const answer = figures(project(flows, 10));
    expect(answer.outlay).toBe(1000);
    expect(answer.netPresentValue).toBeCloseTo(value, 4);
    expect(answer.rate.kind).toBe("unique");
    expect(answer.rate.kind === "unique" ? answer.rate.rate : Number.NaN).toBeCloseTo(rate, 6);
    expect(answer.paybackYears).toBeCloseTo(plain, 4);
    expect(answer.discountedPaybackYears).toBeCloseTo(discounted, 4);
    expect(answer.modifiedRate).toBeCloseTo(modified, 6);
  });
});

test("Brealey, Myers and Allen's machines of unequal lives cost 10.61 and 11.45 a year: the longer-lived is cheaper (from memory)", () => {
  const a = figures(project([-15, -5, -5, -5], 6, "standing"));
  const b = figures(project([-10, -6, -6], 6, "standing"));
  expect(Math.abs(a.equivalentAnnualCost - 10.61)).toBeLessThan(5e-3);
  expect(Math.abs(b.equivalentAnnualCost - 11.45)).toBeLessThan(5e-3);
});

test("the oil pump is said to have no unique rate and is rejected by its value of -773.55 (Lorie and Savage, from memory)", () => {
  const answer = figures(project([-1600, 10_000, -10_000], 10));
  expect(answer.rate).toMatchObject({ kind: "not-unique" });
  expect(answer.netPresentValue).toBeCloseTo(-773.5537, 4);
  expect(answer.modifiedRate).not.toBeNull();
});

describe("factors of interest tables (from memory, as printed to five places)", () => {
  test.each([
    [6, 4, 0.28859],
    [8, 5, 0.25046],
    [8, 20, 0.10185],
    [10, 3, 0.40211],
    [12, 10, 0.17698],
    [15, 7, 0.24036],
  ])("capital recovery at %d %% over %d years is %d", (ratePct, years, factor) => {
    expect(Math.abs(capitalRecovery(ratePct / 100, years) - factor)).toBeLessThan(5e-6);
  });
});

test("the package financial agrees on the tables of 300 random candidates, tax and depreciation included", () => {
  const random = seededRandom(23);
  let compared = 0;
  for (let round = 0; round < 300; round++) {
    const lifeYears = 2 + Math.floor(10 * random());
    const candidate = aCandidate({
      price: 1000 + 9000 * random(),
      installation: 500 * random(),
      training: 300 * random(),
      yearlyCost: 100 * random(),
      residualValue: 800 * random(),
      lifeYears,
    });
    const rates = financing(1 + 20 * random(), random() < 0.5 ? 0 : 40 * random());
    const yearly = Array.from({ length: lifeYears }, () =>
      someMoney({ revenue: 3000 * random(), late: 500 * random() }),
    );
    const question = aQuestion({
      candidates: [candidate],
      financing: rates,
      yearly,
      standingPerYear: -200 * random(),
    });
    const { total } = cashFlow(question);
    const answer = figures(question);
    const rate = rates.discountPctPerYear / 100;
    expect(answer.netPresentValue).toBeCloseTo(npv(rate, [...total]), 6);
    expect(answer.equivalentAnnualValue).toBeCloseTo(pmt(rate, lifeYears, -answer.netPresentValue), 6);
    if (answer.modifiedRate !== null)
      expect(answer.modifiedRate).toBeCloseTo(mirr([...total], rate, rate), 9);
    const theirs = irr([...total]);
    if (answer.rate.kind !== "unique" || !(theirs > -1 && theirs < 1e6)) continue; // none, several, or its iteration ran away
    expect(answer.rate.rate).toBeCloseTo(theirs, 5);
    compared += 1;
  }
  expect(compared).toBeGreaterThan(200);
});
