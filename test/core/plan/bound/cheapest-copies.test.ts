import { expect, test } from "vitest";
import { cheapestCopies } from "../../../../core/plan/bound/cheapest-copies.ts";
import type { PlanProblem } from "../../../../core/plan/plan-problem.ts";
import { randomProblem } from "../../../fixtures/random-problem.ts";

const given = randomProblem({ machines: 2, lines: 1, weeks: 1 }, 1);

/** One line of ten copies: 4 each in builds of one, 30 in builds of ten. */
function one(more: { mixKey?: number; pricePerPiece?: number }): PlanProblem {
  const costByCopies = Float64Array.from({ length: 11 }, (_, copies) => (copies === 10 ? 30 : 4 * copies));
  const option = {
    ...given.options[0]!,
    copiesMin: 1,
    copiesMax: 10,
    costByCopies,
    mixKey: more.mixKey ?? -1,
  };
  const buyOut =
    more.pricePerPiece === undefined ? null : { pricePerPiece: more.pricePerPiece, arriveMin: 0 };
  const line = { ...given.lines[0]!, quantity: 10, optionIndices: [0], buyOut };
  return { ...given, lines: [line], options: [option] };
}

test("every copy counts at its cheapest, by whatever number of copies in a build", () => {
  expect(cheapestCopies(one({}))).toBe(30);
});

test("a copy that can be bought for less counts at that price", () => {
  expect(cheapestCopies(one({ pricePerPiece: 2 }))).toBe(20);
  expect(cheapestCopies(one({ pricePerPiece: 5 }))).toBe(30);
});

test("copies that may share a platform with other lines count nothing", () => {
  expect(cheapestCopies(one({ mixKey: 0 }))).toBe(0);
});
