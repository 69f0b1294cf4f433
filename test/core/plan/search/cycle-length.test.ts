import { describe, expect, it } from "vitest";
import type { PlanProblem } from "../../../../core/plan/plan-problem.ts";
import { cycleMs } from "../../../../core/plan/search/cycle-length.ts";
import { SearchData } from "../../../../core/plan/search/search-data.ts";
import { emptyPlan, startPlan } from "../../../../core/plan/search/start-plans.ts";
import { jobsProblem } from "../../../fixtures/jobs-problem.ts";
import { randomProblem } from "../../../fixtures/random-problem.ts";

function planned(problem: PlanProblem) {
  const trial = emptyPlan(new SearchData(problem));
  startPlan(trial, null, () => false);
  return trial.state;
}

function jobs(count: number, machines: number): PlanProblem {
  const runMin = Array.from({ length: machines }, () => 10);
  return jobsProblem({ jobs: Array.from({ length: count }, () => ({ runMin })) });
}

describe("cycleMs", () => {
  it("gives 50 jobs on one machine 75 ms: 2500 places", () => {
    expect(cycleMs(planned(jobs(50, 1)))).toBeCloseTo(75, 9);
  });

  it("counts machines as ways and divides the builds among them: 20 jobs on 2 machines have 20 x 2 x 10 places", () => {
    expect(cycleMs(planned(jobs(20, 2)))).toBeCloseTo(1.2e-5 * 400 ** 2, 9);
  });

  it("is never longer than 25 ms a line, which large plans reach", () => {
    expect(cycleMs(planned(randomProblem({ machines: 12, lines: 150, weeks: 1 }, 1)))).toBe(25 * 150);
  });
});
