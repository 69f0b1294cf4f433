import { describe, expect, test } from "vitest";
import { makeBuildCosting } from "../../../core/cost/build-cost.ts";
import { makeRouteFinder, rankWays } from "../../../core/cost/rank-ways.ts";
import { findEveryRoute } from "../../../core/estimate/find-routes.ts";
import type { Route } from "../../../core/estimate/route.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { aMeasuredPart, boxStandings } from "../../fixtures/a-measured-part.ts";
import { anOrder, aRoute, aShop } from "../../fixtures/a-route.ts";

const shop = aShop();
const costing = makeBuildCosting(shop);
const machine = shop.machines[0]!;

function way(name: string, overrides: Partial<Route>) {
  return { name, route: aRoute(overrides) };
}

function ranked(wanted: number, ways: readonly ReturnType<typeof way>[]) {
  return rankWays(costing, machine, ways, wanted);
}

describe("ways by what a copy costs", () => {
  const flat = way("flat", { copiesMax: 2, layerGroups: [{ count: 100, workS: 35 }] });
  const onEnd = way("on end", { copiesMax: 20, layerGroups: [{ count: 300, workS: 12 }] });

  test("the way that takes more copies wins a large order, the quicker one a single piece", () => {
    expect(ranked(1, [onEnd, flat]).map((each) => each.way.name)).toEqual(["flat", "on end"]);
    expect(ranked(40, [flat, onEnd]).map((each) => each.way.name)).toEqual(["on end", "flat"]);
  });

  test("copies are those wanted, as far as they go", () => {
    expect(ranked(5, [flat, onEnd]).map((each) => [each.way.name, each.copies])).toContainEqual(["flat", 2]);
    expect(ranked(5, [onEnd])[0]?.copies).toBe(5);
    expect(ranked(1, [way("many", { copiesMin: 3 })])[0]?.copies).toBe(3);
  });

  test("the cost is that of the build over its copies", () => {
    const [first] = ranked(2, [flat]);
    expect(first?.costPerCopy).toBeCloseTo(
      costing.amounts([{ route: flat.route, copies: 2 }], machine).total / 2,
      12,
    );
  });

  test("supports cost what they take: the same way with some comes after the one without", () => {
    const supported = way("supported", { massKgPerCopy: 0.03, layerGroups: [{ count: 100, workS: 36 }] });
    expect(ranked(1, [supported, way("plain", {})]).map((each) => each.way.name)).toEqual([
      "plain",
      "supported",
    ]);
  });

  test("equal ones keep their order, and one that never succeeds comes last", () => {
    const endless = way("endless", { layerGroups: [{ count: 1000, workS: 1e9 }] });
    const failing = { ...machine, failuresPer1000H: 10 };
    const ways = rankWays(costing, failing, [endless, way("a", {}), way("b", {})], 1);
    expect(ways.map((each) => each.way.name)).toEqual(["a", "b", "endless"]);
    expect(ways[2]?.costPerCopy).toBe(Infinity);
  });
});

describe("the routes of a shop", () => {
  /** A plate of 200 x 200 x 10 mm: on end a dozen fit a platform that takes one lying. */
  const part = aMeasuredPart({ orientations: ["z", "x"] }, boxStandings(200, 200, 10));
  const measures = { ...part.geometry.measures, volumeMm3: 400_000, boxMm: { x: 200, y: 200, z: 10 } };
  const plate = { ...part, geometry: { kind: "measures" as const, measures } };
  const upFor = (quantity: number): string | undefined => {
    const works: Shop = {
      ...shop,
      parts: [plate],
      orders: [anOrder({ quantity: 1 }), anOrder({ id: "O-2", quantity })],
    };
    const [answer] = makeRouteFinder(works, makeBuildCosting(works))(plate, machine, shop.feedstocks);
    return answer?.status === "route" ? answer.route.orientation : undefined;
  };

  test("are the cheapest for the largest order", () => {
    for (const quantity of [1, 10, 200]) {
      const routes = findEveryRoute(plate, machine, shop.feedstocks).flatMap((answer) =>
        answer.status === "route" ? [{ route: answer.route }] : [],
      );
      expect(upFor(quantity)).toBe(rankWays(costing, machine, routes, quantity)[0]?.way.route.orientation);
    }
  });

  test("are those of a single piece where nobody has ordered the part", () => {
    const works = { ...shop, parts: [plate], orders: [] };
    const [answer] = makeRouteFinder(works, costing)(plate, machine, shop.feedstocks);
    expect(answer?.status === "route" && answer.route.orientation).toBe(upFor(1));
  });
});
