import { expect, test } from "vitest";
import { checkAnswer } from "../../../../core/plan/engines/check-answer.ts";
import { loadGlpk } from "../../../../core/plan/engines/glpk.ts";
import type { LpAnswer } from "../../../../core/plan/linear-program.ts";
import { aProgram } from "../../../fixtures/a-program.ts";

const PROGRAM = aProgram(
  [-3, -5],
  [
    { of: [1, 0], atMost: 4 },
    { of: [0, 2], atMost: 12 },
    { of: [3, 2], atMost: 18 },
  ],
);
const ANSWER = (await loadGlpk()).solve(PROGRAM, 5);

function faultsOf(overrides: Partial<LpAnswer>): string[] {
  return checkAnswer(PROGRAM, { ...ANSWER, ...overrides });
}

test("a right answer has no faults", () => {
  expect(faultsOf({})).toEqual([]);
});

test("values outside a row or a column are faults", () => {
  expect(faultsOf({ values: Float64Array.of(2.001, 6) }).join(" ")).toContain("A row is");
  expect(faultsOf({ values: Float64Array.of(-1, 6) }).join(" ")).toContain("A column is");
});

test("an objective that the columns do not cost is a fault", () => {
  expect(faultsOf({ objective: -36.1 }).join(" ")).toContain("the columns cost");
});

test("a plan that is not the best is a fault of its prices", () => {
  const values = Float64Array.of(4, 3);
  expect(faultsOf({ values, objective: -27 }).join(" ")).toContain("no limit is met");
});

test("prices of the wrong sign and wrong reduced costs are faults", () => {
  expect(faultsOf({ rowPrices: Float64Array.of(0, 1.5, 1) }).join(" ")).toContain("wrong sign");
  expect(faultsOf({ reducedCosts: Float64Array.of(1, 0) }).join(" ")).toContain("reduced cost");
});
