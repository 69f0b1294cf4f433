import { describe, expect, test } from "vitest";
import { directionsUp } from "../../../core/shop/directions-up.ts";
import type { Part } from "../../../core/shop/part.ts";
import { aPart } from "../../fixtures/a-route.ts";
import { aMeasuredPart, aStanding } from "../../fixtures/a-measured-part.ts";

function up(overrides: Partial<Part>): string[] {
  return directionsUp(aMeasuredPart(overrides));
}

describe("by measures alone", () => {
  test("a part that names nothing may stand on any axis, z first", () => {
    expect(directionsUp(aPart())).toEqual(["z", "y", "x"]);
  });

  test("only named axes may be vertical, and which way up they are makes no difference", () => {
    expect(directionsUp(aPart({ orientations: ["x", "z"] }))).toEqual(["z", "x"]);
    expect(directionsUp(aPart({ orientations: ["+x", "-y"] }))).toEqual(["-y", "x"]);
  });

  test("the axis of the load is never vertical, named or not", () => {
    expect(directionsUp(aPart({ loadAxis: "z" }))).toEqual(["y", "x"]);
    expect(directionsUp(aPart({ loadAxis: "x", orientations: ["x", "y"] }))).toEqual(["y"]);
    expect(directionsUp(aPart({ loadAxis: "x", orientations: ["-x", "y"] }))).toEqual(["y"]);
  });

  test("a load along the only named axis leaves none, nor does a direction that nobody measured", () => {
    expect(directionsUp(aPart({ loadAxis: "x", orientations: ["x"] }))).toEqual([]);
    expect(directionsUp(aPart({ orientations: ["tilted"] }))).toEqual([]);
  });
});

describe("from a mesh", () => {
  test("every measured direction may be up", () => {
    expect(up({})).toEqual(["z", "-z", "y", "-y", "x", "-x"]);
  });

  test("a bare axis stands for both of its ways, one with a sign for that way alone", () => {
    expect(up({ orientations: ["z"] })).toEqual(["z", "-z"]);
    expect(up({ orientations: ["+z", "-x"] })).toEqual(["z", "-x"]);
  });

  test("neither way of the load's axis may be up", () => {
    expect(up({ loadAxis: "y" })).toEqual(["z", "-z", "x", "-x"]);
  });

  test.each([
    [29.9, []],
    [30.1, ["tilted"]],
    [150.1, []],
    [149.9, ["tilted"]],
  ])("a direction of its own %f degrees off the load's axis: %o", (angleDeg, expected) => {
    const angle = (angleDeg * Math.PI) / 180;
    const vector = { x: Math.cos(angle), y: Math.sin(angle), z: 0 };
    const standing = aStanding({ up: "tilted", vector });
    expect(directionsUp(aMeasuredPart({ loadAxis: "x" }, [standing]))).toEqual(expected);
  });

  test("a direction of its own is allowed by its label", () => {
    const standings = [aStanding(), aStanding({ up: "tilted", vector: { x: 1, y: 0, z: 1 } })];
    expect(directionsUp(aMeasuredPart({ orientations: ["tilted"] }, standings))).toEqual(["tilted"]);
  });
});
