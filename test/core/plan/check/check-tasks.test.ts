import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../../core/plan/check/check-plan.ts";
import type { OperatorTask, PlanDocument } from "../../../../core/plan/plan-document.ts";
import type { Shop } from "../../../../core/shop/shop.ts";
import { aCheckedShop, WEEK_SKETCH, writtenPlan } from "../../../fixtures/a-checked-week.ts";

/** PETG is dried for 2 h twice: for 26W49-F1-2 (set-up Monday 09:00) and for 26W49-F1-3 (set-up Tuesday, here at 09:00). */
const SHOP = aCheckedShop();
const SKETCH = {
  ...WEEK_SKETCH,
  builds: WEEK_SKETCH.builds.map((build) =>
    build.setUpAt === "2026-12-01T07:00" ? { ...build, setUpAt: "2026-12-01T09:00" } : build,
  ),
};
const PLAN = writtenPlan(SHOP, SKETCH);

/** The same works with 4 h of drying: for 26W49-F1-2 it would have to begin an hour before the plan does. */
const LONG_SHOP = dryingFor(4);
const LONG_PLAN = writtenPlan(LONG_SHOP, SKETCH);

describe("tasks that keep every rule give no finding", () => {
  test("with drying in time, and with drying that is short and says so", () => {
    expect(codes(PLAN)).toEqual([]);
    expect(codes(LONG_PLAN, LONG_SHOP)).toEqual([]);
    expect(dryings(LONG_PLAN).map(({ text }) => text)).toEqual([
      expect.stringContaining("only 3 h for 4 h at 65 °C, use what is dry"),
      expect.not.stringContaining("what is dry"),
    ]);
  });
});

describe("every set-up and every unloading is there, at its time", () => {
  test.each(["setUp", "unload"] as const)("for each build: %s", (kind) => {
    for (const gone of PLAN.tasks.filter((task) => task.kind === kind)) {
      expect(codes({ ...PLAN, tasks: PLAN.tasks.filter((task) => task !== gone) })).toEqual(["task-missing"]);
    }
  });
});

describe("drying that breaks a rule is found", () => {
  test("left out", () => {
    for (const gone of dryings(PLAN)) {
      expect(codes({ ...PLAN, tasks: PLAN.tasks.filter((task) => task !== gone) })).toEqual(["task-dry"]);
    }
  });

  test("twice for one build", () => {
    const [first, second] = dryings(PLAN);
    if (!first || !second) throw new Error("two dryings are expected");
    const plan = withDrying(PLAN, second, { alsoFor: [first.buildId] });
    expect(codes(plan)).toEqual(["task-dry"]);
  });

  test("in one task for both builds: early enough for the one, and so for the other", () => {
    const [first, second] = dryings(PLAN);
    if (!first || !second) throw new Error("two dryings are expected");
    const plan = withDrying(PLAN, first, { alsoFor: [second.buildId] });
    expect(codes({ ...plan, tasks: plan.tasks.filter((task) => task !== second) })).toEqual([]);
  });

  test("of another feedstock", () => {
    const [first] = dryings(PLAN);
    if (!first) throw new Error("a drying is expected");
    const plan = withDrying(PLAN, first, { buildId: "26W49-F1-1", alsoFor: [first.buildId] });
    expect(codes(plan)).toEqual(["task-dry"]);
  });

  test("a minute too late, and not when it is just in time", () => {
    expect(codes(begunAt("2026-11-30T07:00:00+01:00"))).toEqual([]);
    expect(codes(begunAt("2026-11-30T07:01:00+01:00"))).toEqual(["task-dry"]);
  });

  test("when nobody is there", () => {
    const [, second] = dryings(PLAN);
    if (!second) throw new Error("two dryings are expected");
    const at = (instant: string) => codes(sorted(withDrying(PLAN, second, { at: instant })));
    expect(at("2026-11-30T13:59:00+01:00")).toEqual([]);
    expect(at("2026-11-30T14:00:00+01:00")).toEqual(["task-dry"]);
  });

  test("short of time without a word, or begun later than it could be", () => {
    const [short] = dryings(LONG_PLAN);
    if (!short) throw new Error("a drying is expected");
    const silent = withDrying(LONG_PLAN, short, { text: "PETG grey: 4 h at 65 \u00b0C" });
    expect(codes(silent, LONG_SHOP)).toEqual(["task-dry"]);
    const later = withDrying(LONG_PLAN, short, { at: "2026-11-30T06:01:00+01:00" });
    expect(codes(sorted(later), LONG_SHOP)).toEqual(["task-dry"]);
  });
});

function codes(plan: PlanDocument, shop: Shop = SHOP): string[] {
  return checkPlan(shop, plan).map(({ code }) => code);
}

function dryings(plan: PlanDocument): OperatorTask[] {
  return plan.tasks.filter(({ kind }) => kind === "dry");
}

function begunAt(at: string): PlanDocument {
  const [first] = dryings(PLAN);
  if (!first) throw new Error("a drying is expected");
  return sorted(withDrying(PLAN, first, { at }));
}

function withDrying(plan: PlanDocument, changed: OperatorTask, change: Partial<OperatorTask>): PlanDocument {
  return { ...plan, tasks: plan.tasks.map((task) => (task === changed ? { ...task, ...change } : task)) };
}

/** All times of the sketch have the same offset, so they sort as text. */
function sorted(plan: PlanDocument): PlanDocument {
  return { ...plan, tasks: plan.tasks.toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)) };
}

function dryingFor(dryH: number): Shop {
  const shop = aCheckedShop();
  const feedstocks = shop.feedstocks.map((entry) => (entry.dryH > 0 ? { ...entry, dryH } : entry));
  return { ...shop, feedstocks };
}
