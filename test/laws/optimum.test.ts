import { expect, test } from "vitest";
import { proveBound } from "../../core/plan/bound/bound.ts";
import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import type { PlanProblem } from "../../core/plan/plan-problem.ts";
import type { Schedule } from "../../core/plan/schedule.ts";
import { searchSchedule } from "../../core/plan/search/search.ts";
import { MONEY_TOLERANCE } from "../../core/units/tolerance.ts";
import { exhaustivePlan } from "../fixtures/exhaustive.ts";
import { tinyProblem } from "../fixtures/tiny-problem.ts";

/** Tiny shops that are solved by trying every plan; those that take more nodes than this are passed over. */
const SHOPS = 200;
const MOST_NODES = 12_000;
const SEARCH_STEPS = 20_000;
const LEAST_OPTIMAL = 0.95;
/** Share of the shops that takes more nodes: 96 of 296 when it was measured. */
const MOST_PASSED_OVER = 0.35;

const glpk = await loadGlpk();

function searched(problem: PlanProblem): { value: number; schedule: Schedule } {
  const bound = proveBound(problem, glpk, { now: () => 0, untilMs: 60_000 });
  const start = { shares: bound.shares, boughtOut: bound.boughtOut };
  const control = { seed: 1, now: () => 0, untilMs: 1, iterations: SEARCH_STEPS };
  return { value: bound.value, schedule: searchSchedule(problem, start, control) };
}

function isWhole(schedule: Schedule): boolean {
  return schedule.unplaced.length === 0;
}

const CLAIM =
  "on 200 tiny shops: bound <= cheapest of all plans <= plan, and the plan is the cheapest on 95 of 100; shops too large to try every plan are passed over, at most 35 of 100";

test(CLAIM, () => {
  let solved = 0;
  let optimal = 0;
  let passedOver = 0;
  for (let seed = 0; solved < SHOPS; seed++) {
    const problem = tinyProblem(seed);
    if (!problem.lines.every((line) => line.optionIndices.length > 0 || line.buyOut)) continue;
    const { schedule: cheapest, isComplete } = exhaustivePlan(problem, MOST_NODES);
    if (!isComplete) passedOver++;
    if (!isComplete || !cheapest) continue;
    solved++;
    const { value, schedule } = searched(problem);
    expect(value, `bound of seed ${seed}`).toBeLessThanOrEqual(cheapest.cost + MONEY_TOLERANCE);
    if (!isWhole(schedule)) continue;
    expect(schedule.cost, `plan of seed ${seed}`).toBeGreaterThanOrEqual(cheapest.cost - MONEY_TOLERANCE);
    if (schedule.cost <= cheapest.cost + MONEY_TOLERANCE) optimal++;
  }
  expect(optimal).toBeGreaterThanOrEqual(LEAST_OPTIMAL * SHOPS);
  expect(passedOver / (passedOver + solved), "share passed over").toBeLessThanOrEqual(MOST_PASSED_OVER);
}, 120_000);
