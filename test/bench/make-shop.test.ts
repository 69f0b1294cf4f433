import { describe, expect, test } from "vitest";
import { checkShop } from "../../core/shop/check-shop.ts";
import { shopSchema } from "../../core/shop/shop.ts";
import { BENCH_SIZES, makeShop } from "./make-shop.ts";
import { makeRandomShop } from "./random-shop.ts";
import { cheapestWay, hoursFor, kindsOfMachines, waysOf } from "./shop-load.ts";
import { makeTinyShop } from "./tiny-shop.ts";

function countOf(machines: Readonly<Record<string, number>>): number {
  return Object.values(machines).reduce((sum, count) => sum + count, 0);
}

describe("a generated shop", () => {
  test.each(["S", "M"] as const)(
    "of size %s is the same for the same seed and another for another",
    (size) => {
      expect(makeShop(size, { seed: 3 })).toEqual(makeShop(size, { seed: 3 }));
      expect(makeShop(size, { seed: 3 })).not.toEqual(makeShop(size, { seed: 4 }));
    },
  );

  test.each(["S", "M"] as const)("of size %s is without fault and has its machines and lines", (size) => {
    const { shop, request } = makeShop(size, { seed: 1 });
    const { machines, lines, weeks } = BENCH_SIZES[size];
    expect(shopSchema.parse(shop)).toEqual(shop);
    expect(checkShop(shop).filter(({ severity }) => severity === "error")).toEqual([]);
    expect(shop.orders).toHaveLength(lines);
    expect(shop.machines).toHaveLength(countOf(machines));
    expect(request.days).toBe(7 * weeks);
  });

  test("loads every kind of machine to 0.88 of what it can do, if each line goes its cheapest way", () => {
    const { shop } = makeShop("M", { seed: 2 });
    const kinds = kindsOfMachines(shop, 1);
    const hours = new Map<string, number>();
    for (const { partId, quantity } of shop.orders) {
      const part = shop.parts.find(({ id }) => id === partId);
      const way = part && cheapestWay(part, shop, waysOf(part, shop, kinds), quantity);
      if (way) hours.set(way.kind, (hours.get(way.kind) ?? 0) + hoursFor(way, quantity));
    }
    for (const { kind, capacityH } of kinds) {
      expect((hours.get(kind) ?? 0) / capacityH, kind).toBeGreaterThan(0.7);
      expect((hours.get(kind) ?? 0) / capacityH, kind).toBeLessThan(1.05);
    }
  });

  test("has mixed platforms only where asked", () => {
    const mixed = makeShop("S", { seed: 1, mixedPlatform: true }).shop;
    const plain = makeShop("S", { seed: 1 }).shop;
    expect(mixed.machines.every(({ mixedPlatform }) => mixedPlatform)).toBe(true);
    expect(plain.machines.some(({ mixedPlatform }) => mixedPlatform)).toBe(false);
  });
});

describe("a tiny shop", () => {
  test("has 2 or 3 machines, 3 or 4 lines and 1 to 3 copies of each", () => {
    for (let seed = 1; seed <= 50; seed++) {
      const { shop } = makeTinyShop(seed);
      expect(shopSchema.parse(shop)).toEqual(shop);
      expect([2, 3]).toContain(shop.machines.length);
      expect([3, 4]).toContain(shop.orders.length);
      for (const { quantity } of shop.orders) expect([1, 2, 3]).toContain(quantity);
    }
  });
});

describe("1000 random shops", () => {
  const shops = Array.from({ length: 1000 }, (_, index) => makeRandomShop(index + 1).shop);

  test("fit the schema and differ", () => {
    for (const shop of shops) expect(() => shopSchema.parse(shop)).not.toThrow();
    expect(new Set(shops.map((shop) => JSON.stringify({ ...shop, name: "" }))).size).toBe(1000);
  });

  test("hold every oddity they promise", () => {
    const some = (holds: (shop: (typeof shops)[number]) => boolean) => shops.filter(holds).length;
    expect(some(({ calendars }) => calendars.some(({ closures }) => closures.length > 0))).toBeGreaterThan(
      50,
    );
    expect(
      some(({ machines }) => machines.some(({ outOfService }) => outOfService.length > 0)),
    ).toBeGreaterThan(50);
    expect(some(({ machines }) => machines.some(({ mixedPlatform }) => mixedPlatform))).toBeGreaterThan(50);
    expect(some(({ orders }) => orders.some(({ pinned }) => pinned !== undefined))).toBeGreaterThan(50);
    expect(some(({ orders }) => orders.some(({ allowLate }) => !allowLate))).toBeGreaterThan(50);
    expect(some(({ parts }) => parts.some(({ buyOut }) => buyOut !== undefined))).toBeGreaterThan(50);
    expect(some(({ builds }) => builds.length > 0)).toBeGreaterThan(50);
    expect(new Set(shops.map(({ timeZone }) => timeZone)).size).toBe(4);
  });
});
