import { describe, expect, it } from "vitest";
import { Improver } from "../../../../core/plan/search/improve.ts";
import type { PlanProblem } from "../../../../core/plan/plan-problem.ts";
import { toSchedule } from "../../../../core/plan/search/saved-plan.ts";
import { scheduleCost } from "../../../../core/plan/search/schedule-cost.ts";
import { SearchData } from "../../../../core/plan/search/search-data.ts";
import { searchSchedule } from "../../../../core/plan/search/search.ts";
import { emptyPlan, startPlan } from "../../../../core/plan/search/start-plans.ts";
import { seededRandom } from "../../../../core/units/random.ts";
import { randomProblem, type RandomProblemSize } from "../../../fixtures/random-problem.ts";
import { brokenRules } from "../../../fixtures/valid-schedule.ts";

const ALL_FEATURES = { mixed: 0.4, hard: 0.15, buyOut: 0.2, perPiece: 0.2 };
const SMALL: RandomProblemSize = { machines: 6, lines: 40, weeks: 1, ...ALL_FEATURES };

/** A clock that stands still: only the number of steps ends the search. */
const STILL = { now: () => 0, untilMs: 1 };

function search(problem: PlanProblem, iterations: number, seed = 1) {
  return searchSchedule(problem, null, { seed, iterations, ...STILL });
}

describe("searchSchedule", () => {
  it.each([1, 2, 3, 4, 5, 6])("gives a valid schedule whose cost is its own recount (seed %i)", (seed) => {
    const problem = randomProblem(SMALL, seed);
    const schedule = search(problem, 6000, seed);
    expect(brokenRules(problem, schedule)).toEqual([]);
    expect(schedule.cost).toBeCloseTo(scheduleCost(problem, schedule), 6);
  });

  it.each([1, 2, 3])("stays valid where one operator serves all machines (seed %i)", (seed) => {
    const problem = randomProblem({ ...SMALL, operatorsPerMachine: 0.01 }, seed);
    const schedule = search(problem, 6000, seed);
    expect(brokenRules(problem, schedule)).toEqual([]);
  });

  it("gives the same schedule for the same seed and steps", () => {
    const problem = randomProblem(SMALL, 7);
    expect(search(problem, 3000, 5)).toEqual(search(problem, 3000, 5));
  });

  it("gets cheaper with more steps", () => {
    const problem = randomProblem({ ...SMALL, hard: 0 }, 8);
    const costs = [0, 2000, 40_000].map((steps) => search(problem, steps).cost);
    expect(costs[1]).toBeLessThan(costs[0]!);
    expect(costs[2]).toBeLessThan(costs[1]!);
  });

  it("tells only of valid schedules, and gives back none that is dearer", () => {
    const problem = randomProblem(SMALL, 9);
    const told: number[] = [];
    let timeMs = 0;
    const schedule = searchSchedule(problem, null, {
      seed: 1,
      iterations: 4000,
      now: () => (timeMs += 30),
      untilMs: Infinity,
      onBetter: (better) => {
        expect(brokenRules(problem, better)).toEqual([]);
        told.push(better.cost);
      },
    });
    expect(told.length).toBeGreaterThan(1);
    expect(brokenRules(problem, schedule)).toEqual([]);
  });

  it("stops when told, with a valid schedule", () => {
    const problem = randomProblem(SMALL, 10);
    let asked = 0;
    const schedule = searchSchedule(problem, null, {
      seed: 1,
      now: () => 0,
      untilMs: 1,
      stopped: () => ++asked > 20,
    });
    expect(asked).toBeLessThan(30);
    expect(brokenRules(problem, schedule)).toEqual([]);
  });

  it("stops at a cost that is good enough", () => {
    const problem = randomProblem({ machines: 6, lines: 40, weeks: 1 }, 11);
    const first = search(problem, 0);
    const schedule = searchSchedule(problem, null, { seed: 1, goodEnough: first.cost + 1, ...STILL });
    expect(schedule.cost).toBeLessThanOrEqual(first.cost + 1);
  });

  it("reports lines that no machine can make as unplaced", () => {
    const problem = randomProblem(SMALL, 12);
    const lines = problem.lines.map((line, index) =>
      index === 3 ? { ...line, optionIndices: [], buyOut: null } : line,
    );
    const schedule = search({ ...problem, lines }, 500);
    expect(schedule.unplaced).toContainEqual({ lineIndex: 3, copies: lines[3]!.quantity });
  });

  it("leaves copies unplaced that do not fit before the last window", () => {
    const problem = randomProblem({ machines: 4, lines: 30, weeks: 1 }, 13);
    const lastMin = problem.startMin + 2 * 1440;
    const cut = <Kind extends { startMin: number; endMin: number }>(list: readonly Kind[]): Kind[] =>
      list.filter((stretch) => stretch.endMin <= lastMin);
    const short = {
      ...problem,
      machines: problem.machines.map((m) => ({ ...m, windows: cut(m.windows), segments: cut(m.windows) })),
    };
    const schedule = search(short, 500);
    expect(schedule.unplaced.length).toBeGreaterThan(0);
    expect(schedule.builds.length).toBeGreaterThan(0);
    expect(brokenRules(short, schedule)).toEqual([]);
  });

  it("keeps every promise that can be kept, at the price of lateness elsewhere", () => {
    const problem = randomProblem({ machines: 6, lines: 40, weeks: 1, hard: 0.2 }, 14);
    const schedule = search(problem, 20_000);
    const promised = problem.lines.filter((line) => !line.allowLate).length;
    expect(promised).toBeGreaterThan(3);
    expect(schedule.unplaced.length).toBeLessThan(promised / 2);
  });
});

describe("the search's own arithmetic", () => {
  it.each([1, 2, 3, 4])("agrees with a full recount after every row of moves (seed %i)", (seed) => {
    const problem = randomProblem({ ...SMALL, hard: 0.1 }, seed + 20);
    const trial = emptyPlan(new SearchData(problem));
    startPlan(trial, null, () => true);
    const { state } = trial;
    const improver = new Improver(trial, seededRandom(seed));
    let steps = 0;
    let checked = 0;
    improver.run(
      (done) => {
        steps += done;
        checked++;
        const incremental = state.money;
        trial.recount();
        expect(Math.abs(incremental - state.money)).toBeLessThan(1e-9 * Math.abs(state.money) + 1e-4);
        if (checked % 10 === 0) {
          const schedule = toSchedule(state);
          const unplaced = schedule.unplaced.reduce((sum, entry) => sum + entry.copies, 0);
          const faults = brokenRules(problem, schedule).filter((fault) => !/promise|too late/.test(fault));
          expect(faults).toEqual([]);
          if (unplaced === 0 && state.money < state.penalty)
            expect(schedule.cost).toBeCloseTo(state.money, 4);
        }
        return steps / 6000;
      },
      2,
      () => improver.keepBest(),
    );
    expect(checked).toBeGreaterThan(50);
  });
});
