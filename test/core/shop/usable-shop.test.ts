import { describe, expect, test } from "vitest";
import { checkShop } from "../../../core/shop/check-shop.ts";
import { readShop } from "../../../core/shop/read-shop.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { SHOP_LISTS } from "../../../core/shop/shop-lists.ts";
import { usableShop } from "../../../core/shop/usable-shop.ts";
import { seededRandom } from "../../../core/units/random.ts";
import { aBuild } from "../../fixtures/a-build.ts";
import { aCalendar, aFeedstock, aMachine, anOrder, aPart, aShop } from "../../fixtures/a-route.ts";

function usable(overrides: Partial<Shop>) {
  const shop = aShop(overrides);
  const answer = usableShop(shop, checkShop(shop));
  if (!answer.shop) throw new Error("nothing can be planned");
  return { shop: answer.shop, setAside: answer.setAside };
}

/** What was set aside, as "list/id". */
function aside(overrides: Partial<Shop>): string[] {
  return usable(overrides).setAside.map(({ list, id }) => `${list}/${id}`);
}

const loadedAfter = (feedstockId: string, nozzleId: string) => {
  const feedstocks = [aFeedstock(), aFeedstock({ id: "dear", pricePerKg: null })];
  return usable({ feedstocks, machines: [aMachine({ loaded: { feedstockId, nozzleId } })] }).shop.machines[0]
    ?.loaded;
};
const many = <Item>(count: number, make: (place: number) => Item): Item[] =>
  Array.from({ length: count }, (_, i) => make(i));

test("a shop without errors stays as it is, warnings or not", () => {
  const shop = aShop({ orders: [anOrder({ quantity: 50_000 })] });
  expect(usableShop(shop, checkShop(shop))).toEqual({ shop, setAside: [] });
});

describe("an entry in error is set aside with its sentence and the rest stays", () => {
  test("an order", () => {
    const { shop, setAside } = usable({ orders: [anOrder(), anOrder({ id: "O-2", partId: "x" })] });
    expect(shop.orders.map(({ id }) => id)).toEqual(["O-1"]);
    expect(setAside).toEqual([
      {
        list: "orders",
        id: "O-2",
        sentence: "Order O-2: there is no part x; name one that exists or add it.",
        copies: 10,
      },
    ]);
  });

  test("an order whose id looks like a path", () => {
    const { shop } = usable({ orders: [anOrder(), anOrder({ id: "O/1~2", partId: "x" })] });
    expect(shop.orders.map(({ id }) => id)).toEqual(["O-1"]);
  });

  test("of entries with one id all but the first", () => {
    const { shop, setAside } = usable({
      orders: [anOrder(), anOrder({ quantity: 3 }), anOrder({ id: "O-2" })],
    });
    expect(shop.orders.map(({ id, quantity }) => [id, quantity])).toEqual([
      ["O-1", 10],
      ["O-2", 10],
    ]);
    expect(setAside).toMatchObject([{ list: "orders", id: "O-1", copies: 3 }]);
  });
});

describe("what depends on it goes with it", () => {
  const badPart = aPart({ id: "bad", orientations: ["x"], loadAxis: "x" });

  test("orders with their part", () => {
    const parts = [aPart(), badPart];
    const orders = [anOrder(), anOrder({ id: "O-2", partId: "bad" })];
    expect(aside({ parts, orders })).toEqual(["parts/bad", "orders/O-2"]);
    expect(usable({ parts, orders }).setAside[1]?.sentence).toBe(
      "Order O-2: set aside with part bad, on which it depends.",
    );
  });

  test("machines with their calendar, orders with the machine or feedstock they are pinned to", () => {
    const calendars = [aCalendar(), aCalendar({ id: "never", shifts: [] })];
    const machines = [aMachine(), aMachine({ id: "F2", calendarId: "never" })];
    const feedstocks = [aFeedstock(), aFeedstock({ id: "dear", pricePerKg: null })];
    const orders = [
      anOrder(),
      anOrder({ id: "O-2", pinned: { machineId: "F2" } }),
      anOrder({ id: "O-3", pinned: { feedstockId: "dear" } }),
    ];
    expect(aside({ calendars, machines, feedstocks, orders })).toEqual([
      "calendars/never",
      "machines/F2",
      "feedstocks/dear",
      "orders/O-2",
      "orders/O-3",
    ]);
  });

  test("a committed build with its order, and then the other orders it makes copies of", () => {
    const items = [
      { orderId: "O-1", copies: 1 },
      { orderId: "O-2", copies: 1 },
    ];
    const orders = [anOrder(), anOrder({ id: "O-2", partId: "x" }), anOrder({ id: "O-3" })];
    expect(aside({ orders, builds: [aBuild({ items })] })).toEqual([
      "orders/O-2",
      "orders/O-1",
      "builds/B-1",
    ]);
  });

  test("a finished build stays as history when its order or machine is gone", () => {
    const orders = [anOrder(), anOrder({ id: "O-2", partId: "x" })];
    const builds = [
      aBuild({ orderId: "O-2", state: "done" }),
      aBuild({ id: "B-2", machineId: "gone", state: "done" }),
    ];
    expect(usable({ orders, builds }).shop.builds.map(({ id }) => id)).toEqual(["B-1", "B-2"]);
  });

  test("the order of a finished build whose dates cannot be", () => {
    const builds = [aBuild({ state: "done", printEnd: "2026-02-30T08:00" })];
    expect(aside({ builds })).toEqual(["orders/O-1", "builds/B-1"]);
  });
});

describe("a machine", () => {
  test("is not free while a committed build that was set aside is on it", () => {
    const { shop } = usable({ builds: [aBuild({ nozzleId: "n9" })] });
    expect(shop.builds).toEqual([]);
    expect(shop.machines[0]?.outOfService).toEqual([
      { from: "2026-11-30T06:00:00+01:00", to: "2026-11-30T07:15:00+01:00", reason: "build B-1, set aside" },
    ]);
  });

  test("is free where that build was only planned", () => {
    const { shop } = usable({ builds: [aBuild({ state: "planned", printEnd: "2026-02-30T08:00" })] });
    expect(shop.builds).toEqual([]);
    expect(shop.machines[0]?.outOfService).toEqual([]);
    expect(shop.orders).toHaveLength(1);
  });

  test("has nothing loaded where what it names does not exist or was set aside", () => {
    expect(loadedAfter("pla-white", "n04")).toEqual({ feedstockId: "pla-white", nozzleId: "n04" });
    expect(loadedAfter("dear", "n04")).toBe(null);
    expect(loadedAfter("x", "n04")).toBe(null);
    expect(loadedAfter("pla-white", "n9")).toBe(null);
  });
});

test("an error about the whole stops planning and sets nothing aside", () => {
  for (const overrides of [{ timeZone: "Berlin" }, { machines: [] }, { feedstocks: [] }]) {
    const shop = aShop(overrides);
    const findings = checkShop(shop).filter(({ where }) => !where.includes("/"));
    expect(usableShop(shop, findings)).toEqual({ shop: null, setAside: [] });
  }
});

test("an order that is set aside says how many copies it still wants", () => {
  const orders = [anOrder({ partId: "x" }), anOrder({ id: "O-2" })];
  const builds = [aBuild({ copies: 4, state: "done" })];
  expect(usable({ orders, builds }).setAside).toMatchObject([{ id: "O-1", copies: 6 }]);
});

describe("together with reading", () => {
  test("an unreadable part is named, and its orders are set aside once", () => {
    const text = JSON.stringify(aShop()).replace('"shells":2', '"shells":0');
    const read = readShop(text);
    if (!read.shop) throw new Error("no shop");
    const answer = usableShop(read.shop, [...read.findings, ...checkShop(read.shop)]);
    expect(answer.setAside.map(({ list, id }) => `${list}/${id}`)).toEqual(["parts/clip", "orders/O-1"]);
  });

  test("an unreadable order counts the copies that can be read, less those in builds", () => {
    const broken = ["O-1", "O-2", ""].map((id) => ({ ...anOrder({ id }), quantity: 7, dueAt: "soon" }));
    const orders = [...broken, anOrder({ id: "O-4", quantity: -7 })];
    const builds = [aBuild({ copies: 4, state: "done" })];
    const read = readShop(JSON.stringify(aShop({ orders, builds })));
    if (!read.shop) throw new Error("no shop");
    const { setAside } = usableShop(read.shop, read.findings, read.unreadCopies);
    expect(setAside.map(({ id, copies }) => [id, copies])).toEqual([
      ["O-1", 3],
      ["O-2", 7],
      ["#3", 7],
      ["O-4", null],
    ]);
  });

  test("of two entries with one id the readable one stays", () => {
    const text = JSON.stringify(aShop({ orders: [anOrder({ quantity: 0 }), anOrder()] }));
    const read = readShop(text);
    if (!read.shop) throw new Error("no shop");
    expect(usableShop(read.shop, read.findings).shop?.orders).toHaveLength(1);
  });
});

test("whatever is broken, what is left has no errors and nothing is lost (200 random works)", () => {
  const random = seededRandom(9);
  const oneIn = (count: number): boolean => random() < 1 / count;
  for (let round = 0; round < 200; round += 1) {
    const shop = aRandomShop(oneIn, (count) => Math.floor(random() * count));
    const { shop: left, setAside } = usableShop(shop, checkShop(shop));
    if (!left) throw new Error("nothing can be planned");
    const isLeftFaulty = checkShop(left).filter(
      ({ severity, code }) => severity === "error" && code !== "empty-list",
    );
    expect(isLeftFaulty).toEqual([]);
    for (const list of SHOP_LISTS) {
      const kept = new Set(left[list].map(({ id }) => id));
      const out = new Set(setAside.filter((entry) => entry.list === list).map(({ id }) => id));
      for (const { id } of shop[list]) expect(kept.has(id) || out.has(id), `${list}/${id}`).toBe(true);
    }
  }
});

function aRandomShop(oneIn: (count: number) => boolean, pick: (count: number) => number): Shop {
  return aShop({
    calendars: many(2, (i) => aCalendar({ id: `C${i}`, ...(oneIn(4) ? { shifts: [] } : {}) })),
    machines: many(4, (i) =>
      aMachine({
        id: `F${i}`,
        calendarId: `C${pick(oneIn(6) ? 3 : 2)}`,
        ...(oneIn(8) ? { edgeMarginMm: 300 } : {}),
        loaded: oneIn(2) ? { feedstockId: `S${pick(4)}`, nozzleId: "n04" } : null,
      }),
    ),
    feedstocks: many(3, (i) => aFeedstock({ id: `S${i}`, ...(oneIn(6) ? { pricePerKg: null } : {}) })),
    parts: many(4, (i) =>
      aPart({ id: `P${i}`, ...(oneIn(6) ? { orientations: ["z"], loadAxis: "z" } : {}) }),
    ),
    orders: many(8, () =>
      anOrder({
        id: `O${pick(12)}`,
        partId: `P${pick(5)}`,
        ...(oneIn(3) ? { pinned: { machineId: `F${pick(5)}` } } : {}),
        ...(oneIn(9) ? { dueAt: "2026-02-30T08:00" } : {}),
      }),
    ),
    builds: many(3, (i) =>
      aBuild({
        id: `B${i}`,
        machineId: `F${pick(5)}`,
        feedstockId: `S${pick(4)}`,
        items: many(1 + pick(2), () => ({ orderId: `O${pick(12)}`, copies: 1 })),
        state: (["planned", "committed", "running", "done", "failed"] as const)[pick(5)] ?? "done",
        ...(oneIn(6) ? { setUpStart: "2026-11-31T06:00" } : {}),
      }),
    ),
  });
}
