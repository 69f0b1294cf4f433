import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../../core/plan/check/check-plan.ts";
import { planSchema } from "../../../../core/plan/plan-document.ts";
import type { PlanDocument, PlannedBuild } from "../../../../core/plan/plan-document.ts";
import { instantOf, minuteOf } from "../../../../core/shop/instants.ts";
import type { Machine } from "../../../../core/shop/machine.ts";
import type { Order } from "../../../../core/shop/order.ts";
import type { Shop } from "../../../../core/shop/shop.ts";
import { aCheckedShop, aCommittedBuild, WEEK_SKETCH, writtenPlan } from "../../../fixtures/a-checked-week.ts";
import type { ScheduleSketch } from "../../../fixtures/a-schedule.ts";

const SHOP = aCheckedShop();
const PLAN = writtenPlan(SHOP, WEEK_SKETCH);

describe("a plan that keeps every rule", () => {
  test("gives no finding", () => {
    expect(checkPlan(SHOP, PLAN)).toEqual([]);
  });

  test("is a plan document by its schema", () => {
    expect(planSchema.safeParse(PLAN).error).toBeUndefined();
  });
});

describe("a build that is not what it says", () => {
  test("layer height that no route has", () => {
    expect(codes(withBuild("26W49-F1-1", { layerHeightMm: 0.21 }))).toEqual(["route"]);
  });

  test("bead that no route has", () => {
    expect(codes(withBuild("26W49-F1-1", { beadWidthMm: 0.5 }))).toEqual(["route"]);
  });

  test("orientation that no route has", () => {
    expect(codes(withBuild("26W49-F1-1", { orientation: "x" }))).toEqual(["route"]);
  });

  test("of two orders on a platform, the one that stands on another axis", () => {
    const parts = SHOP.parts.map((part) =>
      part.id === "hook" ? { ...part, orientations: ["x" as const] } : part,
    );
    const findings = checkPlan({ ...SHOP, parts }, PLAN);
    expect(findings.map(({ code, where }) => [code, where])).toEqual([
      ["route", "builds/26W49-F2-1/items/O-3"],
    ]);
  });

  test("a part that its machine cannot make, with the reason in the sentence", () => {
    const shop = withMachine("F1", { maxNozzleC: 150 });
    const findings = checkPlan(shop, PLAN);
    expect(new Set(findings.map(({ code }) => code))).toEqual(new Set(["route"]));
    expect(findings[0]?.sentence).toContain("150");
  });

  test("orders mixed on a platform that does not allow it", () => {
    expect(codes(PLAN, withMachine("F2", { mixedPlatform: false }))).toEqual(["mixed-platform"]);
  });

  test("footprints that do not fit together", () => {
    const shop = withMachine("F2", { envelopeMm: { x: 55, y: 250, z: 250 } });
    expect(new Set(codes(PLAN, shop))).toEqual(new Set(["too-many-copies", "platform"]));
  });

  test("more copies than the route allows, on a platform where they would still fit", () => {
    const shop = {
      ...SHOP,
      feedstocks: SHOP.feedstocks.map((feedstock) => ({ ...feedstock, maxLayerS: 200 })),
    };
    expect(codes(PLAN, shop)).toEqual(["too-many-copies", "layer-time"]);
  });

  test("fewer copies than its layers need", () => {
    const shop = withMachine("F1", { maxWaitPerLayerS: 1 });
    const slow = {
      ...shop,
      feedstocks: shop.feedstocks.map((feedstock) => ({ ...feedstock, minLayerS: 40 })),
    };
    const findings = codes(PLAN, slow).filter((code) => code === "too-few-copies");
    expect(findings.length).toBeGreaterThan(0);
  });

  test("a print one minute shorter than its copies take", () => {
    const plan = withBuild("26W49-F1-1", { printEnd: later("26W49-F1-1", "printEnd", -1) });
    expect(codes(plan)).toEqual(["run-length", "feedstock-need"]);
  });

  test("a mass that is not that of its copies and purge", () => {
    expect(codes(withBuild("26W49-F1-1", { massKg: build("26W49-F1-1").massKg + 0.001 }))).toEqual(["mass"]);
  });
});

describe("a build that does not follow what is before it", () => {
  test("changeover minutes other than the loaded feedstock asks for", () => {
    const plan = withBuild("26W49-F1-2", { changeoverMin: 19 });
    expect(codes(plan)).toEqual(["set-up-length", "task-missing", "task-missing"]);
  });

  test("no changeover where another feedstock is loaded", () => {
    const shop = withMachine("F1", { loaded: { feedstockId: "petg-grey", nozzleId: "n04" } });
    expect(codes(PLAN, shop)).toContain("set-up-length");
  });

  test("set up a minute too short", () => {
    const plan = withBuild("26W49-F1-3", { setUpStart: later("26W49-F1-3", "setUpStart", 1) });
    expect(codes(plan)).toEqual(["set-up-length", "task-missing"]);
  });

  test("a set-up of a broken minute takes the whole one", () => {
    expect(codes(PLAN, withMachine("F1", { setUpMin: 9.5 }))).not.toContain("set-up-length");
    expect(codes(PLAN, withMachine("F1", { setUpMin: 10.5 }))).toContain("set-up-length");
  });

  test("set up before the build before it is off, by one minute", () => {
    expect(codes(movedTo("26W49-F1-2", "2026-11-30T08:43"), withOperators(2))).toEqual(["overlap"]);
    expect(codes(movedTo("26W49-F1-2", "2026-11-30T08:44"))).toEqual([]);
  });

  test("set up before a committed build is off", () => {
    const shop = { ...SHOP, builds: [{ ...aCommittedBuild(), unloadEnd: "2026-12-01T06:31:00+01:00" }] };
    const changed = withBuild("C-1", { unloadEnd: "2026-12-01T06:31:00+01:00" });
    expect(codes(changed, shop)).toContain("before-committed");
  });
});

describe("a build at the wrong time", () => {
  test("set up before the plan starts", () => {
    const plan = { ...PLAN, plannedFrom: "2026-11-30T06:01:00+01:00" };
    expect(codes(plan)).toContain("plan-start");
  });

  test("set up one minute before its order is released", () => {
    expect(codes(PLAN, withOrder("O-9", { releaseAt: "2026-12-01T07:01:00+01:00" }))).toEqual(["release"]);
    expect(codes(PLAN, withOrder("O-9", { releaseAt: "2026-12-01T07:00:00+01:00" }))).toEqual([]);
  });

  test("taken off before it is printed and unloaded", () => {
    const plan = withBuild("26W49-F1-1", { unloadEnd: later("26W49-F1-1", "unloadEnd", -1) });
    expect(codes(plan)).toEqual(["unload-early", "late-figures", "task-missing", "task-missing"]);
  });

  test("on a machine that is out of service while the part waits to be taken off", () => {
    const outOfService = [{ from: "2026-12-06T10:00", to: "2026-12-06T11:00", reason: "service" }];
    expect(codes(PLAN, withMachine("F2", { outOfService }))).toEqual(["out-of-service"]);
  });

  test("an out-of-service time that ends when its set-up starts is no matter", () => {
    const outOfService = [{ from: "2026-12-04T10:00", to: "2026-12-04T13:30", reason: "service" }];
    expect(codes(PLAN, withMachine("F2", { outOfService }))).toEqual([]);
  });

  test("set up before the shift begins", () => {
    expect(
      codes(movedTo("26W49-F1-3", "2026-12-01T05:59"), withOrder("O-9", { releaseAt: "2026-12-01T05:00" })),
    ).toEqual(["set-up-shift"]);
  });

  test("taken off after the shift ends", () => {
    expect(codes(withUnload("26W49-F2-1", "2026-12-01T14:01"))).toEqual(["unload-shift"]);
    expect(codes(withUnload("26W49-F2-1", "2026-12-01T14:00"))).toEqual([]);
  });

  test("printing unstaffed on a machine that is not approved for it", () => {
    const findings = checkPlan(withMachine("F2", { unattended: false }), PLAN);
    expect(findings.map(({ code, where }) => [code, where])).toEqual([["attended", "builds/26W49-F2-3"]]);
  });

  test("printing over a gap longer than was approved", () => {
    expect(codes(PLAN, withMachine("F2", { unattendedMaxH: 63.9 }))).toEqual(["unattended-limit"]);
    expect(codes(PLAN, withMachine("F2", { unattendedMaxH: 64 }))).toEqual([]);
  });

  test("printing over a closed day", () => {
    const calendars = SHOP.calendars.map((calendar) => ({
      ...calendar,
      closures: [{ from: "2026-12-05", to: "2026-12-05", reason: "closed" }],
    }));
    expect(codes(PLAN, { ...SHOP, calendars })).toEqual(["closure"]);
  });

  test("a part that waits over a closed day is no matter", () => {
    const calendars = SHOP.calendars.map((calendar) => ({
      ...calendar,
      closures: [{ from: "2026-12-06", to: "2026-12-06", reason: "closed" }],
    }));
    expect(codes(PLAN, { ...SHOP, calendars })).toEqual([]);
  });

  test("more set-ups and unloads at once than operators, by one minute", () => {
    expect(
      codes(movedTo("26W49-F1-3", "2026-12-01T06:39"), withOrder("O-9", { releaseAt: "2026-12-01T06:00" })),
    ).toEqual(["operators"]);
    expect(codes(movedTo("26W49-F1-3", "2026-12-01T06:40"))).toEqual([]);
  });

  test("a committed build's set-up takes an operator too", () => {
    const builds = [
      {
        ...aCommittedBuild(),
        setUpStart: "2026-11-30T06:09:00+01:00",
        printStart: "2026-11-30T06:19:00+01:00",
      },
    ];
    const plan = withBuild("C-1", {
      setUpStart: "2026-11-30T06:09:00+01:00",
      printStart: "2026-11-30T06:19:00+01:00",
    });
    expect(codes(plan, { ...SHOP, builds })).toContain("operators");
  });
});

describe("copies", () => {
  test("one copy lost", () => {
    const plan = {
      ...PLAN,
      unplanned: PLAN.unplanned.map((entry) => ({ ...entry, copies: entry.copies - 1 })),
    };
    expect(codes(plan)).toEqual(["copies"]);
  });

  test("one copy made twice: a committed build counts", () => {
    expect(codes(PLAN, withOrder("O-8", { quantity: 3 }))).toEqual(["copies"]);
  });

  test("good copies of a finished build count, failed ones do not", () => {
    const done = {
      ...aCommittedBuild(),
      id: "C-0",
      state: "done" as const,
      actual: { goodCopies: 1, failedCopies: 1 },
    };
    const shop = withOrder("O-8", { quantity: 5 });
    expect(codes(PLAN, { ...shop, builds: [...SHOP.builds, done] })).toEqual([]);
  });

  test("copies that are not planned for no reason", () => {
    const plan = { ...PLAN, unplanned: PLAN.unplanned.map((entry) => ({ ...entry, reasons: [] })) };
    expect(codes(plan)).toEqual(["no-reason"]);
  });

  test("bought out for another price, or earlier than can be", () => {
    const cheap = { ...PLAN, boughtOut: PLAN.boughtOut.map((lot) => ({ ...lot, cost: 30 })) };
    expect(codes(cheap)).toEqual(["buy-out"]);
    const early = {
      ...PLAN,
      boughtOut: PLAN.boughtOut.map((lot) => ({ ...lot, arriveAt: "2026-12-01T06:00:00+01:00" })),
    };
    expect(codes(early)).toEqual(["buy-out", "late-figures"]);
  });

  test("on another machine or of another feedstock than it is pinned to", () => {
    expect(codes(PLAN, withOrder("O-1", { pinned: { machineId: "F2" } }))).toEqual(["pinned"]);
    expect(codes(PLAN, withOrder("O-1", { pinned: { feedstockId: "petg-grey" } }))).toEqual(["pinned"]);
  });
});

describe("dates", () => {
  test("a promise that does not hold", () => {
    const shop = withOrder("O-4", { allowLate: false });
    expect(codes(PLAN, shop)).toEqual(["promise"]);
  });

  test("minutes late other than the builds make them", () => {
    expect(codes(withOutcome("O-4", { lateMin: 71 }))).toEqual(["late-figures"]);
  });

  test("a cost of lateness other than the minutes make it", () => {
    expect(codes(withOutcome("O-4", { lateCost: 2.51 }))).toEqual(["late-figures"]);
  });

  test("a finish other than the last copy's", () => {
    expect(codes(withOutcome("O-1", { finishedAt: "2026-11-30T08:45:00+01:00" }))).toEqual(["late-figures"]);
  });

  test("an open order that is left out", () => {
    expect(codes({ ...PLAN, orders: PLAN.orders.filter(({ orderId }) => orderId !== "O-7") })).toEqual([
      "order-missing",
    ]);
  });

  test("copies that count by themselves are late by themselves", () => {
    const shop = withOrder("O-3", { dueAt: "2026-12-01T10:00:00+01:00" });
    const plan = writtenPlan(shop, WEEK_SKETCH);
    expect(checkPlan(shop, plan)).toEqual([]);
    expect(plan.orders.find(({ orderId }) => orderId === "O-3")?.lateCost).toBeCloseTo((92 / 1440) * 50, 2);
  });
});

describe("money", () => {
  test("a cost line of a build that is a cent too high", () => {
    const costLines = build("26W49-F1-1").costLines.map((line, index) =>
      index === 0 ? { ...line, amount: line.amount + 0.01 } : line,
    );
    expect(codes(withBuild("26W49-F1-1", { costLines }))).toEqual(["cost-lines"]);
  });

  test("a cost line that belongs to another order", () => {
    const costLines = build("26W49-F1-1").costLines.map((line) => ({ ...line, orderId: "O-2" }));
    expect(codes(withBuild("26W49-F1-1", { costLines }))).toEqual(["cost-lines"]);
  });

  test("a cost line of the plan that is missing", () => {
    const costLines = PLAN.costLines.filter(({ kind }) => kind !== "buyOut");
    expect(codes({ ...PLAN, costLines })).toEqual(["cost-lines"]);
  });

  test("rates of the shop other than the plan was costed with", () => {
    const shop = { ...SHOP, costing: { ...SHOP.costing, labourPerH: 37 } };
    expect(new Set(codes(PLAN, shop))).toEqual(new Set(["cost-lines", "cost-view"]));
  });

  test.each(["byOrder", "byMachine", "byFeedstock"] as const)("a view %s that is a cent off", (name) => {
    const rows = PLAN.cost[name].map((row, index) =>
      index === 0 ? { ...row, total: row.total + 0.01 } : row,
    );
    const found = codes({ ...PLAN, cost: { ...PLAN.cost, [name]: rows } });
    expect(new Set(found)).toEqual(new Set(["cost-view"]));
  });

  test("a view by kind that is a cent off", () => {
    const byKind = { ...PLAN.cost.byKind, machine: PLAN.cost.byKind.machine + 0.01 };
    expect(codes({ ...PLAN, cost: { ...PLAN.cost, byKind } })).toEqual(["cost-view"]);
  });

  test("an order that shows another cost than the view by order", () => {
    const shown = PLAN.orders.find(({ orderId }) => orderId === "O-1")?.cost ?? 0;
    expect(codes(withOutcome("O-1", { cost: shown + 0.01 }))).toEqual(["cost-view"]);
  });

  test("a bound above the cost, and a gap that is not the one between them", () => {
    const { total } = PLAN.cost;
    const bound = (value: number, gapPct: number) => ({ ...PLAN, bound: { value, gapPct, from: "by hand" } });
    expect(codes(bound(total + 0.01, (total / (total + 0.01) - 1) * 100))).toEqual(["bound"]);
    expect(codes(bound(total, 0))).toEqual([]);
    expect(codes(bound(total / 2, 99))).toEqual(["bound"]);
  });
});

describe("committed builds", () => {
  test("a committed build that is moved", () => {
    const plan = withBuild("C-1", { printEnd: "2026-11-30T07:59:00+01:00" });
    expect(codes(plan)).toContain("committed");
  });

  test("a committed build that is left out", () => {
    const plan = { ...PLAN, builds: PLAN.builds.filter(({ id }) => id !== "C-1") };
    expect(codes(plan)).toContain("committed");
  });

  test("a build that the plan itself calls committed", () => {
    expect(codes(withBuild("26W49-F2-2", { state: "committed" }))).toContain("committed");
  });
});

describe("lists people work by", () => {
  test.each(["changeOver", "setUp", "unload", "finish"] as const)("no task %s", (kind) => {
    const first = PLAN.tasks.find((task) => task.kind === kind);
    expect(codes({ ...PLAN, tasks: PLAN.tasks.filter((task) => task !== first) })).toEqual(["task-missing"]);
  });

  test("tasks out of time order", () => {
    expect(codes({ ...PLAN, tasks: PLAN.tasks.toReversed() })).toEqual(["task-order"]);
  });

  test.each([
    { needKg: 0.5 },
    { packs: 2 },
    { buyKg: 0.5 },
    { stockKg: 1 },
    { orderBy: "2026-12-01T13:31:00+01:00" },
    { orderBy: null },
    { tooEarly: ["26W49-F1-9"] },
  ])("a need of feedstock that says %o", (change) => {
    const feedstockNeeds = PLAN.feedstockNeeds.map((need, index) =>
      index === 0 ? { ...need, ...change } : need,
    );
    expect(codes({ ...PLAN, feedstockNeeds })).toEqual(["feedstock-need"]);
  });

  test("a need that is missing", () => {
    expect(codes({ ...PLAN, feedstockNeeds: PLAN.feedstockNeeds.slice(1) })).toEqual(["feedstock-need"]);
  });
});

describe("names", () => {
  test.each([{ machineId: "F9" }, { nozzleId: "n99" }, { feedstockId: "abs-blue" }])(
    "a build with %o",
    (change) => {
      expect(new Set(codes(withBuild("26W49-F1-1", change)))).toEqual(new Set(["unknown-id"]));
    },
  );

  test("a build of an order that the shop does not have", () => {
    expect(codes(withBuild("26W49-F1-1", { items: [{ orderId: "O-99", copies: 10 }] }))).toEqual([
      "unknown-id",
    ]);
  });

  test("an order that was set aside may be unplanned although the shop has it no more", () => {
    const entry = {
      orderId: "O-99",
      copies: 1,
      reasons: [{ code: "set-aside", sentence: "Its part is unknown." }],
    };
    expect(codes({ ...PLAN, unplanned: [...PLAN.unplanned, entry] })).toEqual([]);
    const other = { ...entry, reasons: [{ code: "form", sentence: "No machine." }] };
    expect(codes({ ...PLAN, unplanned: [...PLAN.unplanned, other] })).toEqual(["unknown-id"]);
  });

  test("two builds with one id", () => {
    expect(codes(withBuild("26W49-F1-3", { id: "26W49-F1-2" }))).toContain("duplicate-id");
  });

  test("a plan of another shop", () => {
    expect(codes({ ...PLAN, currency: "USD" })).toEqual(["other-shop"]);
  });
});

test("every finding is one sentence with a place and a value", () => {
  const broken: PlanDocument[] = [
    withBuild("26W49-F1-1", { layerHeightMm: 0.21 }),
    movedTo("26W49-F1-2", "2026-11-30T08:43"),
    withOutcome("O-4", { lateMin: 71 }),
    { ...PLAN, tasks: [] },
    { ...PLAN, feedstockNeeds: [] },
  ];
  for (const finding of broken.flatMap((plan) => checkPlan(SHOP, plan))) {
    expect(finding.severity).toBe("error");
    expect(finding.where).not.toBe("");
    expect(finding.sentence).toMatch(/^[A-Z].*\d.*\.$/);
  }
});

function codes(plan: PlanDocument, shop: Shop = SHOP): string[] {
  return checkPlan(shop, plan).map(({ code }) => code);
}

function withOperators(operators: number): Shop {
  const calendars = SHOP.calendars.map((calendar) => ({
    ...calendar,
    shifts: calendar.shifts.map((shift) => ({ ...shift, operators })),
  }));
  return { ...SHOP, calendars };
}

function build(id: string, plan = PLAN): PlannedBuild {
  const found = plan.builds.find((entry) => entry.id === id);
  if (!found) throw new Error(`no build ${id}`);
  return found;
}

function later(id: string, field: "setUpStart" | "printEnd" | "unloadEnd", minutes: number): string {
  return instantOf(minuteOf(build(id)[field], SHOP.timeZone) + minutes, SHOP.timeZone);
}

function withBuild(id: string, change: Partial<PlannedBuild>, plan = PLAN): PlanDocument {
  build(id, plan);
  return { ...plan, builds: plan.builds.map((entry) => (entry.id === id ? { ...entry, ...change } : entry)) };
}

function withOutcome(orderId: string, change: Partial<PlanDocument["orders"][number]>): PlanDocument {
  return {
    ...PLAN,
    orders: PLAN.orders.map((entry) => (entry.orderId === orderId ? { ...entry, ...change } : entry)),
  };
}

function withMachine(id: string, change: Partial<Machine>): Shop {
  return {
    ...SHOP,
    machines: SHOP.machines.map((entry) => (entry.id === id ? { ...entry, ...change } : entry)),
  };
}

function withOrder(id: string, change: Partial<Order>): Shop {
  return { ...SHOP, orders: SHOP.orders.map((entry) => (entry.id === id ? { ...entry, ...change } : entry)) };
}

/** The plan written anew with one build at another time, so that its lists and costs agree with it. */
function movedTo(id: string, setUpAt: string): PlanDocument {
  return writtenPlan(SHOP, withSketch(id, { setUpAt }));
}

function withUnload(id: string, unloadEnd: string): PlanDocument {
  const unloadAt = instantOf(minuteOf(unloadEnd, SHOP.timeZone) - 5, SHOP.timeZone);
  return writtenPlan(SHOP, withSketch(id, { unloadAt }));
}

function withSketch(id: string, change: { setUpAt?: string; unloadAt?: string }): ScheduleSketch {
  const written = build(id);
  const at = minuteOf(written.setUpStart, SHOP.timeZone);
  const builds = WEEK_SKETCH.builds.map((sketch) =>
    sketch.machineId === written.machineId && minuteOf(sketch.setUpAt, SHOP.timeZone) === at
      ? { ...sketch, ...change }
      : sketch,
  );
  return { ...WEEK_SKETCH, builds };
}
