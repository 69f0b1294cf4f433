import { describe, expect, test } from "vitest";
import { crossoverChart } from "../../../core/purchase/crossover-chart.ts";
import {
  assumedPrices,
  cheapestOfProcess,
  type PartWays,
  waysOfDemand,
} from "../../../core/purchase/part-costs.ts";
import type { Way } from "../../../core/quote/ways-to-make.ts";
import { aCase } from "../../fixtures/a-case.ts";
import { anOrder, aPart, aRoute, aShop } from "../../fixtures/a-route.ts";

function way(process: "filament" | "pellet", massKgPerCopy: number, repeatPerCopy: number): Way {
  const cost = { quantity: 1, builds: [], repeatPerCopy, costPerCopy: repeatPerCopy, machineHPerCopy: 1 };
  return {
    machineIds: ["M"],
    process,
    nozzleId: "n",
    feedstockId: "f",
    route: aRoute(),
    massKgPerCopy,
    first: { engineering: 0, setUp: 0 },
    costs: [cost],
  };
}

function part(partId: string, ...ways: Way[]): PartWays {
  return {
    partId,
    quantity: 1,
    ways: { partId, quantities: [1], ways, refused: [], buyOut: null, findings: [] },
  };
}

/** 40 x m by filament, 20 x m^0.5 by pellets: they cross at a quarter of a kg. */
function both(partId: string, massKg: number): PartWays {
  return part(partId, way("filament", massKg, 40 * massKg), way("pellet", massKg, 20 * Math.sqrt(massKg)));
}

const priced = (buyOut: ReturnType<typeof aPart>["buyOut"]): number | undefined => {
  const shop = aShop({ machines: [], parts: [aPart(buyOut ? { buyOut } : {})] });
  return assumedPrices(shop, aCase(), waysOfDemand(shop, aCase())).get("clip");
};

describe("the crossover chart", () => {
  const parts = [both("a", 0.01), both("b", 0.1), both("c", 1), both("d", 10)];

  test("finds the mass at which both lines cross, and the parts that pellets make cheaper", () => {
    const chart = crossoverChart(parts);
    expect(chart.filament).toMatchObject({ points: 4 });
    expect(chart.filament?.factor).toBeCloseTo(40, 9);
    expect(chart.pellet?.exponent).toBeCloseTo(0.5, 9);
    expect(chart.crossoverKg).toBeCloseTo(0.25, 9);
    expect(chart.cheaperByPellet).toEqual(["c", "d"]);
    expect(chart.sentence).toContain("above about 0.25 kg");
  });

  test("is not bent by large parts that only pellets make, where three parts can be compared", () => {
    const giant = part("giant", way("pellet", 100, 5000));
    const chart = crossoverChart([...parts, giant]);
    expect(chart.crossoverKg).toBeCloseTo(0.25, 9);
    expect(chart.points).toHaveLength(9);
  });

  test("names no mass where the lines do not cross among the parts there are", () => {
    const chart = crossoverChart(["a", "b", "c"].map((id, place) => both(id, place + 1)));
    expect(chart.crossoverKg).toBeNull();
    expect(chart.sentence).toContain("No part mass stands out");
  });

  test("says that there is nothing to compare where no part goes both ways, and of no parts at all", () => {
    expect(crossoverChart([part("a", way("filament", 1, 1))]).sentence).toContain("nothing to compare");
    expect(crossoverChart([])).toMatchObject({ points: [], filament: null, pellet: null, crossoverKg: null });
  });

  test("draws no line through one mass", () => {
    const chart = crossoverChart([both("a", 2), both("b", 2), both("c", 2)]);
    expect(chart).toMatchObject({ filament: null, pellet: null, crossoverKg: null });
  });
});

describe("the parts of a demand", () => {
  test("are made at the middle quantity of their orders", () => {
    const shop = aShop({
      orders: [4, 40, 10, 2].map((quantity, place) => anOrder({ id: `O-${place}`, quantity })),
    });
    const [only, ...more] = waysOfDemand(shop, aCase({ demand: { kind: "orders" } }));
    expect(more).toEqual([]);
    expect(only).toMatchObject({ partId: "clip", quantity: 4 });
    expect(only?.ways.ways.length).toBeGreaterThan(0);
  });

  test("have as price what the cheapest way costs again, with the margin of the case before the shop's", () => {
    const shop = aShop();
    const ways = waysOfDemand(shop, aCase());
    const cost = cheapestOfProcess(ways[0]!, "filament")?.costPerCopy ?? Number.NaN;
    expect(assumedPrices(shop, aCase(), ways).get("clip")).toBeCloseTo(cost / 0.7, 9);
    expect(assumedPrices(shop, aCase({ assumedMarginPct: 50 }), ways).get("clip")).toBeCloseTo(cost / 0.5, 9);
    expect(assumedPrices(shop, aCase({ assumedMarginPct: 100 }), ways).has("clip")).toBe(false);
    expect(cheapestOfProcess(ways[0]!, "pellet")).toBeNull();
  });

  test("take the price made elsewhere where nobody can make them, and none where that is unknown too", () => {
    expect(priced({ pricePerPiece: 7, leadTimeDays: 3 })).toBeCloseTo(10, 9);
    expect(priced(undefined)).toBeUndefined();
  });
});
