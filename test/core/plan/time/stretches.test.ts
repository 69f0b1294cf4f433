import { expect, test } from "vitest";
import { inCommon, joinOver, joinTouching, withoutStretches } from "../../../../core/plan/time/stretches.ts";
import { seededRandom } from "../../../../core/units/random.ts";

const of = (...pairs: readonly [number, number][]) =>
  pairs.map(([startMin, endMin]) => ({ startMin, endMin }));

const upTo5 = (gap: { startMin: number; endMin: number }): boolean => gap.endMin - gap.startMin <= 5;
const holds = (list: readonly { startMin: number; endMin: number }[], minute: number): boolean =>
  list.some(({ startMin, endMin }) => startMin <= minute && minute < endMin);

test("stretches that touch, overlap or lie within are joined", () => {
  expect(joinTouching(of([0, 10], [10, 20], [12, 15], [18, 25], [26, 30]))).toEqual(of([0, 25], [26, 30]));
});

test("stretches are joined over the gaps that may be spanned", () => {
  expect(joinOver(of([0, 10], [15, 20], [40, 50]), upTo5)).toEqual(of([0, 20], [40, 50]));
});

test("holes are cut out and what a stretch carries stays", () => {
  const staffed = [{ startMin: 0, endMin: 100, operators: 2 }];
  expect(withoutStretches(staffed, of([20, 30], [25, 40]))).toEqual([
    { startMin: 0, endMin: 20, operators: 2 },
    { startMin: 40, endMin: 100, operators: 2 },
  ]);
});

test("cutting agrees with a count of single minutes on random stretches and holes", () => {
  const random = seededRandom(3);
  const some = (most: number) =>
    Array.from({ length: Math.floor(random() * most) }, () => {
      const startMin = Math.floor(random() * 100);
      return { startMin, endMin: startMin + 1 + Math.floor(random() * 20) };
    }).toSorted((a, b) => a.startMin - b.startMin);
  for (let round = 0; round < 300; round += 1) {
    const stretches = joinTouching(some(6));
    const holes = some(6);
    const left = withoutStretches(stretches, holes);
    for (let minute = 0; minute < 125; minute += 1) {
      expect(holds(left, minute)).toBe(holds(stretches, minute) && !holds(holes, minute));
    }
    expect(left.every(({ startMin, endMin }) => startMin < endMin)).toBe(true);
  }
});

test("what two lists have in common is what lies in both, ends that touch not counted", () => {
  expect(inCommon(of([0, 60]), of([20, 30], [50, 90]))).toEqual(of([20, 30], [50, 60]));
  expect(inCommon(of([0, 10]), of([10, 20]))).toEqual([]);
});
