import { describe, expect, test } from "vitest";
import type { PlanProblem } from "../../../../core/plan/plan-problem.ts";
import { keptBuilds, movingCost } from "../../../../core/plan/replan/kept-builds.ts";
import { aboutMin } from "../../../../core/plan/replan/earlier-builds.ts";
import type { Schedule } from "../../../../core/plan/schedule.ts";
import { Improver } from "../../../../core/plan/search/improve.ts";
import { toSchedule } from "../../../../core/plan/search/saved-plan.ts";
import { SearchData } from "../../../../core/plan/search/search-data.ts";
import { searchSchedule } from "../../../../core/plan/search/search.ts";
import { emptyPlan, startPlan } from "../../../../core/plan/search/start-plans.ts";
import { stayPlan } from "../../../../core/plan/search/stay-plan.ts";
import { seededRandom } from "../../../../core/units/random.ts";
import { randomProblem } from "../../../fixtures/random-problem.ts";
import { brokenRules } from "../../../fixtures/valid-schedule.ts";

const SIZE = { machines: 4, lines: 30, weeks: 1, mixed: 0.3 };
const search = (problem: PlanProblem, seed: number): Schedule =>
  searchSchedule(problem, null, { seed, now: () => 0, untilMs: 1, iterations: 3000 });

/** The problem after a plan of it was made, with every build so many minutes later than it need be. */
function planned(seed: number, costPerBuild: number, laterMin = 0): PlanProblem {
  const problem = randomProblem(SIZE, seed);
  const builds = search(problem, seed).builds.map((build, index) => ({
    buildId: `B-${index}`,
    machineIndex: build.machineIndex,
    items: build.items,
    setUpStartMin: build.setUpStartMin + laterMin,
    aboutMin: aboutMin(build.setUpStartMin, build.unloadEndMin),
  }));
  return {
    ...problem,
    replan: { costPerBuild, builds: builds.toSorted((a, b) => a.setUpStartMin - b.setUpStartMin) },
  };
}

function keptInPlace(problem: PlanProblem): number {
  return keptBuilds(problem, stayPlan(problem).builds).size;
}

function firstStart(problem: PlanProblem): number {
  return Math.min(...stayPlan(problem).builds.map(({ setUpStartMin }) => setUpStartMin));
}

/** Builds that a search moves where moving one costs so much. */
function movedAt(cost: number): number {
  const problem = planned(6, cost, 45);
  const { builds } = search(problem, 9);
  return (problem.replan?.builds.length ?? 0) - keptBuilds(problem, builds).size;
}

describe("how much a start may differ", () => {
  test.each([
    [41, 20],
    [121, 60],
    [600, 60],
    [1, 0],
    [0, 0],
  ])("a build of %i min stays within %i min", (length, about) => {
    expect(aboutMin(1000, 1000 + length)).toBe(about);
  });
});

describe("the plan that leaves everything in place", () => {
  test("keeps all builds of a plan that still fits", () => {
    const problem = planned(5, 10);
    const stay = stayPlan(problem);
    expect(keptBuilds(problem, stay.builds).size).toBe(problem.replan?.builds.length);
    expect(movingCost(problem, stay.builds)).toBe(0);
  });

  test("waits for a place that lies later than need be, and does not where moving is free", () => {
    const held = planned(5, 10, 90);
    const free = planned(5, 0, 90);
    expect(keptInPlace(held)).toBeGreaterThan(0.5 * (held.replan?.builds.length ?? 0));
    expect(keptInPlace(free)).toBeLessThan(0.5 * keptInPlace(held));
    expect(firstStart(free)).toBeLessThan(firstStart(held));
  });
});

describe("the search with a price for moving", () => {
  test("moves fewer builds the dearer it is", () => {
    expect(movedAt(1000)).toBeLessThan(movedAt(0.01));
  });

  test.each([1, 2, 3])("agrees with a full recount and with the schedule's own cost (seed %i)", (seed) => {
    const problem = planned(seed, 25, seed * 40);
    const trial = emptyPlan(new SearchData(problem));
    startPlan(trial, null, () => true);
    const { state } = trial;
    const improver = new Improver(trial, seededRandom(seed));
    let steps = 0;
    let compared = 0;
    improver.run(
      (done) => {
        steps += done;
        const incremental = state.money;
        trial.recount();
        expect(Math.abs(incremental - state.money)).toBeLessThan(1e-4);
        const schedule = toSchedule(state);
        if (schedule.unplaced.length === 0 && state.money < state.penalty) {
          compared++;
          expect(schedule.cost).toBeCloseTo(state.money, 4);
        }
        expect(brokenRules(problem, schedule).filter((fault) => !/promise|too late/.test(fault))).toEqual([]);
        return steps / 4000;
      },
      2,
      () => improver.keepBest(),
    );
    expect(compared).toBeGreaterThan(10);
  });
});
