import { expect, test } from "vitest";
import { buyOutLine } from "../../../core/cost/buy-out-cost.ts";
import { lateCostPerDay, lateLine } from "../../../core/cost/late-cost.ts";
import { costLineSchema } from "../../../core/plan/plan-document.ts";
import { aCosting, anOrder } from "../../fixtures/a-route.ts";

test("copies made elsewhere cost their price and belong to no machine or feedstock", () => {
  const line = buyOutLine("O-1", 4, 12.5, "EUR");
  expect(line.amount).toBe(50);
  expect(line.machineId).toBeUndefined();
  expect(() => costLineSchema.parse(line)).not.toThrow();
});

test("lateness is costed by the minute", () => {
  expect(lateLine("O-1", 2160, 50, "EUR").amount).toBe(75);
  expect(lateLine("O-1", 1, 1440, "EUR").amount).toBeCloseTo(1, 12);
  expect(lateLine("O-1", 0, 50, "EUR").amount).toBe(0);
});

test("an order's own cost of a late day overrules the shop's, 0 included", () => {
  expect(lateCostPerDay(anOrder(), aCosting())).toBe(50);
  expect(lateCostPerDay(anOrder({ lateCostPerDay: 80 }), aCosting())).toBe(80);
  expect(lateCostPerDay(anOrder({ lateCostPerDay: 0 }), aCosting())).toBe(0);
});
