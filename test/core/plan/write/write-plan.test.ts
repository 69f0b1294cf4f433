import { describe, expect, test } from "vitest";
import { compileProblem } from "../../../../core/plan/compile/compile-problem.ts";
import { NO_HOUR_PRICES } from "../../../../core/plan/bound/hour-prices.ts";
import { nearestFirst } from "../../../../core/plan/write/nearest-first.ts";
import { openPlanSource } from "../../../../core/plan/write/plan-source.ts";
import { writeBuilds } from "../../../../core/plan/write/planned-builds.ts";
import { writePlan } from "../../../../core/plan/write/write-plan.ts";
import { minuteOf } from "../../../../core/shop/instants.ts";
import type { Shop } from "../../../../core/shop/shop.ts";
import {
  aCheckedShop,
  aCommittedBuild,
  WEEK_FROM,
  WEEK_SKETCH,
  writtenPlan,
} from "../../../fixtures/a-checked-week.ts";
import { aFeedstock, aMachine, anOrder, aPart, aShop } from "../../../fixtures/a-route.ts";
import { aSchedule } from "../../../fixtures/a-schedule.ts";

const SHOP = aCheckedShop();
const PLAN = writtenPlan(SHOP, WEEK_SKETCH);

describe("builds", () => {
  test("have ids of ISO week, machine and running number, in order of set-up start", () => {
    expect(PLAN.builds.map(({ id }) => id)).toEqual([
      "26W49-F1-1",
      "C-1",
      "26W49-F1-2",
      "26W49-F2-1",
      "26W49-F1-3",
      "26W49-F2-2",
      "26W49-F2-3",
    ]);
  });

  test("have other ids in the next plan, a week later", () => {
    const shop = aShop();
    const week = (from: string) => {
      const request = { fromMin: minuteOf(`${from}T06:00`, shop.timeZone), days: 7, seed: 1 };
      const { problem } = compileProblem(shop, request);
      const schedule = aSchedule(problem, shop.timeZone, {
        builds: [
          { machineId: "F1", feedstockId: "pla-white", items: [["O-1", 10]], setUpAt: `${from}T06:00` },
        ],
      });
      return writeBuilds(openPlanSource(shop, problem, schedule)).map(({ document }) => document.id);
    };
    expect([week("2026-11-30"), week("2026-12-28"), week("2027-01-04")]).toEqual([
      ["26W49-F1-1"],
      ["26W53-F1-1"],
      ["27W01-F1-1"],
    ]);
  });

  test("get the same ids whatever the order of the schedule's builds", () => {
    const other = writtenPlan(SHOP, {
      ...WEEK_SKETCH,
      builds: [...WEEK_SKETCH.builds.slice(3), ...WEEK_SKETCH.builds.slice(0, 3)],
    });
    expect(other.builds).toEqual(PLAN.builds);
  });

  test("never take the id of a build that the shop has", () => {
    const shop: Shop = { ...SHOP, builds: [{ ...aCommittedBuild(), id: "26W49-F2-1" }] };
    const ids = writtenPlan(shop, WEEK_SKETCH).builds.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toContain("26W49-F2-4");
  });

  test("keep ids within 64 characters on a machine with a very long one", () => {
    const long = "F".repeat(64);
    const shop = aShop({ machines: [aMachine({ id: long })] });
    const plan = writtenPlan(shop, {
      builds: [
        { machineId: long, feedstockId: "pla-white", items: [["O-1", 10]], setUpAt: "2026-11-30T06:00" },
      ],
    });
    expect(plan.builds[0]?.id).toBe("26W49-1-1");
  });

  test("a committed build comes through as it is, with no cost of its own", () => {
    const { changeoverMin, massKg, costLines, ...rest } = PLAN.builds[1] ?? fail();
    expect(rest).toEqual(aCommittedBuild());
    expect([changeoverMin, costLines]).toEqual([0, []]);
    expect(massKg).toBeGreaterThan(0);
  });

  test("carry the changeover from what is loaded and the mass with its purge", () => {
    const change = PLAN.builds.find(({ id }) => id === "26W49-F1-2");
    expect(change?.changeoverMin).toBe(20);
    const kinds = change?.costLines.map(({ kind }) => kind);
    expect(kinds).toContain("changeover");
    expect(PLAN.builds.find(({ id }) => id === "26W49-F1-3")?.changeoverMin).toBe(0);
  });
});

describe("money", () => {
  test("lines add up to the schedule's cost, or it is a programmer's mistake", () => {
    const request = { fromMin: minuteOf(WEEK_FROM, SHOP.timeZone), days: 7, seed: 1 };
    const { problem, unplannable } = compileProblem(SHOP, request);
    const schedule = aSchedule(problem, SHOP.timeZone, WEEK_SKETCH);
    const write = (cost: number) =>
      writePlan({
        shop: SHOP,
        problem,
        schedule: { ...schedule, cost },
        unplannable,
        request,
        bound: { value: 0, from: "none" },
        prices: NO_HOUR_PRICES,
        handRules: [],
        elapsed: { firstPlanS: 0, totalS: 0 },
        status: "complete",
      });
    expect(() => write(schedule.cost * 1.0001)).toThrow("the schedule says");
    expect(write(schedule.cost).cost.total).toBeCloseTo(schedule.cost, 2);
  });

  test("every view adds up to the total to the cent", () => {
    const { byKind, byOrder, byMachine, byFeedstock, total } = PLAN.cost;
    expect(cents(Object.values(byKind))).toBe(Math.round(total * 100));
    for (const view of [byOrder, byMachine, byFeedstock]) {
      expect(cents(view.map((row) => row.total))).toBe(Math.round(total * 100));
    }
    expect(cents(PLAN.orders.map(({ cost }) => cost))).toBe(Math.round(total * 100));
  });

  test("tool paths of a new part, copies bought out and lateness belong to no build", () => {
    const lines = PLAN.costLines.filter(({ kind }) => kind !== "overhead");
    expect(lines.map(({ kind, orderId, amount }) => [kind, orderId, amount])).toEqual([
      ["engineering", "O-3", 30],
      ["buyOut", "O-5", 35],
      ["late", "O-4", 2.5],
    ]);
  });

  test("a bound is rounded down, and the gap is measured from what is shown", () => {
    const { bound, cost } = writtenPlan(SHOP, WEEK_SKETCH, 500.009);
    expect(bound.value).toBe(500);
    expect(bound.gapPct).toBeCloseTo((cost.total / 500 - 1) * 100, 9);
  });

  test("without a bound above 0 the gap is the whole cost", () => {
    expect(writtenPlan(SHOP, WEEK_SKETCH, 0).bound).toEqual({ value: 0, gapPct: 100, from: "by hand" });
  });

  test("hand rules show their cost and how many orders are late", () => {
    expect(PLAN.handRules).toEqual([
      { name: "by hand", cost: PLAN.cost.total, lateOrders: 1, unplannedCopies: 0 },
    ]);
  });
});

describe("orders", () => {
  test("a late order: minutes, money and why", () => {
    const late = outcome("O-4");
    expect([late?.lateMin, late?.lateCost]).toEqual([72, 2.5]);
    expect(late?.why[0]).toBe(
      "Its last copies come off Filament 1 on Mon 30 Nov 11:12, 1 h 12 min after the due date.",
    );
    expect(late?.why.join(" ")).toContain("Mon 30 Nov 08:12, in time");
    expect(late?.why.join(" ")).toContain("Filament 1 makes, the latest first, O-1.");
    expect(late?.why.join(" ")).toContain("pin");
  });

  test("an order in time needs no words", () => {
    expect(outcome("O-1")?.why).toEqual([]);
  });

  test("an order with a committed part is finished with the last of both", () => {
    expect(outcome("O-8")?.finishedAt).toBe("2026-12-02T07:27:00+01:00");
  });

  test("an order that is only committed, and late: told, but not charged", () => {
    const shop: Shop = {
      ...SHOP,
      orders: SHOP.orders.map((order) =>
        order.id === "O-8" ? { ...order, quantity: 2, dueAt: "2026-11-30T07:05:00+01:00" } : order,
      ),
    };
    const sketch = {
      ...WEEK_SKETCH,
      builds: WEEK_SKETCH.builds.filter(({ items }) => items[0]?.[0] !== "O-8"),
    };
    const late = writtenPlan(shop, sketch).orders.find(({ orderId }) => orderId === "O-8");
    expect([late?.lateMin, late?.lateCost]).toEqual([60, 0]);
    expect(late?.why.join(" ")).toContain("committed build");
  });

  test("an order that is not planned says so and why", () => {
    expect(outcome("O-7")?.finishedAt).toBeNull();
    expect(outcome("O-7")?.why[0]).toBe("10 copies are not planned.");
  });
});

describe("why an order is late", () => {
  test("too large a quantity for its date: the earliest finish alone, and a smaller quantity first", () => {
    const why = whyOf({ quantity: 30, dueAt: "2026-11-30T10:00:00+01:00" }, 30);
    expect(why).toContain("Even with no other order in the way it would be finished only on");
    expect(why).toMatch(/a smaller quantity first\. With no other order in the way \d+ of 30 copies/);
  });

  test("released too late", () => {
    const why = whyOf(
      { quantity: 10, releaseAt: "2026-11-30T08:00:00+01:00", dueAt: "2026-11-30T09:00:00+01:00" },
      10,
      "2026-11-30T08:00",
    );
    expect(why).toContain("It is released only on Mon 30 Nov 08:00.");
  });

  test("nobody there to take it off", () => {
    const why = whyOf(
      { quantity: 10, dueAt: "2026-11-30T18:00:00+01:00" },
      10,
      "2026-11-30T13:00",
      "2026-12-01T06:00",
    );
    expect(why).toContain("waits 14 h 21 min for somebody to take it off");
    expect(why).toContain(
      "somebody at Filament 1 on Mon 30 Nov 15:39 to take it off brings it forward by 12 h 5 min",
    );
  });

  test("a machine that stands idle before it, with the staffed time of the wait", () => {
    const why = whyOf({ quantity: 10, dueAt: "2026-11-30T10:00:00+01:00" }, 10, "2026-12-01T06:00");
    expect(why).toContain(
      "From Mon 30 Nov 06:00 to Tue 1 Dec 06:00 nobody sets it up: 24 h, of which 8 h are staffed",
    );
  });

  test("nobody there before the shift while its machine stands idle", () => {
    const why = whyOf({ quantity: 10, dueAt: "2026-12-01T08:00:00+01:00" }, 10, "2026-12-01T06:00");
    expect(why).toContain(
      "somebody at Filament 1 to set it up 44 min before Tue 1 Dec 06:00; it stands idle then.",
    );
  });

  test("no word of an earlier set-up while its machine is out of service", () => {
    const shop = lateShop({ quantity: 10, dueAt: "2026-12-01T08:00:00+01:00" });
    const block = { from: "2026-11-30T06:00", to: "2026-12-01T05:30", reason: "spindle" };
    const machines = shop.machines.map((machine) => ({ ...machine, outOfService: [block] }));
    const plan = writtenPlan({ ...shop, machines }, oneBuild(10, "2026-12-01T06:00"));
    expect(plan.orders[0]?.lateMin).toBeGreaterThan(0);
    expect(plan.orders[0]?.why.join(" ")).not.toContain("stands idle");
  });

  test("machines that are ruled out, with the reason", () => {
    const why = whyOf({ quantity: 10, dueAt: "2026-11-30T07:00:00+01:00" }, 10);
    expect(why).toMatch(/Ruled out: Small one \(.+\)\./);
  });

  test("nothing is ruled out where time is missing: bought out all the same, or nobody there before the due date", () => {
    const shop = lateShop({ quantity: 10, dueAt: "2026-11-30T07:00:00+01:00" });
    const parts = [aPart({ buyOut: { pricePerPiece: 90, leadTimeDays: 3 } })];
    const bought = writtenPlan({ ...shop, parts }, { builds: [], boughtOut: [["O-1", 10]] });
    expect(bought.orders[0]?.why[0]).toContain("bought out");
    const closed = whyOf(
      { quantity: 10, releaseAt: "2026-11-30T14:00:00+01:00", dueAt: "2026-12-01T06:00:00+01:00" },
      10,
      "2026-12-01T06:00",
    );
    expect(`${bought.orders[0]?.why.join(" ")} ${closed}`).not.toContain("Ruled out");
  });

  test("copies made elsewhere that would be earlier", () => {
    const shop = lateShop({ quantity: 10, dueAt: "2026-11-30T07:00:00+01:00" });
    const parts = [aPart({ buyOut: { pricePerPiece: 90, leadTimeDays: 0.05 } })];
    const plan = writtenPlan({ ...shop, parts }, oneBuild(10, "2026-11-30T06:00"));
    expect(plan.orders[0]?.why.join(" ")).toContain("copies made elsewhere arrive on Mon 30 Nov 07:12");
  });

  test("an hour with a confirmed price", () => {
    const shop = lateShop({ quantity: 10, dueAt: "2026-11-30T07:00:00+01:00" });
    const plan = writtenPlan(shop, oneBuild(10, "2026-11-30T06:00"), 1, {
      machineHour: [
        {
          classIndex: 0,
          fromMin: minuteOf("2026-11-30T06:00", shop.timeZone),
          toMin: minuteOf("2026-11-30T14:00", shop.timeZone),
          moreSavesPerH: 12.5,
          lessCostsPerH: 14,
        },
      ],
      operatorHour: [],
    });
    expect(plan.orders[0]?.why.join(" ")).toContain("one more staffed hour on Filament 1");
    expect(plan.orders[0]?.why.join(" ")).toContain("12.5 EUR");
  });
});

describe("copies without a place", () => {
  test("a promise that cannot hold tells the earliest finish and how many copies could be in time", () => {
    const entry = unplaced("2026-11-30T07:30:00+01:00", 10);
    expect(entry?.reasons[0]?.code).toBe("promise-impossible");
    expect(entry?.reasons[0]?.sentence).toMatch(
      /finished only on Mon 30 Nov 08:54, 1 h 24 min late; 3 of 10 copies/,
    );
  });

  test("a promise of one copy speaks of no others", () => {
    const [reason] = unplaced("2026-11-30T06:30:00+01:00", 1)?.reasons ?? [];
    expect(reason?.code).toBe("promise-impossible");
    expect(reason?.sentence).toMatch(/ late\.$/);
  });

  test("a promise that others crowd out tells when it would be finished alone", () => {
    const entry = unplaced("2026-11-30T08:54:00+01:00", 10);
    expect(entry?.reasons[0]?.code).toBe("promise-crowded-out");
    expect(entry?.reasons[0]?.sentence).toContain("Mon 30 Nov 08:54");
  });

  test("no staffed time long enough: set-up, changeover and run against the longest window", () => {
    const loaded = { feedstockId: "petg-grey", nozzleId: "n04" };
    const machines = [
      aMachine({ loaded, unattended: true, changeover: { ...aMachine().changeover, newFamilyMin: 540 } }),
    ];
    const feedstocks = [aFeedstock(), aFeedstock({ id: "petg-grey", family: "PETG" })];
    const shop = aShop({ machines, feedstocks, orders: [anOrder({ pinned: { feedstockId: "pla-white" } })] });
    const entry = writtenPlan(shop, { builds: [], unplaced: [["O-1", 10]] }).unplanned[0];
    expect(entry?.reasons.map(({ code }) => code)).toEqual(["no-place"]);
    expect(entry?.reasons[0]?.sentence).toMatch(
      /long enough for 10 copies of it: on Filament 1 set-up takes 10 min, changeover 9 h and the run .+; its longest staffed time is 8 h,/,
    );
  });

  test("what time or capacity forbids comes before family and size, a pin first, and nothing twice", () => {
    const codes = ["family", "chamber-temperature", "too-large", "run-too-long", "pinned", "never-succeeds"];
    const reasons = [...codes, "family"].map((code) => ({ code, sentence: `${code}.` }));
    expect(nearestFirst(reasons).map(({ code }) => code)).toEqual([
      "pinned",
      "run-too-long",
      "never-succeeds",
      "chamber-temperature",
      "family",
      "too-large",
    ]);
  });
});

function cents(amounts: readonly number[]): number {
  return Math.round(amounts.reduce((sum, value) => sum + value, 0) * 100);
}

function unplaced(dueAt: string, quantity: number) {
  const shop = aShop({ orders: [anOrder({ quantity, allowLate: false, dueAt })] });
  return writtenPlan(shop, { builds: [], unplaced: [["O-1", quantity]] }).unplanned[0];
}

function outcome(orderId: string) {
  return PLAN.orders.find((entry) => entry.orderId === orderId);
}

function lateShop(order: Parameters<typeof anOrder>[0]): Shop {
  return aShop({
    machines: [
      aMachine({ unattended: true, loaded: { feedstockId: "pla-white", nozzleId: "n04" } }),
      aMachine({ id: "F9", name: "Small one", envelopeMm: { x: 30, y: 30, z: 30 } }),
    ],
    feedstocks: [aFeedstock()],
    orders: [anOrder(order)],
  });
}

function oneBuild(copies: number, setUpAt: string, unloadAt?: string) {
  const build = { machineId: "F1", feedstockId: "pla-white", items: [["O-1", copies] as const], setUpAt };
  return { builds: [unloadAt === undefined ? build : { ...build, unloadAt }] };
}

function whyOf(
  order: Parameters<typeof anOrder>[0],
  copies: number,
  setUpAt = "2026-11-30T06:00",
  unloadAt?: string,
): string {
  const plan = writtenPlan(lateShop(order), oneBuild(copies, setUpAt, unloadAt));
  expect(plan.orders[0]?.lateMin).toBeGreaterThan(0);
  return plan.orders[0]?.why.join(" ") ?? "";
}

function fail(): never {
  throw new Error("the plan has too few builds");
}

test("tasks and reasons are in the units of the works, and so is nothing else", () => {
  const inches = writtenPlan({ ...SHOP, display: { length: "in", mass: "lb" } }, WEEK_SKETCH);
  const texts = inches.tasks.map(({ text }) => text).join();
  expect(texts).toContain("layer 0.0079 in");
  expect(texts).toMatch(/[0-9.]+ lb of PETG grey/);
  expect(texts).not.toMatch(/[0-9] (mm|kg)/);
  expect(inches.builds.map(({ massKg }) => massKg)).toEqual(PLAN.builds.map(({ massKg }) => massKg));
});
