import { describe, expect, test } from "vitest";
import { leftOver } from "../../../../core/plan/write/left-over.ts";
import type { PlanProblem } from "../../../../core/plan/plan-problem.ts";
import { randomProblem } from "../../../fixtures/random-problem.ts";

const given = randomProblem({ machines: 3, lines: 3, weeks: 1 }, 1);

/** The first line with so many copies in builds of these sizes. */
function left(quantity: number, sizes: readonly (readonly [least: number, most: number])[]) {
  const line = { ...given.lines[0]!, quantity, optionIndices: sizes.map((_, index) => index), buyOut: null };
  const options = sizes.map(([copiesMin, platformCopies], index) => ({
    ...given.options[index]!,
    copiesMin,
    platformCopies,
  }));
  const problem: PlanProblem = { ...given, lines: [line], options };
  return leftOver(problem, line);
}

describe("copies that no builds add up to", () => {
  test("7 copies two at a time leave 1, and 1 more would leave none", () => {
    expect(left(7, [[2, 2]])).toEqual({ copies: 1, sizes: ["2"], more: 1 });
  });

  test("none are left where the sizes add up", () => {
    expect(left(8, [[2, 2]])).toBeNull();
    expect(left(7, [[2, 3]])).toBeNull();
    expect(
      left(7, [
        [2, 2],
        [5, 5],
      ]),
    ).toBeNull();
  });

  test("none are left where one copy at a time is allowed, or the rest can be bought", () => {
    expect(
      left(7, [
        [2, 2],
        [1, 1],
      ]),
    ).toBeNull();
  });

  test.each([
    [5, [[3, 3]], 2, 1],
    [11, [[4, 5]], 1, 1],
    [
      7,
      [
        [4, 4],
        [6, 6],
      ],
      1,
      1,
    ],
    [3, [[2, 2]], 1, 1],
  ] as const)(
    "%i copies in builds of %j leave %i, %i more would leave none",
    (quantity, sizes, copies, more) => {
      expect(left(quantity, sizes)).toMatchObject({ copies, more });
    },
  );
});
