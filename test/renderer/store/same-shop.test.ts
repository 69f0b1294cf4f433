import { expect, test } from "vitest";
import { applyChanges } from "../../../core/shop/change-many.ts";
import type { Change } from "../../../core/shop/change.ts";
import { isSameShop } from "../../../renderer/store/same-shop.ts";
import { aShop, anOrder } from "../../fixtures/a-route.ts";

const SHOP = aShop({ orders: ["A", "B"].map((id) => anOrder({ id })) });

test.each<[string, Change]>([
  [
    "an order put in place",
    { kind: "put", list: "orders", entry: anOrder({ id: "A", note: "x" }), at: null },
  ],
  ["an order removed", { kind: "remove", list: "orders", id: "A", at: null }],
  [
    "another currency",
    {
      kind: "settings",
      settings: {
        name: SHOP.name,
        timeZone: SHOP.timeZone,
        currency: "CHF",
        display: SHOP.display,
        costing: SHOP.costing,
      },
    },
  ],
])("a shop with %s is another, and with that undone the same", (_, change) => {
  const { shop, inverses } = applyChanges(SHOP, [change]);
  expect(isSameShop(SHOP, shop)).toBe(false);
  expect(isSameShop(SHOP, applyChanges(shop, inverses).shop)).toBe(true);
});
