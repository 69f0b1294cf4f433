import { describe, expect, it } from "vitest";
import { earliestDueCheapest, earliestDueFirstFit } from "../../../../core/plan/search/hand-rules.ts";
import { scheduleCost } from "../../../../core/plan/search/schedule-cost.ts";
import { searchSchedule } from "../../../../core/plan/search/search.ts";
import { jobsProblem } from "../../../fixtures/jobs-problem.ts";
import { randomProblem } from "../../../fixtures/random-problem.ts";
import { brokenRules } from "../../../fixtures/valid-schedule.ts";

describe("planning by hand", () => {
  it.each([1, 2, 3, 4])("gives valid schedules with true costs (seed %i)", (seed) => {
    const size = { machines: 6, lines: 40, weeks: 1, mixed: 0.3, hard: 0.1, buyOut: 0.2, perPiece: 0.2 };
    const problem = randomProblem(size, seed);
    for (const schedule of [earliestDueFirstFit(problem), earliestDueCheapest(problem)]) {
      expect(brokenRules(problem, schedule)).toEqual([]);
      expect(schedule.cost).toBeCloseTo(scheduleCost(problem, schedule), 6);
    }
  });

  it("takes lines by due date, to the machine that is free first", () => {
    const jobs = [30, 10, 20].map((dueMin) => ({ runMin: [10, 10], dueMin, weight: 1 }));
    const { builds } = earliestDueFirstFit(jobsProblem({ jobs }));
    const places = builds.map(({ machineIndex, items, printStartMin }) => [
      Math.floor(items[0]!.optionIndex / 2),
      machineIndex,
      printStartMin,
    ]);
    expect(places).toEqual(
      expect.arrayContaining([
        [1, 0, 0],
        [2, 1, 0],
        [0, 0, 10],
      ]),
    );
  });

  it("leaves at least a tenth of the cost to be saved on a full works", () => {
    const problem = randomProblem({ machines: 6, lines: 60, weeks: 1 }, 5);
    const searched = searchSchedule(problem, null, { seed: 1, iterations: 20_000, now: () => 0, untilMs: 1 });
    expect(searched.cost).toBeLessThan(0.9 * earliestDueFirstFit(problem).cost);
    expect(searched.cost).toBeLessThan(0.9 * earliestDueCheapest(problem).cost);
  });
});
