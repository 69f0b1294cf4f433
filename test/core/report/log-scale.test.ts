import { expect, test } from "vitest";
import { logScale, roundSteps } from "../../../core/report/log-scale.ts";

test("equal ratios are equally wide, with room at either end", () => {
  const scale = logScale([10, 1000]);
  expect(scale.at(10)).toBeGreaterThan(0.03);
  expect(scale.at(1000)).toBeLessThan(0.97);
  expect(scale.at(100) - scale.at(10)).toBeCloseTo(scale.at(1000) - scale.at(100), 12);
});

test("one value alone has room around it", () => {
  const { low, high, at } = logScale([30]);
  expect([low < 20, high > 45]).toEqual([true, true]);
  expect(at(30)).toBeCloseTo(0.5, 12);
});

test("values beyond the ends are held there", () => {
  const { at } = logScale([10, 100]);
  expect([at(1e-3), at(1e6)]).toEqual([0, 1]);
});

test.each([
  [
    [20, 120],
    [20, 50, 100],
  ],
  [
    [0.1, 5000],
    [0.1, 1, 10, 100, 1000],
  ],
])("%j has ticks at round numbers: %j", (values, ticks) => {
  expect(logScale(values).ticks).toEqual(ticks);
});

test.each([[[]], [[0, 5]], [[-1, 5]], [[1, Infinity]]])("%j has no logarithmic scale", (values) => {
  expect(() => logScale(values)).toThrow(RangeError);
});

test.each([
  [450, 5, [0, 100, 200, 300, 400]],
  [20, 5, [0, 5, 10, 15, 20]],
  [1.2, 6, [0, 0.2, 0.4, 0.6, 0.8, 1, 1.2]],
])("%d in about %d round steps: %j", (to, about, steps) => {
  expect(roundSteps(to, about)).toEqual(steps);
});
