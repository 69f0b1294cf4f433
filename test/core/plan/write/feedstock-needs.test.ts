import { expect, test } from "vitest";
import type { Feedstock } from "../../../../core/shop/feedstock.ts";
import type { Shop } from "../../../../core/shop/shop.ts";
import { aCommittedBuild, writtenPlan } from "../../../fixtures/a-checked-week.ts";
import { aFeedstock, aMachine, anOrder, aShop } from "../../../fixtures/a-route.ts";

/** One copy, with the route that this works finds for it, kg. */
const COPY_KG = writtenPlan(shopWith({}), sketch(1, 1)).builds[0]?.massKg ?? 0;

test("the need is mass with waste on it; nothing is purged where it is loaded already", () => {
  const [need] = writtenPlan(shopWith({ stockKg: 10 }), sketch(10, 5)).feedstockNeeds;
  expect(need?.needKg).toBeCloseTo(15 * COPY_KG * 1.05, 9);
  expect([need?.packs, need?.buyKg, need?.orderBy, need?.note]).toEqual([0, 0, null, "Stock is enough."]);
});

test("purge of a changeover is needed too", () => {
  const shop = shopWith({ stockKg: 10 });
  const empty = { ...shop, machines: shop.machines.map((machine) => ({ ...machine, loaded: null })) };
  const [need] = writtenPlan(empty, sketch(10, 5)).feedstockNeeds;
  expect(need?.needKg).toBeCloseTo((15 * COPY_KG + 0.05) * 1.05, 9);
});

test("scrap to be expected from failed attempts is needed too", () => {
  const shop = shopWith({ stockKg: 10 });
  const failing = {
    ...shop,
    machines: shop.machines.map((machine) => ({ ...machine, failuresPer1000H: 100 })),
  };
  const plan = writtenPlan(failing, sketch(10, 5));
  const lost = plan.builds.map(({ printStart, printEnd, massKg }) => {
    const x = (0.1 * (Date.parse(printEnd) - Date.parse(printStart))) / 3_600_000;
    return massKg * ((Math.exp(x) - 1 - x) / x);
  });
  const expected = (15 * COPY_KG + (lost[0] ?? 0) + (lost[1] ?? 0)) * 1.05;
  expect(plan.feedstockNeeds[0]?.needKg).toBeCloseTo(expected, 9);
});

test("whole packs are bought, below, at and above a pack", () => {
  const needKg = 15 * COPY_KG * 1.05;
  expect(packs(needKg - 0.049)?.packs).toBe(1);
  expect(packs(needKg - 0.05)?.packs).toBe(1);
  expect(packs(needKg - 0.051)?.packs).toBe(2);
  expect(packs(needKg - 0.051)?.buyKg).toBeCloseTo(0.1, 9);
  expect(packs(needKg)?.packs).toBe(0);
});

test("ordered the lead time before the drying of the first build that stock does not cover", () => {
  const covered = 10 * COPY_KG * 1.05;
  const [need] = writtenPlan(
    shopWith({ stockKg: covered + 1e-6, leadTimeDays: 1 }),
    sketch(10, 5),
  ).feedstockNeeds;
  expect(need?.orderBy).toBe("2026-11-30T22:00:00+01:00");
  const [earlier] = writtenPlan(
    shopWith({ stockKg: covered - 2e-6, leadTimeDays: 1 }),
    sketch(10, 5),
  ).feedstockNeeds;
  expect(earlier?.orderBy).toBe("2026-11-29T02:00:00+01:00");
  expect(earlier?.note).toContain("The date to order is past");
  expect(earlier?.note).toContain("comes on Tue 1 Dec 06:00, and 26W49-F1-1 begins before");
});

test("stock that meets the first build but for a speck of dust covers it", () => {
  const covered = 10 * COPY_KG * 1.05 - 1e-12;
  const [need] = writtenPlan(shopWith({ stockKg: covered, leadTimeDays: 1 }), sketch(10, 5)).feedstockNeeds;
  expect(need?.orderBy).toBe("2026-11-30T22:00:00+01:00");
});

test("builds that begin before an order at the start of the plan can be there are named; at that very minute they are not", () => {
  // The second build begins to dry on Tuesday 22:00, 40 h after the start.
  expect(early(40 / 24)).toEqual(["26W49-F1-1"]);
  expect(early(41 / 24)).toEqual(["26W49-F1-1", "26W49-F1-2"]);
});

test("a committed build ahead draws feedstock, a running one has it already", () => {
  expect(needWith("committed") - needWith("running")).toBeCloseTo(2 * COPY_KG * 1.05, 9);
});

test("a feedstock that nothing needs is left out", () => {
  const shop = shopWith({ stockKg: 10 });
  const two = { ...shop, feedstocks: [...shop.feedstocks, aFeedstock({ id: "spare", family: "PETG" })] };
  expect(writtenPlan(two, sketch(10, 5)).feedstockNeeds.map(({ feedstockId }) => feedstockId)).toEqual([
    "pla-white",
  ]);
});

function shopWith(feedstock: Partial<Feedstock>): Shop {
  const loaded = { feedstockId: "pla-white", nozzleId: "n04" };
  return aShop({
    machines: [aMachine({ loaded }), aMachine({ id: "F2", loaded })],
    feedstocks: [aFeedstock(feedstock)],
    orders: [anOrder({ quantity: 15 })],
  });
}

/** Two builds on F1: Monday at 06:00 and Wednesday at 02:00 after drying, so set up at 06:00 less 4 h of drying. */
function sketch(first: number, second: number) {
  const build = { machineId: "F1", feedstockId: "pla-white" };
  return {
    builds: [
      { ...build, items: [["O-1", first] as const], setUpAt: "2026-11-30T06:00" },
      { ...build, items: [["O-1", second] as const], setUpAt: "2026-12-02T02:00" },
    ],
  };
}

/** Builds that begin before feedstock with such a lead time can come, with nothing in stock. */
function early(leadTimeDays: number) {
  return writtenPlan(shopWith({ stockKg: 0, leadTimeDays }), sketch(10, 5)).feedstockNeeds[0]?.tooEarly;
}

function packs(stockKg: number) {
  return writtenPlan(shopWith({ stockKg, packKg: 0.05 }), sketch(10, 5)).feedstockNeeds[0];
}

/** Need with one committed or running build of 2 copies on the other machine. */
function needWith(state: "committed" | "running"): number {
  const began = state === "running" ? { setUpStart: "2026-11-30T05:00", printStart: "2026-11-30T05:10" } : {};
  const build = { ...aCommittedBuild(), items: [{ orderId: "O-1", copies: 2 }], state, ...began };
  const shop = { ...shopWith({ stockKg: 10 }), orders: [anOrder({ quantity: 17 })], builds: [build] };
  return writtenPlan(shop, sketch(10, 5)).feedstockNeeds[0]?.needKg ?? 0;
}
