import { describe, expect, it } from "vitest";
import { roundShares } from "../../../../core/plan/search/rounding.ts";
import { SearchData } from "../../../../core/plan/search/search-data.ts";
import { randomProblem } from "../../../fixtures/random-problem.ts";

const problem = randomProblem({ machines: 6, lines: 10, weeks: 1, buyOut: 1 }, 3);
const line = problem.lines.find(({ quantity, optionIndices }) => quantity >= 4 && optionIndices.length >= 3)!;
const [first = -1, second = -1, third = -1] = line.optionIndices;
const rest = line.quantity - 2;

function rounded(copies: readonly (readonly [number, number])[], bought = 0): [number[], number] {
  const data = new SearchData(problem);
  const whole = roundShares(data, {
    shares: copies.map(([optionIndex, count]) => ({ optionIndex, copies: count })),
    boughtOut: [{ lineIndex: line.index, copies: bought }],
  });
  return [[first, second, third].map((option) => whole.ofOption[option]!), whole.boughtOut[line.index]!];
}

describe("rounding the shares of a line", () => {
  it("gives the copy that is left over to the largest remainder", () => {
    expect(
      rounded([
        [first, rest + 0.6],
        [second, 1.4],
      ]),
    ).toEqual([[rest + 1, 1, 0], 0]);
    expect(
      rounded([
        [first, rest + 0.4],
        [second, 1.6],
      ]),
    ).toEqual([[rest, 2, 0], 0]);
  });

  it("counts bought copies with the others", () => {
    expect(rounded([[first, rest + 0.3]], 1.7)).toEqual([[rest, 0, 0], 2]);
  });

  it("never gives more than the line's quantity", () => {
    expect(
      rounded([
        [first, line.quantity],
        [second, 2],
      ])[0].reduce((sum, count) => sum + count, 0),
    ).toBe(line.quantity);
  });

  it("leaves copies out that the shares leave out", () => {
    expect(rounded([[third, rest]])).toEqual([[0, 0, rest], 0]);
  });

  it("takes whole shares with dust as whole", () => {
    expect(
      rounded([
        [first, rest - 1e-9],
        [second, 2 + 1e-9],
      ]),
    ).toEqual([[rest, 2, 0], 0]);
  });
});
