import { expect, test } from "vitest";
import { verticalAxes } from "../../../core/estimate/orientation.ts";
import { aPart } from "../../fixtures/a-route.ts";

test("a part that names nothing may stand on any axis, z first", () => {
  expect(verticalAxes(aPart())).toEqual(["z", "y", "x"]);
});

test("only named axes may be vertical", () => {
  expect(verticalAxes(aPart({ orientations: ["x", "z"] }))).toEqual(["z", "x"]);
});

test("the axis of the load is never vertical, named or not", () => {
  expect(verticalAxes(aPart({ loadAxis: "z" }))).toEqual(["y", "x"]);
  expect(verticalAxes(aPart({ loadAxis: "x", orientations: ["x", "y"] }))).toEqual(["y"]);
});

test("a load along the only named axis leaves none", () => {
  expect(verticalAxes(aPart({ loadAxis: "x", orientations: ["x"] }))).toEqual([]);
});
