import { describe, expect, test } from "vitest";
import { checkAnswer } from "../../core/plan/engines/check-answer.ts";
import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../core/plan/engines/highs.ts";
import { loadHighsRanging, type Range } from "../../core/plan/engines/highs-ranging.ts";
import type { LinearProgram } from "../../core/plan/linear-program.ts";
import { aProgram, type DenseRow } from "../fixtures/a-program.ts";

/**
 * Worked examples of textbooks with their optimum, prices, reduced costs and ranges, on both engines. Values from memory
 * unless said otherwise. Those that maximise are written with negated costs, so objective, prices and reduced costs change
 * sign and a range of a cost turns round; the tables below hold the textbook's own signs.
 */
interface WorkedExample {
  readonly name: string;
  readonly sense: "max" | "min";
  readonly cost: readonly number[];
  readonly rows: readonly DenseRow[];
  readonly objective: number;
  readonly values?: readonly number[];
  readonly prices: readonly number[];
  /** by column, where the source gives it */
  readonly reduced?: Readonly<Record<number, number>>;
  readonly costRanges?: Readonly<Record<number, Range>>;
  readonly limitRanges?: Readonly<Record<number, Range>>;
}

const range = (from: number, to: number): Range => ({ from, to });

const EXAMPLES: readonly WorkedExample[] = [
  {
    name: "Wyndor glass (Hillier & Lieberman, Introduction to Operations Research)",
    sense: "max",
    cost: [3, 5],
    rows: [
      { of: [1, 0], atMost: 4 },
      { of: [0, 2], atMost: 12 },
      { of: [3, 2], atMost: 18 },
    ],
    objective: 36,
    values: [2, 6],
    prices: [0, 1.5, 1],
    reduced: { 0: 0, 1: 0 },
    costRanges: { 0: range(0, 7.5), 1: range(2, Infinity) },
    limitRanges: { 0: range(2, Infinity), 1: range(6, 18), 2: range(12, 24) },
  },
  {
    name: "Dakota furniture (Winston, Operations Research)",
    sense: "max",
    cost: [60, 30, 20],
    rows: [
      { of: [8, 6, 1], atMost: 48 },
      { of: [4, 2, 1.5], atMost: 20 },
      { of: [2, 1.5, 0.5], atMost: 8 },
    ],
    objective: 280,
    values: [2, 0, 8],
    prices: [0, 10, 10],
    reduced: { 1: -5 },
    costRanges: { 0: range(56, 80), 1: range(-Infinity, 35), 2: range(15, 22.5) },
    limitRanges: { 0: range(24, Infinity), 1: range(16, 24), 2: range(20 / 3, 10) },
  },
  {
    name: "three toys (Taha, Operations Research: An Introduction)",
    sense: "max",
    cost: [3, 2, 5],
    rows: [
      { of: [1, 2, 1], atMost: 430 },
      { of: [3, 0, 2], atMost: 460 },
      { of: [1, 4, 0], atMost: 420 },
    ],
    objective: 1350,
    values: [0, 100, 230],
    prices: [1, 2, 0],
    reduced: { 0: -4 },
    costRanges: { 0: range(-Infinity, 7), 1: range(0, 10), 2: range(7 / 3, Infinity) },
    limitRanges: { 0: range(230, 440), 1: range(440, 860), 2: range(400, Infinity) },
  },
  {
    name: "wooden toys (Winston, Operations Research)",
    sense: "max",
    cost: [3, 2],
    rows: [
      { of: [2, 1], atMost: 100 },
      { of: [1, 1], atMost: 80 },
      { of: [1, 0], atMost: 40 },
    ],
    objective: 180,
    values: [20, 60],
    prices: [1, 1, 0],
    costRanges: { 0: range(2, 4), 1: range(1.5, 3) },
    limitRanges: { 0: range(80, 120), 1: range(60, 100), 2: range(20, Infinity) },
  },
  {
    name: "canneries to markets (Dantzig 1963, Linear Programming and Extensions); several plans are optimal",
    sense: "min",
    cost: [0.225, 0.153, 0.162, 0.225, 0.162, 0.126],
    rows: [
      { of: [1, 1, 1, 0, 0, 0], atMost: 350 },
      { of: [0, 0, 0, 1, 1, 1], atMost: 600 },
      { of: [1, 0, 0, 1, 0, 0], atLeast: 325 },
      { of: [0, 1, 0, 0, 1, 0], atLeast: 300 },
      { of: [0, 0, 1, 0, 0, 1], atLeast: 275 },
    ],
    objective: 153.675,
    prices: [0, 0, 0.225, 0.153, 0.126],
    reduced: { 2: 0.036, 4: 0.009 },
  },
  {
    name: "parts on a small and a large machine (own example, optimum by hand)",
    sense: "min",
    cost: [6, 9, 14, 8, 22, 11],
    rows: [
      { of: [2, 0, 5, 0, 9, 0], atMost: 160 },
      { of: [0, 1, 0, 2, 0, 3], atMost: 60 },
      { of: [1, 1, 0, 0, 0, 0], atLeast: 40 },
      { of: [0, 0, 1, 1, 0, 0], atLeast: 20 },
      { of: [0, 0, 0, 0, 1, 1], atLeast: 12 },
    ],
    objective: 580,
    values: [40, 0, 8, 12, 0, 12],
    prices: [0, -3, 6, 14, 20],
    reduced: { 1: 6, 4: 2 },
    limitRanges: { 1: range(44, 76) },
  },
  {
    name: "six jobs on two unrelated machines, shared freely (relaxation of Lawler & Labetoulle 1978; own data)",
    sense: "min",
    cost: [1, ...Array.from({ length: 12 }, () => 0)],
    rows: [
      { of: [1, -10, 0, -8, 0, -6, 0, -5, 0, -12, 0, -7, 0], atLeast: 0 },
      { of: [1, 0, -4, 0, -6, 0, -9, 0, -7, 0, -5, 0, -12], atLeast: 0 },
      ...Array.from({ length: 6 }, (_, job) => ({
        of: [0, ...Array.from({ length: 12 }, (__, at) => (at >> 1 === job ? 1 : 0))],
        atLeast: 1,
      })),
    ],
    objective: 16.75,
    prices: [7 / 12, 5 / 12],
  },
];

const engines = [await loadGlpk(), await loadHighs()];
const rangesOf = await loadHighsRanging();

function programOf({ sense, cost, rows }: WorkedExample): LinearProgram {
  return aProgram(sense === "max" ? cost.map((each) => -each) : cost, rows);
}

function expectRange(found: Range | undefined, wanted: Range): void {
  if (!found) throw new Error("no range was found");
  for (const end of ["from", "to"] as const) {
    if (Number.isFinite(wanted[end])) expect(found[end]).toBeCloseTo(wanted[end], 6);
    else expect(found[end]).toBe(wanted[end]);
  }
}

describe.each(EXAMPLES)("$name", (example) => {
  const sign = example.sense === "max" ? -1 : 1;
  const program = programOf(example);

  test.each(engines)("$name finds the optimum, prices and reduced costs, and proves them", (engine) => {
    const answer = engine.solve(program, 5);
    expect(answer.status).toBe("optimal");
    expect(answer.objective * sign).toBeCloseTo(example.objective, 6);
    example.values?.forEach((value, col) => expect(answer.values[col]).toBeCloseTo(value, 6));
    example.prices.forEach((price, row) => expect(answer.rowPrices[row]! * sign).toBeCloseTo(price, 6));
    for (const [col, reduced] of Object.entries(example.reduced ?? {})) {
      expect(answer.reducedCosts[Number(col)]! * sign).toBeCloseTo(reduced, 6);
    }
    expect(checkAnswer(program, answer)).toEqual([]);
  });

  test("the ranges are the textbook's", () => {
    const { cost, rowLimit } = rangesOf(program);
    for (const [col, wanted] of Object.entries(example.costRanges ?? {})) {
      const found = cost[Number(col)];
      expectRange(sign < 0 && found ? { from: -found.to, to: -found.from } : found, wanted);
    }
    for (const [row, wanted] of Object.entries(example.limitRanges ?? {}))
      expectRange(rowLimit[Number(row)], wanted);
  });
});

test.each(engines)("$name: one hour or copy more or less changes the cost by exactly its price", (engine) => {
  const example = EXAMPLES[5]!;
  const costWith = (row: number, step: number): number => {
    const rows = example.rows.map((each, at): DenseRow => {
      if (at !== row) return each;
      return each.atMost === undefined
        ? { of: each.of, atLeast: (each.atLeast ?? 0) + step }
        : { of: each.of, atMost: each.atMost + step };
    });
    return engine.solve(aProgram(example.cost, rows), 5).objective;
  };
  for (const row of [1, 2, 3, 4]) {
    expect(costWith(row, 1) - 580).toBeCloseTo(example.prices[row]!, 6);
    expect(580 - costWith(row, -1)).toBeCloseTo(example.prices[row]!, 6);
  }
});

test.each(engines)("$name says that x >= 5 and x <= 3 cannot be met together", (engine) => {
  const answer = engine.solve(
    aProgram(
      [1],
      [
        { of: [1], atLeast: 5 },
        { of: [1], atMost: 3 },
      ],
    ),
    5,
  );
  expect(answer.status).toBe("infeasible");
});

test.each(engines)("$name says that nothing limits a column that earns", (engine) => {
  const answer = engine.solve(
    aProgram(
      [-1, 0],
      [
        { of: [0, 1], atMost: 3 },
        { of: [-1, 1], atMost: 1 },
      ],
    ),
    5,
  );
  expect(answer.status).toBe("unbounded");
});
