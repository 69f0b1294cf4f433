import { expect, test } from "vitest";
import type { CostLine } from "../../../core/cost/cost-line.ts";
import { costViews } from "../../../core/cost/cost-views.ts";
import { openTotal, shareOf } from "../../../core/cost/open-line.ts";
import { planCostSchema } from "../../../core/plan/plan-document.ts";
import type { PlanCost } from "../../../core/plan/plan-document.ts";

function aLine(overrides: Partial<CostLine>): CostLine {
  return { kind: "machine", amount: 1, formula: "as given", inputs: [], orderId: "O-1", ...overrides };
}

const lines = [
  aLine({ amount: 0.333, orderId: "A", machineId: "F1", feedstockId: "pla" }),
  aLine({ amount: 0.333, orderId: "B", machineId: "F1", feedstockId: "abs" }),
  aLine({ amount: 0.334, orderId: "C", machineId: "F2", feedstockId: "pla", kind: "labour" }),
  aLine({ amount: 2.005, orderId: "C", kind: "late" }),
];

test("the views show one total by kind, order, machine and feedstock", () => {
  const cost: PlanCost = costViews(lines, "EUR");
  expect(cost.total).toBe(3.01);
  // 33.3, 33.3 and 233.9 cents of 300.5, rounded to 301: the two cents missing go to C and to A.
  expect(cost.byOrder).toEqual([
    { id: "A", total: 0.34 },
    { id: "B", total: 0.33 },
    { id: "C", total: 2.34 },
  ]);
  expect(cost.byMachine.map((row) => row.id)).toEqual(["F1", "F2", ""]);
  expect(cost.byFeedstock.map((row) => row.id)).toEqual(["pla", "abs", ""]);
  expect(cost.byKind).toMatchObject({ machine: 0.67, labour: 0.33, late: 2.01, overhead: 0 });
  expect(() => planCostSchema.parse(cost)).not.toThrow();
});

test("no lines make a total of nothing", () => {
  const cost = costViews([], "EUR");
  expect(cost.total).toBe(0);
  // 33.3, 33.3 and 233.9 cents of 300.5, rounded to 301: the two cents missing go to C and to A.
  expect(cost.byOrder).toEqual([]);
});

test("a currency without minor units is rounded to whole ones", () => {
  expect(costViews(lines, "JPY").total).toBe(3);
});

test("a total opens into its lines, largest first, with shares that add up to 1", () => {
  const open = openTotal(lines);
  expect(open.map((line) => line.amount)).toEqual([2.005, 0.334, 0.333, 0.333]);
  expect(open.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 12);
  expect(open[2]?.orderId).toBe("A");
});

test("a share of nothing is nothing", () => {
  expect(shareOf(15, 60)).toBe(0.25);
  expect(shareOf(0, 0)).toBe(0);
});
