import { type BreakEven, breakEvenOf } from "./break-even.ts";
import type { CashQuestion } from "./cash-flow.ts";
import { valueOf } from "./most-to-pay.ts";
import { moneyOf } from "./operating-money.ts";
import { changeAtDemand, type DemandPoint } from "./over-life.ts";

/**
 * Net present value if demand were so many times as large in every year: each year moves by what the points say between its own
 * demand, grown since the first year, and that times the factor. What the year itself has beyond the points fades with less
 * demand, so that with none at all nothing changes. Example: a gain of 1000 x demand in each of 4 years at 10 %,
 * without growth: twice the demand is worth 3169.87 more.
 */
export function valueAtDemand(
  question: CashQuestion,
  points: readonly DemandPoint[],
  growthPctPerYear: number,
  factor: number,
): number {
  const yearly = question.yearly.map((money, year) => {
    const grown = (1 + growthPctPerYear / 100) ** year;
    const now = changeAtDemand(points, grown);
    const then = changeAtDemand(points, grown * factor);
    const share = Math.min(1, factor);
    return moneyOf((row) => then[row] + (money[row] - now[row]) * share);
  });
  return valueOf({ ...question, yearly });
}

/**
 * Demand at which the value is nothing, from the demands that were worked out, linear between them, and none at all, at which
 * nothing changes. Null: fewer than two were worked out. Example: a fixed cost of 18 000 and 24 000 of gain at the demand
 * expected: above 0.75.
 */
export function breakEvenDemand(
  question: CashQuestion,
  points: readonly DemandPoint[],
  growthPctPerYear: number,
): BreakEven | null {
  if (points.length < 2) return null;
  const withNone = [{ demandFactor: 0, change: moneyOf(() => 0) }, ...points];
  const most = Math.max(...points.map(({ demandFactor }) => demandFactor));
  const steps = Math.max(1, Math.round(most / STEP));
  return breakEvenOf(
    Array.from({ length: steps + 1 }, (_, step) => {
      const factor = (step / steps) * most;
      return { factor, value: valueAtDemand(question, withNone, growthPctPerYear, factor) };
    }),
  );
}

const STEP = 0.05;
