import { describe, expect, test } from "vitest";
import { fleetModel } from "../../../core/purchase/fleet-model.ts";
import { openShares } from "../../../core/purchase/open-share.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { makeShop } from "../../bench/make-shop.ts";
import { lineSizes } from "../../../core/purchase/line-sizes.ts";
import { MONDAY_MIN, toyLine, toyMachine, toyPart, toyWorks } from "./a-toy-works.ts";

function fleetOf(shop: Shop, quantities: readonly number[]) {
  return fleetModel({
    shop,
    fromMin: MONDAY_MIN,
    lineSizes: lineSizes(quantities.map((quantity) => toyLine({ quantity }))),
  });
}

/** A part of which several fit a platform. */
function smallWorks(): Shop {
  const part = toyPart();
  const measures = { volumeMm3: 8000, areaMm2: 4000, boxMm: { x: 40, y: 40, z: 20 } };
  return toyWorks(1, { parts: [{ ...part, infillPct: 100, geometry: { kind: "measures", measures } }] });
}

describe("a fleet made ready", () => {
  test("builds hold what the order lines fill, between the whole builds' costs", () => {
    const [one, five, mean] = [[1], [5], [1, 5]].map(
      (quantities) => fleetOf(smallWorks(), quantities).ways[0],
    );
    expect([one, five, mean].map((way) => way?.copies)).toEqual([1, 5, 3]);
    const costs = [one, mean, five].map((way) => way?.amounts.total ?? Number.NaN);
    expect(costs).toEqual(costs.toSorted((a, b) => a - b));
    expect((five?.amounts.total ?? 0) / 5).toBeLessThan(one?.amounts.total ?? 0);
  });

  test("the kinds of a way's cost add up to its total", () => {
    for (const { amounts } of fleetOf(smallWorks(), [1, 2, 4]).ways) {
      const { total, ...kinds } = amounts;
      expect(Object.values(kinds).reduce((sum, kind) => sum + kind, 0)).toBeCloseTo(total, 9);
    }
  });

  test("an attended machine spans no gap, an approved one the nights", () => {
    const night = toyWorks(1, { machines: [{ ...toyMachine("M1"), unattended: true }] });
    expect(new Set(fleetOf(toyWorks(1), [1]).ways.map(({ pattern }) => pattern))).toEqual(new Set([0]));
    const patterns = fleetOf(night, [1]).ways.map(({ pattern }) => pattern);
    expect(Math.max(...patterns)).toBeGreaterThan(0);
  });

  test("a run into the night takes less of the staffed time than it occupies its machine", () => {
    const night = toyWorks(1, { machines: [{ ...toyMachine("M1"), unattended: true }] });
    for (const { pattern, attendedH, occupiedH } of fleetOf(night, [1]).ways) {
      if (pattern === 0) expect(attendedH).toBeCloseTo(occupiedH, 9);
      else expect(attendedH).toBeLessThan(occupiedH);
    }
  });

  test("what it supplies is the staffed time of all machines, day by day", () => {
    const { week } = fleetOf(toyWorks(3), [1]);
    expect([...(week.classes[0]?.staffedH ?? [])]).toEqual([24, 24, 24, 24, 24]);
    expect([...(week.operatorH[0] ?? [])]).toEqual([72, 72, 72, 72, 72]);
  });

  test("a weekend that a run may span counts in the week before it", () => {
    const night = toyWorks(1, { machines: [{ ...toyMachine("M1"), unattended: true }] });
    const { classes } = fleetOf(night, [1]).week;
    const all = classes[0]?.gaps.map((bySlot) => [...bySlot]) ?? [];
    expect(all).toContainEqual([0, 1, 1, 1, 1]);
    expect(all).toContainEqual([0, 0, 0, 0, 1]);
  });

  test("a part that can only be bought is kept, one that nobody makes is not", () => {
    const impossible = { ...toyPart(), families: ["PEEK"] };
    expect(fleetOf(toyWorks(1, { parts: [impossible] }), [1]).parts).toEqual([]);
    const bought = { ...impossible, buyOut: { pricePerPiece: 9, leadTimeDays: 3 } };
    expect(fleetOf(toyWorks(1, { parts: [bought] }), [1]).parts).toMatchObject([
      { partId: "P-1", cheapest: 9 },
    ]);
  });

  test("orders, builds and closed days of the shop play no part", () => {
    const { shop, request } = makeShop("S", { seed: 1 });
    const sizes = lineSizes(shop.orders);
    const calendars = shop.calendars.map((calendar) => ({
      ...calendar,
      closures: [{ from: "2026-12-02", to: "2026-12-03", reason: "stocktaking" }],
    }));
    const input = { fromMin: request.fromMin, lineSizes: sizes };
    const { ways, week } = fleetModel({ ...input, shop });
    const other = fleetModel({ ...input, shop: { ...shop, orders: [], calendars } });
    expect(other.week).toEqual(week);
    expect(other.ways.map(({ amounts }) => amounts)).toEqual(ways.map(({ amounts }) => amounts));
  });
});

describe("open shares of real weeks", () => {
  test("are what closed days and times out of service leave, week by week", () => {
    const calendars = toyWorks(1).calendars.map((calendar) => ({
      ...calendar,
      closures: [{ from: "2026-12-07", to: "2026-12-08", reason: "stocktaking" }],
    }));
    const outOfService = [{ from: "2026-12-14T08:00", to: "2026-12-14T16:00", reason: "service" }];
    const machines = [toyMachine("M1"), { ...toyMachine("M2"), outOfService }];
    const shop = toyWorks(2, { calendars, machines });
    const shares = openShares(shop, fleetOf(shop, [1]).problem, 3);
    expect(shares.ofClass.map((week) => week[0])).toEqual([1, 0.6, 0.9]);
    expect(shares.ofCalendar.map((week) => week[0])).toEqual([1, 0.6, 1]);
  });

  test("a week in which clocks change is a usual one", () => {
    const shop = toyWorks(1);
    const shares = openShares(shop, fleetOf(shop, [1]).problem, 52);
    expect(shares.ofClass.every((week) => week[0] === 1)).toBe(true);
  });
});
