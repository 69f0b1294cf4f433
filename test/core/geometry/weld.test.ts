import { expect, test } from "vitest";
import { Welder } from "../../../core/geometry/weld.ts";
import { FloatWelder } from "../../../core/geometry/weld-floats.ts";
import { seededRandom } from "../../../core/units/random.ts";

test("equal points have one number, in the order of their coming", () => {
  const welder = new Welder(0);
  const numbers = [
    [0, 0, 0],
    [1, 0, 0],
    [0, 0, 0],
    [0, 1, 0],
    [1, 0, 0],
  ].map(([x = 0, y = 0, z = 0]) => welder.cornerAt(x, y, z));
  expect(numbers).toEqual([0, 1, 0, 2, 1]);
  expect([...welder.corners(2)]).toEqual([0, 0, 0, 2, 0, 0, 0, 2, 0]);
});

test("points that differ in the last bit are two", () => {
  const welder = new Welder(0);
  expect([welder.cornerAt(1, 0, 0), welder.cornerAt(1 + Number.EPSILON, 0, 0)]).toEqual([0, 1]);
});

test("many more points than expected keep their numbers", () => {
  const welder = new Welder(1);
  const random = seededRandom(5);
  const points = Array.from({ length: 20_000 }, () => [random(), random(), random()] as const);
  const first = points.map((point) => welder.cornerAt(...point));
  expect(points.map((point) => welder.cornerAt(...point))).toEqual(first);
  expect(new Set(first).size).toBe(20_000);
});

test("float32 points are welded as others are: same numbers, same corners, grown or not", () => {
  const random = seededRandom(7);
  const float = () => Math.fround(Math.floor(20 * random()) - 10) / 4;
  const bits = new DataView(new ArrayBuffer(4));
  const bitsOf = (value: number): number => {
    bits.setFloat32(0, value);
    return bits.getInt32(0);
  };
  const welder = new Welder(0);
  const floats = new FloatWelder(0);
  for (let point = 0; point < 20_000; point++) {
    const [x, y, z] = [float(), float(), random() < 0.5 ? -0 : float()];
    expect(floats.cornerAt(bitsOf(x), bitsOf(y), bitsOf(z))).toBe(welder.cornerAt(x, y, z));
  }
  expect(floats.corners(25.4)).toEqual(welder.corners(25.4));
});

test.each([
  ["doubles", (corners: number) => new Welder(corners), (value: number) => value],
  [
    "floats",
    (corners: number) => new FloatWelder(corners),
    (value: number) => new Int32Array(Float32Array.of(value).buffer)[0] ?? 0,
  ],
])(
  "a grid of round coordinates is as fast as random points: no pile-up in the table of %s",
  (_name, make, numberOf) => {
    const msOf = (points: readonly (readonly number[])[]): number => {
      const start = performance.now();
      const welder = make(points.length);
      for (const [x = 0, y = 0, z = 0] of points) welder.cornerAt(x, y, z);
      return performance.now() - start;
    };
    const grid = Array.from({ length: 64_000 }, (_, n) =>
      [n % 40, Math.floor(n / 40) % 40, Math.floor(n / 1600)].map(numberOf),
    );
    const random = seededRandom(6);
    const cloud = grid.map(() => [random(), random(), random()].map(numberOf));
    msOf(cloud);
    msOf(grid);
    const ratios = [1, 2, 3].map(() => msOf(grid) / msOf(cloud));
    expect(Math.min(...ratios)).toBeLessThan(10);
  },
);
