import { expect, test } from "vitest";
import { copyHull } from "../../../../core/plan/bound/copy-hull.ts";
import { seededRandom } from "../../../../core/units/random.ts";

function bend(copies: number): number {
  return Math.max(10, 4 * copies);
}

test("a straight table needs its ends only", () => {
  const hull = copyHull(1, 9, [], [{ of: (copies) => 3 + 2 * copies, tolerance: 0.01 }]);
  expect(hull.copies).toEqual([1, 9]);
  expect([...hull.values[0]!]).toEqual([5, 21]);
});

test("a bend gets a vertex when its chord lies too high, and is shifted when within the tolerance", () => {
  expect(copyHull(1, 5, [], [{ of: bend, tolerance: 0.5 }]).copies).toContain(3);
  const rough = copyHull(1, 5, [], [{ of: bend, tolerance: 100 }]);
  expect(rough.copies).toEqual([1, 5]);
  // The chord at 3 is 15, at 2 it is 12.5; the table has 12 and 10 there.
  expect([...rough.values[0]!]).toEqual([7, 17]);
});

test("wanted copies become vertices inside the range only", () => {
  const hull = copyHull(2, 6, [1, 4, 6, 9], [{ of: (copies) => copies, tolerance: 1 }]);
  expect(hull.copies).toEqual([2, 4, 6]);
});

test("no mixture of neighbours costs more than the build between them, whatever the table", () => {
  const random = seededRandom(5);
  for (let trial = 0; trial < 200; trial++) {
    const values = Array.from({ length: 12 }, () => random() * 10);
    const table = { of: (copies: number) => values[copies - 1]!, tolerance: random() * 5 };
    const { copies, values: lowered } = copyHull(1, 12, [], [table]);
    for (let between = 1; between <= 12; between++) {
      const at = copies.findIndex((vertex) => vertex >= between);
      const [from, to] = [copies[Math.max(0, at - 1)]!, copies[at]!];
      const share = from === to ? 1 : (between - from) / (to - from);
      const mixture = (1 - share) * lowered[0]![Math.max(0, at - 1)]! + share * lowered[0]![at]!;
      expect(mixture).toBeLessThanOrEqual(table.of(between) + 1e-9);
    }
  }
});
