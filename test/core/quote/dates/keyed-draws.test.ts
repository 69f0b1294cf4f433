import { expect, test } from "vitest";
import { drawAt, drawKey, runKey } from "../../../../core/quote/dates/keyed-draws.ts";
import { normalTable } from "../../../../core/quote/dates/normal-draw.ts";
import { normalQuantile } from "../../../../core/quote/normal-law.ts";

/** Draws of many runs for one name and one place. */
function draws(name: string, place: number, runs: number, seed = 1): Float64Array {
  const { a, b } = drawKey(name);
  return Float64Array.from({ length: runs }, (_, run) => drawAt(runKey(seed, run), a, b, place));
}

function correlation(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  one.forEach((value, index) => {
    sum += (value - 0.5) * ((other[index] ?? 0) - 0.5);
  });
  return (12 * sum) / one.length;
}

test("draws are even: mean 1/2, variance 1/12, each of 100 cells within 5 standard deviations", () => {
  const values = draws("F1 O-1", 0, 100_000);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  expect(Math.abs(mean - 0.5)).toBeLessThan(0.004);
  expect(Math.abs(correlation(values, values) - 1)).toBeLessThan(0.01);
  const cells = Array.from({ length: 100 }, () => 0);
  for (const value of values) cells[Math.floor(value * 100)]! += 1;
  for (const count of cells) expect(Math.abs(count - 1000)).toBeLessThan(5 * Math.sqrt(990));
});

test("draws of other names, places, runs and seeds have nothing in common", () => {
  const base = draws("F1 O-1", 0, 20_000);
  const limit = 4 / Math.sqrt(20_000);
  expect(Math.abs(correlation(base, draws("F1 O-2", 0, 20_000)))).toBeLessThan(limit);
  expect(Math.abs(correlation(base, draws("F1 O-1", 1, 20_000)))).toBeLessThan(limit);
  expect(Math.abs(correlation(base, draws("F1 O-1", 0, 20_000, 2)))).toBeLessThan(limit);
  expect(Math.abs(correlation(base.slice(1), base.slice(0, -1)))).toBeLessThan(limit);
});

test("draws lie strictly between 0 and 1 and are the same for the same name", () => {
  const values = draws("any", 3, 1000);
  expect(Math.min(...values)).toBeGreaterThan(0);
  expect(Math.max(...values)).toBeLessThan(1);
  expect(draws("any", 3, 1000)).toEqual(values);
});

test("run 7 of seed 1 is not run 1 of seed 7", () => {
  expect(runKey(1, 7)).not.toBe(runKey(7, 1));
});

test("the table of the normal law is within 1e-5 of the law, tails too", () => {
  const table = normalTable();
  for (const share of [2 ** -33, 1e-6, 2.4e-4, 2.5e-4, 0.001, 0.0156, 0.0157, 0.1, 0.3, 0.49999, 0.5]) {
    expect(Math.abs(table.at(share) - normalQuantile(share)), String(share)).toBeLessThan(1e-5);
    expect(Math.abs(table.at(1 - share) + normalQuantile(share)), String(share)).toBeLessThan(1e-5);
  }
});
