import { expect, test } from "vitest";
import { mixedCostFloor } from "../../../../core/plan/bound/mixed-cost-floor.ts";
import type { PlanOption } from "../../../../core/plan/plan-problem.ts";
import { tinyProblem } from "../../../fixtures/tiny-problem.ts";

test("no mixture of two or three items costs less than its floor", () => {
  let mixtures = 0;
  for (let seed = 0; seed < 120; seed++) {
    const problem = tinyProblem(seed);
    for (const key of new Set(problem.options.map((option) => option.mixKey))) {
      if (key < 0) continue;
      const options = problem.options.filter((option) => option.mixKey === key);
      const floor = mixedCostFloor(problem, options);
      for (const items of mixturesOf(options)) {
        mixtures++;
        const least = items.reduce(
          (sum, { at, copies }) => sum + copies * floor.perCopy[at]!,
          floor.perBuild,
        );
        const cost = problem.mixedCost(
          items.map(({ at, copies }) => ({ optionIndex: options[at]!.index, copies })),
        );
        expect(cost, `seed ${seed}`).toBeGreaterThanOrEqual(least - 1e-9);
      }
    }
  }
  expect(mixtures).toBeGreaterThan(100);
});

test("with costs that grow evenly the floor of a build is what a build costs before its first minute of printing", () => {
  const problem = tinyProblem(3);
  const option = { ...problem.options[0]!, mixKey: 0 };
  const even = {
    ...problem,
    mixedCost: (items: readonly { copies: number }[]) =>
      50 + 2 * (option.route.fixedMin + runOf(option, items)),
  };
  expect(mixedCostFloor(even, [option]).perBuild).toBeCloseTo(50 + 2 * option.route.fixedMin, 6);
});

/** Whole minutes of items of one option above the fixed part. */
function runOf({ route }: PlanOption, items: readonly { copies: number }[]): number {
  const seconds = items.reduce((sum, { copies }) => {
    const layers = route.layerGroups.map(({ count, workS }) => {
      return count * Math.max(copies * workS + route.layerChangeS, route.shortestLayerS);
    });
    return sum + layers.reduce((total, each) => total + each, 0);
  }, 0);
  return Math.ceil(route.fixedMin + (seconds * route.timeFactor) / 60 - 1e-6) - route.fixedMin;
}

function mixturesOf(options: readonly PlanOption[]): { at: number; copies: number }[][] {
  const mixtures: { at: number; copies: number }[][] = [];
  const extend = (items: readonly { at: number; copies: number }[], from: number): void => {
    for (let at = from; at < options.length; at++) {
      for (let copies = options[at]!.copiesMin; copies <= options[at]!.copiesMax; copies++) {
        const more = [...items, { at, copies }];
        mixtures.push(more);
        if (more.length < 3) extend(more, at + 1);
      }
    }
  };
  extend([], 0);
  return mixtures;
}
