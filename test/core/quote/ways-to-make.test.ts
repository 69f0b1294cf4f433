import { describe, expect, test } from "vitest";
import { makeBuildCosting } from "../../../core/cost/build-cost.ts";
import { quantityCrossover, sizeCrossover } from "../../../core/quote/crossover.ts";
import { priceDrivers } from "../../../core/quote/price-drivers.ts";
import { longestRunMin } from "../../../core/quote/way-table.ts";
import { cheapestWayFor, waysToMake } from "../../../core/quote/ways-to-make.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { makeShop } from "../../bench/make-shop.ts";

const { shop } = makeShop("S", { seed: 1 });
const QUANTITIES = [1, 2, 5, 10, 20, 50, 100];
const machineOf = (id: string) => shop.machines.find((machine) => machine.id === id)!;

describe("ways to make a part", () => {
  const all = shop.parts.slice(0, 6).map(({ id }) => waysToMake(shop, id, QUANTITIES));

  test("every pair of nozzle and feedstock of a machine's form is a way or is refused with reasons", () => {
    for (const { ways, refused } of all) {
      const classes = new Map([...ways, ...refused].map((way) => [way.machineIds.join(), way.machineIds]));
      expect([...classes.values()].flat().toSorted()).toEqual(shop.machines.map(({ id }) => id).toSorted());
      for (const ids of classes.values()) {
        const machine = machineOf(ids[0]!);
        const fitting = shop.feedstocks.filter(({ form }) => form === machine.process).length;
        const answered = [...ways, ...refused].filter(({ machineIds }) => machineIds.join() === ids.join());
        expect(answered).toHaveLength(machine.nozzles.length * fitting);
      }
      for (const { reasons } of refused) expect(reasons.length).toBeGreaterThan(0);
    }
  });

  test("builds add up to the quantity, and their costs and hours to those of its copies", () => {
    const costing = makeBuildCosting(shop);
    for (const { ways } of all) {
      for (const { route, costs, first, machineIds } of ways) {
        const machine = machineOf(machineIds[0]!);
        for (const cost of costs.filter((each) => each !== null)) {
          const copies = cost.builds.reduce((sum, build) => sum + build.copies * build.builds, 0);
          expect(copies).toBe(cost.quantity);
          const total = cost.builds.reduce(
            (sum, build) =>
              sum + build.builds * costing.amounts([{ route, copies: build.copies }], machine).total,
            0,
          );
          expect(cost.repeatPerCopy * cost.quantity).toBeCloseTo(total, 6);
          const apart = (cost.costPerCopy - cost.repeatPerCopy) * cost.quantity;
          expect(apart).toBeCloseTo(first.engineering + first.setUp, 6);
        }
      }
    }
  });

  test("a repeat order costs nothing for tool paths; a first one does where they do not exist", () => {
    const part = { ...shop.parts[0]!, toolPathsReady: [] };
    const bare: Shop = { ...shop, parts: [part] };
    const [ready] = waysToMake(shop, part.id, [10]).ways;
    const [fresh] = waysToMake(bare, part.id, [10]).ways;
    expect(ready!.first.engineering).toBe(0);
    expect(fresh!.first.engineering).toBeGreaterThan(0);
    expect(fresh!.costs[0]!.repeatPerCopy).toBeCloseTo(ready!.costs[0]!.repeatPerCopy, 9);
  });

  test("the cheapest way for a quantity is the least of all at it, and there is none at a quantity not asked", () => {
    for (const found of all) {
      QUANTITIES.forEach((quantity, at) => {
        const costs = found.ways.flatMap((way) => way.costs[at]?.costPerCopy ?? []);
        const best = cheapestWayFor(found, quantity);
        expect(best?.cost.costPerCopy ?? Infinity).toBe(Math.min(...costs));
      });
      expect(cheapestWayFor(found, 3)).toBeNull();
    }
  });
});

describe("longest run", () => {
  const attended = { ...shop.machines[0]!, unattended: false };
  const calendar = (shifts: Shop["calendars"][number]["shifts"]): Shop => ({
    ...shop,
    calendars: [
      {
        id: attended.calendarId,
        name: "",
        shifts,
        closures: [{ from: "2001-01-01", to: "2030-01-01", reason: "" }],
      },
    ],
  });
  const alone = (unattendedMaxH: number) => ({ ...attended, unattended: true, unattendedMaxH });
  const day = { days: [1, 2, 3, 4, 5], start: "06:00", end: "14:00", operators: 1 };

  test("is one shift where nobody may be away, whatever days are closed, and two that touch", () => {
    expect(longestRunMin(calendar([day]), attended)).toBe(480);
    expect(longestRunMin(calendar([day, { ...day, start: "14:00", end: "22:00" }]), attended)).toBe(960);
    expect(longestRunMin(calendar([{ ...day, operators: 0 }]), attended)).toBe(0);
  });

  test("spans nights of 16 h only where 16 h are allowed: then a week of five days", () => {
    expect(longestRunMin(calendar([day]), alone(15.9))).toBe(480);
    expect(longestRunMin(calendar([day]), alone(16))).toBe(4 * 1440 + 480);
  });
});

describe("where filament and pellets cross over", () => {
  const processesOf = (id: string) => new Set(waysToMake(shop, id, [10]).ways.map(({ process }) => process));
  const both = shop.parts.filter(({ id }) => processesOf(id).size === 2);

  test("just before a crossing the other process is the cheaper, from it on this one", () => {
    expect(both.length).toBeGreaterThan(0);
    let crossings = 0;
    for (const { id } of both.slice(0, 4)) {
      const bare: Shop = { ...shop, parts: shop.parts.map((part) => ({ ...part, toolPathsReady: [] })) };
      for (const { from, cheaper } of quantityCrossover(bare, id).crossings) {
        crossings++;
        expect(cheaperAt(bare, id, from)).toBe(cheaper);
        expect(cheaperAt(bare, id, from - 1)).not.toBe(cheaper);
      }
    }
    expect(crossings).toBeGreaterThan(0);
  });

  test("a part of its own size costs by size what it costs by itself", () => {
    const { id } = both[0]!;
    const bySize = sizeCrossover(shop, id, 10).costs.find(({ at }) => at === 1)!;
    const byQuantity = quantityCrossover(shop, id).costs.find(({ at }) => at === 10)!;
    expect(bySize.filament).toBeCloseTo(byQuantity.filament!, 9);
    expect(bySize.pellet).toBeCloseTo(byQuantity.pellet!, 9);
  });
});

function cheaperAt(at: Shop, partId: string, quantity: number): string {
  return cheapestWayFor(waysToMake(at, partId, [quantity]), quantity)!.way.process;
}

describe("what a price depends on", () => {
  const line = { id: "Q-1", partId: shop.parts[0]!.id, quantity: 10, wantedMin: null, allowLate: true };
  const drivers = priceDrivers(shop, line)!;

  test("at most five inputs, the largest first, each with the price between lower and higher", () => {
    expect(drivers.drivers.length).toBeGreaterThan(2);
    expect(drivers.drivers.length).toBeLessThanOrEqual(5);
    const swings = drivers.drivers.map(({ swing }) => swing);
    expect(swings).toEqual(swings.toSorted((a, b) => b - a));
    for (const { low, high } of drivers.drivers) {
      expect(low.price).toBeLessThanOrEqual(drivers.price);
      expect(high.price).toBeGreaterThanOrEqual(drivers.price);
    }
  });

  test("feedstock 10 % dearer makes the price dearer by a tenth of the feedstock in it, where the way stays the same", () => {
    const way = cheapestWayFor(waysToMake(shop, line.partId, [10]), 10)!;
    const machine = machineOf(way.way.machineIds[0]!);
    const one = {
      ...shop,
      machines: [machine],
      feedstocks: shop.feedstocks.filter(({ id }) => id === way.way.feedstockId),
    };
    const { drivers: found, price } = priceDrivers(
      { ...one, costing: { ...shop.costing, overheadPct: 0 } },
      line,
    )!;
    const feedstock = found.find(({ input }) => input === "price of feedstock")!;
    const { pricePerKg, wastePct } = one.feedstocks[0]!;
    const usedCost = 10 * way.way.massKgPerCopy * pricePerKg! * (1 + wastePct / 100);
    // Scrap of failed builds and the purge of the first set-up add a little.
    const markUp = 1 / (1 - shop.costing.marginPct / 100);
    expect(feedstock.high.price - price).toBeGreaterThan(0.099 * usedCost * markUp - 0.1);
    expect(feedstock.high.price - price).toBeLessThan(0.14 * usedCost * markUp + 0.6);
  });

  test("the band of the estimate holds the price", () => {
    expect(drivers.band.low).toBeLessThan(drivers.price);
    expect(drivers.band.high).toBeGreaterThan(drivers.price);
  });
});
