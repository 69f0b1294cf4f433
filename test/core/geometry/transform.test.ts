import { expect, test } from "vitest";
import { readTransform, thenTransform, UNMOVED, volumeFactor } from "../../../core/geometry/transform.ts";

const moved = [1, 0, 0, 0, 1, 0, 0, 0, 1, 1, 2, 3];
const doubled = [2, 0, 0, 0, 2, 0, 0, 0, 2, 0, 0, 0];
const turned = [0, 1, 0, -1, 0, 0, 0, 0, 1, 0, 0, 0];

test("what is done first stands left", () => {
  expect(thenTransform(moved, doubled).slice(9)).toEqual([2, 4, 6]);
  expect(thenTransform(doubled, moved).slice(9)).toEqual([1, 2, 3]);
});

test("nothing before or after changes nothing", () => {
  expect(thenTransform(UNMOVED, turned)).toEqual(turned);
  expect(thenTransform(turned, UNMOVED)).toEqual(turned);
});

test("four quarter turns are none", () => {
  const half = thenTransform(turned, turned);
  expect(thenTransform(half, half).map((number) => number + 0)).toEqual(UNMOVED);
});

test("the volume factor is 8 for doubling, 1 for turning, -1 for mirroring, 0 for flattening", () => {
  const mirrored = [-1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];
  const flat = [1, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0];
  expect([doubled, turned, mirrored, flat].map(volumeFactor)).toEqual([8, 1, -1, 0]);
});

test.each(["", "1", "1 0 0 0 1 0 0 0 1 0 0", "1 0 0 0 1 0 0 0 1 0 0 0 0", "1 0 0 0 1 0 0 0 1 0 0 x"])(
  "%j is no transform",
  (text) => {
    expect(readTransform(text)).toBeNull();
  },
);

test("twelve numbers between any spaces are one", () => {
  expect(readTransform(" 1 0 0\n0 1 0\t0 0 1  1 2 3e0 ")).toEqual(moved);
});
