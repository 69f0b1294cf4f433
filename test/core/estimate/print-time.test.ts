import { expect, test } from "vitest";
import { depositionMin, layerTimeS, runMin, slowestLayerS } from "../../../core/estimate/print-time.ts";
import { aRoute } from "../../fixtures/a-route.ts";

const ROUTE = aRoute({ layerGroups: [{ count: 100, workS: 4 }], layerChangeS: 1, shortestLayerS: 10 });

test("a layer of few copies waits, of many it takes their time", () => {
  expect(layerTimeS(ROUTE, 4, 2)).toBe(10);
  expect(layerTimeS(ROUTE, 4, 3)).toBe(13);
});

test("deposition is the sum over layers times the machine's factor", () => {
  expect(depositionMin({ route: ROUTE, copies: 3 })).toBeCloseTo(1300 / 60, 12);
  expect(depositionMin({ route: { ...ROUTE, timeFactor: 1.1 }, copies: 3 })).toBeCloseTo(1430 / 60, 12);
});

test("the slowest layer is the slowest of all kinds", () => {
  const route = { ...ROUTE, layerGroups: [{ count: 1, workS: 9 }, ...ROUTE.layerGroups] };
  expect(slowestLayerS({ route, copies: 3 })).toBe(28);
});

test("a run is whole minutes, rounded up but not for dust", () => {
  const minute = aRoute({
    layerGroups: [{ count: 60, workS: 1 }],
    layerChangeS: 0,
    shortestLayerS: 0,
    fixedMin: 10,
  });
  expect(runMin([{ route: minute, copies: 1 }])).toBe(11);
  expect(runMin([{ route: { ...minute, fixedMin: 10.001 }, copies: 1 }])).toBe(12);
  expect(runMin([{ route: { ...minute, fixedMin: 10 + 1e-9 }, copies: 1 }])).toBe(11);
});

test("parts that share a platform share warm-up and add their layers", () => {
  expect(
    runMin([
      { route: ROUTE, copies: 3 },
      { route: ROUTE, copies: 3 },
    ]),
  ).toBe(Math.ceil(15 + 2600 / 60));
});

test("a build of nothing is a programmer's mistake", () => {
  expect(() => runMin([])).toThrow(RangeError);
});
