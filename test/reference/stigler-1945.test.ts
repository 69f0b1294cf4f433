import { expect, test } from "vitest";
import { checkAnswer } from "../../core/plan/engines/check-answer.ts";
import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../core/plan/engines/highs.ts";
import { aProgram } from "../fixtures/a-program.ts";
import { FOODS_PER_DOLLAR } from "../fixtures/stigler-foods.ts";

/** Least amounts a day: calories, protein, calcium, iron, vitamin A, B1, B2, niacin, vitamin C. */
const NEEDED = [3, 70, 0.8, 12, 5, 1.8, 2.7, 18, 75];
const CALCIUM = 2;
const DAYS_PER_YEAR = 365;

/** Dollars a year by food, and the price of calcium, as the later exact solutions give them (from memory). */
const DOLLARS_PER_YEAR: Readonly<Record<string, number>> = {
  "wheat flour": 10.7745,
  "beef liver": 0.6908,
  cabbage: 4.0933,
  spinach: 1.8278,
  "dried navy beans": 22.2754,
};
const CALCIUM_PRICE_PER_YEAR = 11.5843;

const foods = FOODS_PER_DOLLAR.trim()
  .split("\n")
  .map((line) => {
    const words = line.trim().split(/ +/);
    return {
      name: words.slice(0, -NEEDED.length).join(" "),
      amounts: words.slice(-NEEDED.length).map(Number),
    };
  });

const engines = [await loadGlpk(), await loadHighs()];

test.each(engines)("the cheapest diet of G. J. Stigler 1945 costs 39.66 dollars a year: $name", (engine) => {
  expect(foods).toHaveLength(77);
  const program = aProgram(
    foods.map(() => 1),
    NEEDED.map((atLeast, row) => ({ of: foods.map(({ amounts }) => amounts[row]!), atLeast })),
  );
  const answer = engine.solve(program, 5);
  expect(checkAnswer(program, answer)).toEqual([]);
  expect(answer.objective).toBeCloseTo(0.108662, 6);
  expect(answer.objective * DAYS_PER_YEAR).toBeCloseTo(39.6617, 3);
  foods.forEach(({ name }, col) =>
    expect(answer.values[col]! * DAYS_PER_YEAR, name).toBeCloseTo(DOLLARS_PER_YEAR[name] ?? 0, 3),
  );
  expect(answer.rowPrices[CALCIUM]! * DAYS_PER_YEAR).toBeCloseTo(CALCIUM_PRICE_PER_YEAR, 3);
});
