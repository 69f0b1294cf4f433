import { expect, test } from "vitest";
import { angleToAxisDeg, sideUp, standsFor, vectorUp } from "../../../core/shop/direction.ts";

function standing(name: string): string[] {
  return ["z", "-z", "x", "tilted"].filter((label) => standsFor(name, label));
}

test("a bare axis stands for both of its ways, a signed one for one, an own label for itself", () => {
  expect(standing("z")).toEqual(["z", "-z"]);
  expect(standing("+z")).toEqual(["z"]);
  expect(standing("-z")).toEqual(["-z"]);
  expect(standing("tilted")).toEqual(["tilted"]);
});

test("angles to an axis go from 0 to 90 degrees whichever way either points and however long the vector is", () => {
  expect(angleToAxisDeg({ x: 0, y: 0, z: -2 }, "z")).toBe(0);
  expect(angleToAxisDeg({ x: 1, y: 0, z: 1 }, "z")).toBeCloseTo(45, 12);
  expect(angleToAxisDeg({ x: -1, y: 0, z: -Math.sqrt(3) }, "x")).toBeCloseTo(60, 12);
  expect(angleToAxisDeg({ x: 0, y: 5, z: 0 }, "x")).toBe(90);
});

test("operators read which side is up", () => {
  expect(["z", "-x", "tilted"].map(sideUp)).toEqual(["z up", "x down", "tilted up"]);
});

test("a standing's direction is its axis, or the vector that was measured", () => {
  expect(vectorUp({ up: "-x" })).toEqual({ x: -1, y: 0, z: 0 });
  const vector = { x: 1, y: 2, z: 3 };
  expect(vectorUp({ up: "tilted", vector })).toBe(vector);
  expect(vectorUp({ up: "tilted" })).toBeUndefined();
  expect(vectorUp({ up: "toString" })).toBeUndefined();
});
