import { describe, expect, test } from "vitest";
import { applyChange, type Change } from "../../../core/shop/change.ts";
import { applyChanges } from "../../../core/shop/change-many.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { seededRandom } from "../../../core/units/random.ts";
import { aShop, anOrder } from "../../fixtures/a-route.ts";

const THREE = aShop({ orders: ["A", "B", "C"].map((id) => anOrder({ id })) });

function oneByOne(shop: Shop, changes: readonly Change[]): { shop: Shop; inverses: Change[] } {
  const inverses: Change[] = [];
  let current = shop;
  for (const change of changes) {
    const { shop: next, inverse } = applyChange(current, change);
    current = next;
    inverses.unshift(inverse);
  }
  return { shop: current, inverses };
}

/** A change that fits the orders as they are: puts with and without a place, replacements, doubles, removals. */
function randomChange(shop: Shop, random: () => number): Change {
  const ids = shop.orders.map(({ id }) => id);
  const some = Math.floor(random() * ids.length);
  const id = random() < 0.5 ? (ids[some] ?? "A") : `N${Math.floor(random() * 8)}`;
  const at = random() < 0.5 ? null : Math.floor(random() * (ids.length + 2));
  if (random() < 0.4 && ids.length > 0) {
    return { kind: "remove", list: "orders", id: ids[some] ?? "", at: random() < 0.5 ? some : null };
  }
  return { kind: "put", list: "orders", entry: anOrder({ id, quantity: 1 + Math.floor(random() * 9) }), at };
}

describe("many edits at once", () => {
  test("give the same shop and the same way back as one after the other, whatever the edits", () => {
    const random = seededRandom(20261125);
    for (let round = 0; round < 200; round += 1) {
      const changes: Change[] = [];
      let shop: Shop = THREE;
      for (let step = 0; step < 12; step += 1) {
        const change = randomChange(shop, random);
        changes.push(change);
        shop = applyChange(shop, change).shop;
      }
      const many = applyChanges(THREE, changes);
      expect(many).toEqual(oneByOne(THREE, changes));
      expect(applyChanges(many.shop, many.inverses).shop).toEqual(THREE);
    }
  });

  test("are all refused when one does not fit", () => {
    const before = structuredClone(THREE);
    const changes: Change[] = [
      { kind: "put", list: "orders", entry: anOrder({ id: "D" }), at: null },
      { kind: "remove", list: "orders", id: "missing", at: null },
    ];
    expect(() => applyChanges(THREE, changes)).toThrow("no such entry in orders: missing");
    expect(THREE).toEqual(before);
  });

  test("of settings and lists may be mixed", () => {
    const { name, timeZone, currency, display, costing } = THREE;
    const { shop, inverses } = applyChanges(THREE, [
      { kind: "remove", list: "orders", id: "B", at: null },
      {
        kind: "settings",
        settings: { name: `${name}!`, timeZone, currency, display, costing },
      },
    ]);
    expect(shop.name).toBe(`${name}!`);
    expect(shop.orders.map(({ id }) => id)).toEqual(["A", "C"]);
    expect(applyChanges(shop, inverses).shop).toEqual(THREE);
  });

  test("put 100,000 new orders in well under a second", () => {
    const changes = Array.from(
      { length: 100_000 },
      (_, index): Change => ({ kind: "put", list: "orders", entry: anOrder({ id: `L${index}` }), at: null }),
    );
    const start = performance.now();
    const { shop, inverses } = applyChanges(THREE, changes);
    expect(applyChanges(shop, inverses).shop.orders).toHaveLength(3);
    expect(performance.now() - start).toBeLessThan(3000);
  });
});
