import { describe, expect, it } from "vitest";
import type { PlanProblem } from "../../../../core/plan/plan-problem.ts";
import type { ScheduledBuild } from "../../../../core/plan/schedule.ts";
import { scheduleCost } from "../../../../core/plan/search/schedule-cost.ts";
import { jobsProblem } from "../../../fixtures/jobs-problem.ts";

/** Two lines of one machine with builds of 7 and 11, changeovers by state, tool paths of 30 for both together. */
function aProblem(overrides: Partial<PlanProblem> = {}): PlanProblem {
  const base = jobsProblem({
    jobs: [
      { runMin: [10], dueMin: 5, weight: 2 },
      { runMin: [20], dueMin: 100, weight: 3 },
    ],
    setUpMin: () => 0,
  });
  const options = base.options.map((option, index) => ({
    ...option,
    costByCopies: Float64Array.of(0, index === 0 ? 7 : 11),
    engineeringIndex: 0,
  }));
  // Rows: loaded 0, loaded 1, nothing loaded.
  const changeoverCost = Float64Array.of(0, 4, 5, 0, 1, 2);
  const classes = base.classes.map((facts) => ({ ...facts, changeoverCost }));
  const engineering = [{ partId: "job 1", process: "filament" as const, cost: 30 }];
  return { ...base, options, classes, engineering, ...overrides };
}

function build(optionIndex: number, startMin: number, endMin: number): ScheduledBuild {
  return {
    machineIndex: 0,
    items: [{ optionIndex, copies: 1 }],
    setUpStartMin: startMin,
    printStartMin: startMin,
    printEndMin: endMin,
    unloadEndMin: endMin,
  };
}

describe("cost of a schedule", () => {
  it("adds builds, changeovers in order, tool paths once and lateness", () => {
    const schedule = { builds: [build(0, 0, 10), build(1, 10, 30)], boughtOut: [], unplaced: [] };
    // Builds 7 + 11, changeovers 1 + 4, tool paths 30, line 1 late by 5 at 2.
    expect(scheduleCost(aProblem(), schedule)).toBe(7 + 11 + 1 + 4 + 30 + 10);
  });

  it("goes by time, not by the order of the list", () => {
    const schedule = { builds: [build(0, 20, 30), build(1, 0, 20)], boughtOut: [], unplaced: [] };
    // Changeovers 2 + 5, line 1 late by 25 at 2.
    expect(scheduleCost(aProblem(), schedule)).toBe(7 + 11 + 2 + 5 + 30 + 50);
  });

  it("charges bought copies their price and the lateness of their arrival", () => {
    const { lines } = aProblem();
    const bought = lines.map((line) => ({ ...line, buyOut: { pricePerPiece: 9, arriveMin: 8 } }));
    const schedule = {
      builds: [],
      boughtOut: [{ lineIndex: 0, copies: 1 }],
      unplaced: [{ lineIndex: 1, copies: 1 }],
    };
    expect(scheduleCost(aProblem({ lines: bought }), schedule)).toBe(9 + 3 * 2);
  });

  it("charges a copy that counts by itself only its share", () => {
    const { lines } = aProblem();
    const byPiece = lines.map((line) => ({ ...line, perPiece: true, orderedCopies: 4 }));
    const schedule = { builds: [build(0, 0, 10)], boughtOut: [], unplaced: [] };
    expect(scheduleCost(aProblem({ lines: byPiece }), schedule)).toBe(7 + 1 + 30 + 10 / 4);
  });

  it("charges the makespan where the problem does", () => {
    const schedule = { builds: [build(1, 0, 20)], boughtOut: [], unplaced: [] };
    expect(scheduleCost(aProblem({ makespanCostPerMin: 0.5 }), schedule)).toBe(11 + 2 + 30 + 10);
  });
});
