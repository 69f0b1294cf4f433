import { expect, test } from "vitest";
import { bestRoute } from "../../../core/estimate/best-route.ts";
import type { Route } from "../../../core/estimate/route.ts";
import { aRoute } from "../../fixtures/a-route.ts";

function way(name: string, overrides: Partial<Route>) {
  return { name, route: aRoute({ layerChangeS: 0, shortestLayerS: 0, copiesMax: 1, ...overrides }) };
}

test("none of none", () => {
  expect(bestRoute([])).toBeUndefined();
});

test("the quickest per copy in a full build wins", () => {
  const slow = way("slow", { layerGroups: [{ count: 100, workS: 20 }] });
  const quick = way("quick", { layerGroups: [{ count: 100, workS: 10 }] });
  expect(bestRoute([slow, quick])?.name).toBe("quick");
});

test("waiting that many copies fill does not count against a route", () => {
  const many = way("many", { layerGroups: [{ count: 100, workS: 10 }], shortestLayerS: 100, copiesMax: 10 });
  const one = way("one", { layerGroups: [{ count: 100, workS: 20 }] });
  expect(bestRoute([one, many])?.name).toBe("many");
});

test("of two that are as quick in full builds the one whose smallest build is over first wins", () => {
  const flat = way("flat", { layerGroups: [{ count: 100, workS: 10 }], copiesMax: 4 });
  const upright = way("upright", {
    layerGroups: [{ count: 500, workS: 1.95 }],
    shortestLayerS: 10,
    copiesMax: 20,
  });
  expect(bestRoute([upright, flat])?.name).toBe("flat");
});

test("of two that are equal in time the lighter wins", () => {
  const heavy = way("heavy", { massKgPerCopy: 0.03 });
  const light = way("light", { massKgPerCopy: 0.02 });
  expect(bestRoute([heavy, light])?.name).toBe("light");
  expect(bestRoute([light, heavy])?.name).toBe("light");
});
