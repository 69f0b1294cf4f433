import { expect, test } from "vitest";
import { applyChanges } from "../../../core/shop/change-many.ts";
import { changesOfRenames } from "../../../renderer/store/renames.ts";
import { aCommittedBuild } from "../../fixtures/a-checked-week.ts";
import { aWorks } from "../../fixtures/a-works.ts";

const WORKS = aWorks();
const FIRST_ORDER = WORKS.orders[0]!;
const SHOP = {
  ...WORKS,
  orders: [{ ...FIRST_ORDER, pinned: { machineId: "F1", feedstockId: "pla" } }, ...WORKS.orders.slice(1)],
};

test("a renamed machine is named anew where orders are pinned to it, and nowhere else", () => {
  const { shop } = applyChanges(SHOP, changesOfRenames(SHOP, "machines", new Map([["F1", "B9"]])));
  expect(shop.orders[0]?.pinned).toEqual({ machineId: "B9", feedstockId: "pla" });
  expect(shop.orders.slice(1)).toEqual(SHOP.orders.slice(1));
});

test("a renamed calendar serves the same machines, a renamed part is ordered by the same lines", () => {
  const calendars = applyChanges(SHOP, changesOfRenames(SHOP, "calendars", new Map([["day", "early"]]))).shop;
  expect(calendars.machines.filter(({ calendarId }) => calendarId === "early").length).toBe(
    SHOP.machines.filter(({ calendarId }) => calendarId === "day").length,
  );
  const parts = applyChanges(
    SHOP,
    changesOfRenames(SHOP, "parts", new Map([[FIRST_ORDER.partId, "new"]])),
  ).shop;
  expect(parts.orders[0]?.partId).toBe("new");
});

test("nothing renamed changes nothing", () => {
  expect(changesOfRenames(SHOP, "feedstocks", new Map())).toEqual([]);
});

test("a renamed order has its new name in its builds, with the same copies", () => {
  const others = { ...aCommittedBuild(), id: "C-2", items: [{ orderId: "O-9", copies: 1 }] };
  const builds = [aCommittedBuild(), others];
  const { shop } = applyChanges(
    { ...SHOP, builds },
    changesOfRenames({ ...SHOP, builds }, "orders", new Map([["O-8", "new"]])),
  );
  expect(shop.builds.map(({ items }) => items)).toEqual([[{ orderId: "new", copies: 2 }], others.items]);
  expect(shop.orders).toEqual(SHOP.orders);
});
