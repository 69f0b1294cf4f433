import { describe, expect, test } from "vitest";
import { operatingFigures } from "../../../core/purchase/operating-figures.ts";
import { aFeedstock, aShop } from "../../fixtures/a-route.ts";
import { someWeeks } from "../../fixtures/some-weeks.ts";

const shop = aShop({
  feedstocks: [
    aFeedstock({ id: "f", form: "filament" }),
    aFeedstock({ id: "p", form: "pellet" }),
    aFeedstock({ id: "q", form: "pellet" }),
  ],
});

describe("how a works runs in a year", () => {
  test("is the mean of the scenarios, brought to 52 weeks", () => {
    const results = [
      someWeeks(26, { lateOrders: 3, revenue: 10 }),
      someWeeks(26, { lateOrders: 5, revenue: 30 }),
    ];
    expect(operatingFigures(shop, results)).toMatchObject({
      lateOrders: 4 * 52,
      revenue: 20 * 52,
      orders: 4 * 52,
    });
  });

  test("keeps lateness out of the operating cost, and has buying out in it", () => {
    const week = { costByKind: { feedstock: 30, buyOut: 7, late: 2 }, lateCost: 2, boughtOutCost: 7 };
    const figures = operatingFigures(shop, [someWeeks(52, week)]);
    expect(figures).toMatchObject({ operatingCost: 37 * 52, lateCost: 2 * 52, boughtOutCost: 7 * 52 });
  });

  test("tells filament from pellets, whatever the grade", () => {
    const figures = operatingFigures(shop, [someWeeks(52, { kgByFeedstock: { f: 1, p: 2, q: 3 } })]);
    expect(figures).toMatchObject({ filamentKg: 52, pelletKg: 260 });
  });

  test("adds up the hours of each machine, and is nothing where no week was planned", () => {
    const hoursByMachine = [{ machineId: "F1", usedH: 30, staffedH: 40 }];
    expect(operatingFigures(shop, [someWeeks(13, { hoursByMachine })]).hours).toEqual([
      { machineId: "F1", usedH: 30 * 52, staffedH: 40 * 52 },
    ]);
    expect(operatingFigures(shop, [])).toMatchObject({ revenue: 0, hours: [] });
  });
});
