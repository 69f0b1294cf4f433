import { describe, expect, test } from "vitest";
import { toolPathFactor } from "../../../core/estimate/tool-path-work.ts";
import type { Part } from "../../../core/shop/part.ts";
import { aCut, aMeasuredPart, aStanding } from "../../fixtures/a-measured-part.ts";
import { aPart } from "../../fixtures/a-route.ts";

function standing(up: string, islands: number) {
  return aStanding({ up, cuts: [aCut({ zMm: 20, islands })] });
}

function legs(islands: number): Part {
  return aMeasuredPart({}, [standing("z", islands)]);
}

/** A box of walls of one bead with ribs across it, up to that height of 20 mm, plain above. */
function ribbed(holes: number, upToMm: number, thickness = 0.8): Part {
  const wall = { areaMm2: 140 * thickness, perimeterMm: 280 };
  const cuts = [aCut({ zMm: upToMm, ...wall, holes }), aCut({ zMm: 20, ...wall, holes: 1 })];
  return aMeasuredPart({ shells: 1, smallestFeatureMm: 0.8 }, [aStanding({ cuts })]);
}

test("more than three islands make the paths of a pellet machine half as long again to prepare, of a filament machine not", () => {
  expect(toolPathFactor(legs(3), "pellet")).toBe(1);
  expect(toolPathFactor(legs(4), "pellet")).toBe(1.5);
  expect(toolPathFactor(legs(4), "filament")).toBe(1);
});

test("a part that may stand so that there are fewer is as any other", () => {
  const table = [standing("z", 4), standing("x", 2)];
  expect(toolPathFactor(aMeasuredPart({}, table), "pellet")).toBe(1);
  expect(toolPathFactor(aMeasuredPart({ orientations: ["z"] }, table), "pellet")).toBe(1.5);
});

test("by measures alone its cuts along z decide", () => {
  const layers = [{ zMm: 10, areaMm2: 100, perimeterMm: 80, islands: 5 }];
  const { geometry } = aPart();
  const part = aPart({ geometry: { kind: "measures", measures: { ...geometry.measures, layers } } });
  expect(toolPathFactor(part, "pellet")).toBe(1.5);
  expect(toolPathFactor(aPart(), "pellet")).toBe(1);
});

describe("thin walls that meet", () => {
  test("are hard from one rib on, which makes two holes of one", () => {
    expect(toolPathFactor(ribbed(1, 10), "pellet")).toBe(1);
    expect(toolPathFactor(ribbed(2, 10), "pellet")).toBe(1.5);
    expect(toolPathFactor(ribbed(2, 10), "filament")).toBe(1);
  });

  test("over little of the height count for nothing, nor do holes in a body that is filled between its walls", () => {
    expect(toolPathFactor(ribbed(2, 0.4), "pellet")).toBe(1);
    expect(toolPathFactor(ribbed(2, 0.41), "pellet")).toBe(1.5);
    expect(toolPathFactor(ribbed(2, 10, 1.6), "pellet")).toBe(1);
  });
});
