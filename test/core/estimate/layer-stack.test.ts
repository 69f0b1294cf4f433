import { describe, expect, test } from "vitest";
import { layerKinds } from "../../../core/estimate/layer-kinds.ts";
import { exactStack, layerStack } from "../../../core/estimate/layer-stack.ts";
import { aCut, aMeasuredPart, aStanding } from "../../fixtures/a-measured-part.ts";
import { aPart } from "../../fixtures/a-route.ts";

describe("a part from a mesh", () => {
  const cuts = [
    aCut({ zMm: 5, areaMm2: 1200, perimeterMm: 140 }),
    aCut({ zMm: 20, areaMm2: 400, perimeterMm: 160, islands: 4, corners: 16 }),
  ];
  const table = aMeasuredPart({ solidLayers: 2 }, [aStanding({ cuts })]);

  test("has the layers of each band where their middle is", () => {
    const { layers, runs } = layerStack(table, "z", 0.5);
    expect(layers).toBe(40);
    expect(runs).toEqual([
      { cut: 0, solid: true, count: 2 },
      { cut: 0, solid: false, count: 8 },
      { cut: 1, solid: false, count: 28 },
      { cut: 1, solid: true, count: 2 },
    ]);
  });

  test("gives the layer whose middle lies above a band's end to the next band", () => {
    const { runs } = layerStack({ ...table, solidLayers: 0 }, "z", 3);
    expect(runs.map(({ count }) => count)).toEqual([2, 5]);
    const thicker = layerStack({ ...table, solidLayers: 0 }, "z", 3.4);
    expect(thicker.runs.map(({ count }) => count)).toEqual([1, 5]);
  });

  test("keeps its islands and corners, and its outlines shorten inwards as polygons of so many corners do", () => {
    const stack = layerStack(table, "z", 0.5);
    expect(stack.cuts.map(({ islands, corners }) => [islands, corners])).toEqual([
      [1, 4],
      [4, 16],
    ]);
    for (const { shrinkPerMm } of stack.cuts) expect(shrinkPerMm).toBeCloseTo(8, 12);
    const round = aMeasuredPart({}, [aStanding({ cuts: [aCut({ zMm: 20, corners: 0 })] })]);
    expect(layerStack(round, "z", 1).cuts[0]?.shrinkPerMm).toBe(2 * Math.PI);
  });

  test("stands in the allowance below and above with its lowest and highest cut", () => {
    const finishing = { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 1 };
    const { layers, runs, cuts: grown } = layerStack({ ...table, finishing, solidLayers: 0 }, "z", 0.5);
    expect(layers).toBe(44);
    expect(runs.map(({ count }) => count)).toEqual([12, 32]);
    expect(grown[0]?.areaMm2).toBeCloseTo(42 * 32, 9);
    expect(grown[0]?.perimeterMm).toBeCloseTo(2 * (42 + 32), 9);
  });

  test("counts alike layers together as kinds, whatever their height", () => {
    const kinds = layerKinds(table, "z", 0.5);
    expect(kinds.map(({ count, solid, cut }) => [count, solid, cut.areaMm2])).toEqual([
      [2, true, 1200],
      [8, false, 1200],
      [2, true, 400],
      [28, false, 400],
    ]);
  });

  test("takes exact cuts where they are at hand, a layer each", () => {
    const exact = {
      layerHeightMm: 5,
      areaMm2: [4, 3, 2, 1],
      perimeterMm: [8, 8, 8, 8],
      islands: [1, 1, 2, 1],
      sharpCorners: [4, 4, 8, 4],
    };
    const stack = exactStack({ ...table, solidLayers: 1 }, exact, 20);
    expect(stack.layers).toBe(4);
    expect(stack.runs.map(({ cut, solid }) => [cut, solid])).toEqual([
      [0, true],
      [1, false],
      [2, false],
      [3, true],
    ]);
    expect(stack.cuts.map(({ areaMm2, islands }) => [areaMm2, islands])).toEqual([
      [4, 1],
      [3, 1],
      [2, 2],
      [1, 1],
    ]);
  });
});

test("by measures alone a prism is one run of solid layers, one of others and one of solid ones again", () => {
  const { runs } = layerStack(aPart(), "z", 0.2);
  expect(runs.map(({ solid, count }) => [solid, count])).toEqual([
    [true, 4],
    [false, 92],
    [true, 4],
  ]);
});

test("holes lengthen inwards as much as outer outlines shorten: a square tube keeps its outline", () => {
  const ring = aCut({ zMm: 20, areaMm2: 3200, perimeterMm: 800, holes: 1, corners: 8 });
  const part = aMeasuredPart({}, [aStanding({ cuts: [ring] })]);
  expect(layerStack(part, "z", 1).cuts[0]?.shrinkPerMm).toBeCloseTo(0, 12);
  const drilled = aMeasuredPart({}, [aStanding({ cuts: [{ ...ring, holes: 3, corners: 0 }] })]);
  expect(layerStack(drilled, "z", 1).cuts[0]?.shrinkPerMm).toBeCloseTo(-4 * Math.PI, 12);
});
