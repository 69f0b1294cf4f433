import { describe, expect, test } from "vitest";
import { type BoundAnswer, proveBound } from "../../core/plan/bound/bound.ts";
import { type BoundModel, boundModel } from "../../core/plan/bound/bound-model.ts";
import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../core/plan/engines/highs.ts";
import { hourPrices } from "../../core/plan/bound/hour-prices.ts";
import type { LpEngine } from "../../core/plan/linear-program.ts";
import type { PlanProblem } from "../../core/plan/plan-problem.ts";
import { columnCost, MOST_SLOTS } from "../../core/plan/bound/pool-columns.ts";
import { sift } from "../../core/plan/bound/sifting.ts";
import { exhaustivePlan } from "../fixtures/exhaustive.ts";
import { tinyProblem } from "../fixtures/tiny-problem.ts";

const glpk = await loadGlpk();
const highs = await loadHighs();
const NO_LIMIT = { now: () => 0, untilMs: 60_000 };
const CLOSE = 1e-5;

/** Problems of which every line can be made or bought. */
const PROBLEMS = Array.from({ length: 90 }, (_, seed) => ({ seed, problem: tinyProblem(seed) })).filter(
  ({ problem }) => problem.lines.every((line) => line.optionIndices.length > 0 || line.buyOut),
);

function prove(problem: PlanProblem, engine: LpEngine = highs): BoundAnswer {
  return proveBound(problem, engine, NO_LIMIT);
}

function relative(a: number, b: number): number {
  return Math.abs(a - b) / Math.max(1, Math.abs(a), Math.abs(b));
}

describe("bound on tiny problems", () => {
  test("no plan that trying them all finds costs less than the bound, and half of the best are within 20 % of it", () => {
    const ratios: number[] = [];
    let plans = 0;
    for (const { seed, problem } of PROBLEMS) {
      const { schedule, isComplete } = exhaustivePlan(problem, 3000);
      if (!schedule) continue;
      plans++;
      const { value } = prove(problem);
      expect(value, `seed ${seed}`).toBeLessThanOrEqual(schedule.cost + 1e-6);
      if (isComplete) ratios.push(schedule.cost / value);
    }
    ratios.sort((a, b) => a - b);
    expect(plans).toBeGreaterThan(60);
    expect(ratios.length).toBeGreaterThan(20);
    expect(ratios[ratios.length >> 1]).toBeLessThan(1.2);
  });

  test("sifting reaches the value of the program with every column", () => {
    for (const { seed, problem } of PROBLEMS.slice(0, 25)) {
      const model = modelOf(problem);
      const sifted = sift(model, highs, NO_LIMIT);
      const full = sift(model, highs, NO_LIMIT, allColumns(problem));
      expect(sifted.isComplete, `seed ${seed}`).toBe(true);
      expect(full.rounds).toBe(1);
      expect(relative(sifted.bound, full.bound), `seed ${seed}`).toBeLessThan(CLOSE);
    }
  });

  test("both engines prove the same bound", () => {
    for (const { seed, problem } of PROBLEMS.slice(0, 25)) {
      expect(relative(prove(problem, glpk).value, prove(problem, highs).value), `seed ${seed}`).toBeLessThan(
        CLOSE,
      );
    }
  });

  test("without time the bound is lower, yet a bound", () => {
    for (const { problem } of PROBLEMS.slice(0, 25)) {
      const hurried = proveBound(problem, highs, { now: () => 1, untilMs: 0 });
      expect(hurried.sifted.rounds).toBe(0);
      expect(hurried.value).toBeGreaterThanOrEqual(0);
      expect(hurried.value).toBeLessThanOrEqual(prove(problem).value + 1e-6);
    }
  });

  test("one more operator never raises it", () => {
    for (const { seed, problem } of PROBLEMS.slice(0, 30)) {
      const calendars = problem.calendars.map((calendar) => ({
        ...calendar,
        operators: calendar.operators.map((staffed) => ({ ...staffed, operators: staffed.operators + 1 })),
      }));
      expect(prove({ ...problem, calendars }).value, `seed ${seed}`).toBeLessThanOrEqual(
        roomFor(prove(problem)),
      );
    }
  });

  test("one more machine never raises it", () => {
    for (const { seed, problem } of PROBLEMS.slice(0, 30)) {
      expect(prove(withTwin(problem)).value, `seed ${seed}`).toBeLessThanOrEqual(roomFor(prove(problem)));
    }
  });

  test("shares and copies bought or missing make up every line", () => {
    for (const { seed, problem } of PROBLEMS.slice(0, 30)) {
      const { shares, boughtOut, missing } = prove(problem);
      for (const line of problem.lines) {
        const made = shares.filter(
          ({ optionIndex }) => problem.options[optionIndex]!.lineIndex === line.index,
        );
        const others = [...boughtOut, ...missing].filter(({ lineIndex }) => lineIndex === line.index);
        const copies = [...made, ...others].reduce((sum, entry) => sum + entry.copies, 0);
        expect(copies, `seed ${seed}, line ${line.index}`).toBeGreaterThanOrEqual(line.quantity - 1e-4);
      }
    }
  });

  test("an hour less never costs less than an hour more saves", () => {
    let prices = 0;
    for (const { seed, problem } of PROBLEMS.slice(0, 25)) {
      const { machineHour, operatorHour } = hourPrices(problem, prove(problem), highs, NO_LIMIT);
      for (const { moreSavesPerH, lessCostsPerH } of [...machineHour, ...operatorHour]) {
        prices++;
        expect(moreSavesPerH).toBeGreaterThanOrEqual(0);
        expect(lessCostsPerH, `seed ${seed}`).toBeGreaterThanOrEqual(moreSavesPerH - 1e-3);
      }
    }
    expect(prices).toBeGreaterThan(0);
  });
});

/** A little above a bound, for round-off; a problem that leaves copies out has no bound to compare. */
function roomFor({ value, missing }: BoundAnswer): number {
  return missing.length > 0 ? Infinity : value * (1 + CLOSE) + CLOSE;
}

/** The same problem with a second machine like the first. */
function withTwin(problem: PlanProblem): PlanProblem {
  const twin = problem.machines.length;
  const first = problem.machines[0]!;
  const add = (indices: readonly number[]): readonly number[] =>
    indices.includes(0) ? [...indices, twin] : indices;
  return {
    ...problem,
    machines: [...problem.machines, first],
    classes: problem.classes.map((each) => ({ ...each, machineIndices: add(each.machineIndices) })),
    options: problem.options.map((option) => ({ ...option, machineIndices: add(option.machineIndices) })),
  };
}

function modelOf(problem: PlanProblem): BoundModel {
  const model = boundModel(problem, () => true);
  if (!model) throw new Error("there was time, but no model");
  return model;
}

function allColumns(problem: PlanProblem): number[] {
  const model = modelOf(problem);
  const columns: number[] = [];
  model.pool.option.forEach((option, entry) => {
    model.slots[option]!.forEach((_, slot) => {
      if (columnCost(model, entry, slot) < Infinity) columns.push(entry * MOST_SLOTS + slot);
    });
  });
  return columns;
}
