import { describe, expect, test } from "vitest";
import { applyChange, type Change } from "../../../core/shop/change.ts";
import { SHOP_LISTS } from "../../../core/shop/shop-lists.ts";
import { seededRandom } from "../../../core/units/random.ts";
import { aBuild } from "../../fixtures/a-build.ts";
import { aCase } from "../../fixtures/a-case.ts";
import { aQuote } from "../../fixtures/a-quote.ts";
import { aFeedstock, aShop, anOrder } from "../../fixtures/a-route.ts";

const THREE = aShop({ orders: ["A", "B", "C"].map((id) => anOrder({ id })) });

function idsAfter(change: Change): string[] {
  return applyChange(THREE, change).shop.orders.map(({ id }) => id);
}

describe("one edit", () => {
  test("puts a new entry at the end, or where it is told", () => {
    expect(idsAfter({ kind: "put", list: "orders", entry: anOrder({ id: "D" }), at: null })).toEqual([
      "A",
      "B",
      "C",
      "D",
    ]);
    expect(idsAfter({ kind: "put", list: "orders", entry: anOrder({ id: "D" }), at: 1 })).toEqual([
      "A",
      "D",
      "B",
      "C",
    ]);
    expect(idsAfter({ kind: "put", list: "orders", entry: anOrder({ id: "D" }), at: 99 })).toEqual([
      "A",
      "B",
      "C",
      "D",
    ]);
  });

  test("replaces an entry in its place", () => {
    const { shop } = applyChange(THREE, {
      kind: "put",
      list: "orders",
      entry: anOrder({ id: "B", quantity: 7 }),
      at: null,
    });
    expect(shop.orders.map(({ id, quantity }) => [id, quantity])).toEqual([
      ["A", 10],
      ["B", 7],
      ["C", 10],
    ]);
  });

  test("removes an entry, and its inverse puts it back in its place", () => {
    const { shop, inverse } = applyChange(THREE, { kind: "remove", list: "orders", id: "B", at: null });
    expect(shop.orders.map(({ id }) => id)).toEqual(["A", "C"]);
    expect(inverse).toEqual({ kind: "put", list: "orders", entry: anOrder({ id: "B" }), at: 1 });
  });

  test("leaves the shop that it was given as it was", () => {
    const before = structuredClone(THREE);
    applyChange(THREE, { kind: "remove", list: "orders", id: "A", at: null });
    expect(THREE).toEqual(before);
  });

  test("cannot remove what is not there", () => {
    expect(() => applyChange(THREE, { kind: "remove", list: "orders", id: "Z", at: null })).toThrow(
      "no such entry in orders: Z",
    );
    expect(() => applyChange(THREE, { kind: "remove", list: "orders", id: "A", at: 1 })).toThrow(RangeError);
  });

  test("changes the settings and leaves the lists", () => {
    const { name, timeZone, currency, display, costing } = THREE;
    const settings = { name: `${name} 2`, timeZone, currency, display, costing };
    const { shop, inverse } = applyChange(THREE, { kind: "settings", settings });
    expect(shop).toEqual({ ...THREE, name: "Invented works 2" });
    expect(applyChange(shop, inverse).shop).toEqual(THREE);
  });
});

test("an edit and then its inverse give the same shop, positions included, also with ids used twice", () => {
  const random = seededRandom(2);
  const pick = (count: number): number => Math.floor(random() * count);
  let shop = aShop();
  for (let round = 0; round < 500; round += 1) {
    const change = anyChange(pick, shop.orders.length);
    if (change.kind === "remove" && !shop.orders.some(({ id }) => id === change.id)) continue;
    const { shop: after, inverse } = applyChange(shop, change);
    const { shop: back, inverse: again } = applyChange(after, inverse);
    expect(back).toEqual(shop);
    expect(applyChange(back, again).shop).toEqual(after);
    shop = after;
  }
});

function anyChange(pick: (count: number) => number, length: number): Change {
  const entry = anOrder({ id: `O-${pick(6)}`, quantity: 1 + pick(9) });
  const kind = pick(5);
  if (kind === 0) return { kind: "put", list: "orders", entry, at: pick(length + 1) };
  if (kind === 1)
    return { kind: "put", list: "feedstocks", entry: aFeedstock({ id: `F-${pick(4)}` }), at: null };
  if (kind === 2) return { kind: "remove", list: "orders", id: entry.id, at: null };
  return { kind: "put", list: "orders", entry, at: null };
}

test("every list of the shop can be edited", () => {
  for (const list of SHOP_LISTS) {
    const whole = aShop({ builds: [aBuild({ id: "B-1" })], quotes: [aQuote()], cases: [aCase()] });
    const id = whole[list][0]?.id ?? "";
    const { shop, inverse } = applyChange(whole, { kind: "remove", list, id, at: null });
    expect(shop[list]).toHaveLength(whole[list].length - 1);
    expect(applyChange(shop, inverse).shop).toEqual(whole);
  }
});
