import { expect, test } from "vitest";
import { applyChanges } from "../../../core/shop/change-many.ts";
import type { Order } from "../../../core/shop/order.ts";
import type { GridEdit } from "../../../renderer/components/grid/grid-column.ts";
import { changesOfEdit } from "../../../renderer/store/list-edits.ts";
import { nextId } from "../../../renderer/store/next-id.ts";
import { aShop, anOrder } from "../../fixtures/a-route.ts";

const SHOP = aShop({ orders: ["A", "B", "B", "C"].map((id, place) => anOrder({ id, quantity: place + 1 })) });

function after(edit: Partial<GridEdit<Order>>): string[] {
  const whole = { label: "", replaced: [], inserted: [], removed: [], ...edit };
  const { shop, inverses } = applyChanges(SHOP, changesOfEdit("orders", SHOP.orders, whole));
  expect(applyChanges(shop, inverses).shop).toEqual(SHOP);
  return shop.orders.map(({ id, quantity }) => `${id}${quantity}`);
}

test("a replaced row stays at its place, whatever its name becomes and whoever has the same", () => {
  expect(after({ replaced: [{ place: 0, row: anOrder({ id: "A", quantity: 9 }) }] })).toEqual([
    "A9",
    "B2",
    "B3",
    "C4",
  ]);
  expect(after({ replaced: [{ place: 2, row: anOrder({ id: "B", quantity: 9 }) }] })).toEqual([
    "A1",
    "B2",
    "B9",
    "C4",
  ]);
  expect(after({ replaced: [{ place: 0, row: anOrder({ id: "C", quantity: 9 }) }] })).toEqual([
    "C9",
    "B2",
    "B3",
    "C4",
  ]);
});

test("inserted rows stand where they were put, also under a name that is there", () => {
  const rows = [anOrder({ id: "X", quantity: 8 }), anOrder({ id: "A", quantity: 9 })];
  expect(after({ inserted: rows.map((row) => ({ place: 4, row })) })).toEqual([
    "A1",
    "B2",
    "B3",
    "C4",
    "X8",
    "A9",
  ]);
  expect(
    after({
      inserted: [
        { place: 1, row: rows[0]! },
        { place: 3, row: rows[1]! },
      ],
    }),
  ).toEqual(["A1", "X8", "B2", "B3", "A9", "C4"]);
});

test("removed rows are those at the places, not others of their name", () => {
  expect(after({ removed: [2] })).toEqual(["A1", "B2", "C4"]);
  expect(after({ removed: [0, 2, 3] })).toEqual(["B2"]);
});

test.each([
  ["O-099", [], "O-100"],
  ["O-120", ["O-121", "O-122"], "O-123"],
  ["clip", [], "clip-2"],
  ["2026-W49-7b", [], "2026-W49-8b"],
  ["9", [], "10"],
  ["123456789012999999999", [], "1234567890121000000000"],
])("after %s comes an id that is not taken", (like, taken, next) => {
  expect(nextId(like, new Set([like, ...taken]))).toBe(next);
});
