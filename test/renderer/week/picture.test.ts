import { describe, expect, test } from "vitest";
import { applyChanges } from "../../../core/shop/change-many.ts";
import type { Change } from "../../../core/shop/change.ts";
import { shopBuild } from "../../../core/plan/replan/with-earlier-plan.ts";
import { barLabel } from "../../../renderer/pages/week/bar-label.ts";
import { comparePlans } from "../../../renderer/pages/week/compare-plans.ts";
import { firstEndingAfter, hitAt } from "../../../renderer/pages/week/hit-test.ts";
import { groundsOf } from "../../../renderer/pages/week/shades.ts";
import { treeRows, treeStep } from "../../../renderer/pages/week/tree-rows.ts";
import {
  commitChanges,
  letGoChanges,
  pinChanges,
  plannedBefore,
  putBuild,
} from "../../../renderer/pages/week/week-edits.ts";
import { type WeekBuild, weekPicture } from "../../../renderer/pages/week/week-picture.ts";
import { aCheckedShop, WEEK_SKETCH, writtenPlan } from "../../fixtures/a-checked-week.ts";

const SHOP = aCheckedShop();
const PLAN = writtenPlan(SHOP, WEEK_SKETCH);
const PICTURE = weekPicture(SHOP, PLAN, 0);
const FIRST = build(PICTURE.rows[0]?.builds[0]);

function build(entry: WeekBuild | undefined): WeekBuild {
  if (!entry) throw new Error("no such build");
  return entry;
}

function after(changes: readonly Change[]): WeekBuild {
  const { shop } = applyChanges(SHOP, changes);
  return build(weekPicture(shop, PLAN, 0).byId.get(FIRST.build.id));
}

describe("the picture", () => {
  test("has every machine as a row and every build of the plan once", () => {
    expect(PICTURE.rows.map(({ machineId }) => machineId)).toEqual(["F1", "F2"]);
    expect([...PICTURE.byId.keys()].toSorted()).toEqual(PLAN.builds.map(({ id }) => id).toSorted());
  });

  test("shows exactly the orders late that the plan calls late, each at its last build", () => {
    const late = new Set(
      [...PICTURE.byId.values()].flatMap(({ dues, endMin }) =>
        dues.filter(({ dueMin }) => dueMin < endMin).map(({ orderId }) => orderId),
      ),
    );
    const planned = PLAN.orders.filter(({ lateMin, finishedAt }) => lateMin > 0 && finishedAt !== null);
    const made = new Set(PLAN.builds.flatMap(({ items }) => items.map(({ orderId }) => orderId)));
    expect([...late].toSorted()).toEqual(
      planned
        .map(({ orderId }) => orderId)
        .filter((id) => made.has(id))
        .toSorted(),
    );
    expect(late.size).toBeGreaterThan(0);
  });

  test("without a plan has what is committed", () => {
    expect([...weekPicture(SHOP, null, 0).byId.keys()]).toEqual(["C-1"]);
  });

  test("keeps a row for a machine that the shop no longer has", () => {
    const picture = weekPicture({ ...SHOP, machines: SHOP.machines.slice(1) }, PLAN, 0);
    expect(picture.rows.at(-1)).toMatchObject({ machineId: "F1", machine: null });
  });
});

describe("decisions about a build", () => {
  test("committed, it stands where it stood", () => {
    expect(after(commitChanges([FIRST]))).toMatchObject({
      build: { state: "committed" },
      setUpMin: FIRST.setUpMin,
      isMoved: false,
    });
  });

  test("committed up to a build, all before it on its machine keep their places, those behind do not", () => {
    const row = PICTURE.rows[0]?.builds ?? [];
    const second = build(row[1]);
    const { shop } = applyChanges(SHOP, commitChanges([...plannedBefore(PICTURE, second), second]));
    const states = weekPicture(shop, PLAN, 0).rows[0]?.builds.map((entry) => entry.build.state);
    expect(states).toEqual(row.map((_, at) => (at < 2 ? "committed" : "planned")));
    expect(row.length).toBeGreaterThan(2);
  });

  test("let go, it is as the plan had it", () => {
    const committed = after(commitChanges([FIRST]));
    expect(after([...commitChanges([FIRST]), ...letGoChanges(committed)])).toEqual(FIRST);
  });

  test("moved by hand, it stands elsewhere and is marked", () => {
    const moved = { ...shopBuild(FIRST.build, "committed"), machineId: "F2" };
    expect(after([putBuild(moved)])).toMatchObject({ row: 1, isMoved: true, build: { costLines: [] } });
  });

  test("pinned and freed, its orders are as before", () => {
    const pinned = applyChanges(SHOP, pinChanges(SHOP, FIRST, { machineId: "F1" })).shop;
    expect(build(weekPicture(pinned, PLAN, 0).byId.get(FIRST.build.id)).isPinned).toBe(true);
    const freed = applyChanges(pinned, pinChanges(pinned, FIRST, {})).shop;
    expect(build(weekPicture(freed, PLAN, 0).byId.get(FIRST.build.id)).isPinned).toBe(false);
  });
});

describe("what lies under the pointer", () => {
  const scale = { fromMin: FIRST.setUpMin, pxPerMin: 1 };
  const rows = { count: 2, heightPx: 50, scrollPx: 0 };
  const lengthPx = FIRST.endMin - FIRST.setUpMin;

  test("is the build from its start to its end", () => {
    expect(hitAt(PICTURE, scale, rows, { xPx: 0, yPx: 10 }).build).toBe(FIRST);
    expect(hitAt(PICTURE, scale, rows, { xPx: lengthPx - 1, yPx: 10 }).build).toBe(FIRST);
    expect(hitAt(PICTURE, scale, rows, { xPx: -4, yPx: 10 }).build).toBeNull();
  });

  test("is nothing below the last row", () => {
    expect(hitAt(PICTURE, scale, rows, { xPx: 0, yPx: 100 })).toMatchObject({ row: null, build: null });
  });

  test("is found by halving", () => {
    const builds = [{ endMin: 10 }, { endMin: 20 }, { endMin: 30 }];
    expect([9, 10, 19, 20, 30].map((at) => firstEndingAfter(builds, at))).toEqual([0, 1, 1, 2, 3]);
  });
});

const open = (): boolean => true;

describe("the list", () => {
  const all = treeRows(PICTURE, () => true);

  test("holds every machine and build; a machine that is shut hides its own", () => {
    expect(all).toHaveLength(2 + PLAN.builds.length);
    expect(treeRows(PICTURE, () => false)).toHaveLength(2);
  });

  test("goes about by the keys of a tree", () => {
    expect(treeStep(all, 0, "ArrowDown", open, 5)).toEqual({ to: 1 });
    expect(treeStep(all, 0, "ArrowUp", open, 5)).toEqual({ to: 0 });
    expect(treeStep(all, 0, "ArrowRight", open, 5)).toEqual({ to: 1 });
    expect(treeStep(all, 0, "ArrowRight", () => false, 5)).toEqual({ open: "F1" });
    expect(treeStep(all, 0, "ArrowLeft", open, 5)).toEqual({ shut: "F1" });
    expect(treeStep(all, 2, "ArrowLeft", open, 5)).toEqual({ to: 0 });
    expect(treeStep(all, 2, "End", open, 5)).toEqual({ to: all.length - 1 });
    expect(treeStep(all, 2, "PageDown", open, 500)).toEqual({ to: all.length - 1 });
    expect(treeStep(all, 2, "x", open, 5)).toBeNull();
  });
});

describe("a new plan beside the old one", () => {
  test("that is the same moves nothing", () => {
    expect(comparePlans(PLAN, structuredClone(PLAN))).toMatchObject({
      moved: [],
      added: [],
      dropped: [],
      sameBuilds: PLAN.builds.length,
      costDifference: 0,
    });
  });

  test("counts what moved, came and went, whatever the ids", () => {
    const [one, two, ...others] = structuredClone(PLAN.builds);
    if (!one || !two) throw new Error("too few builds");
    const moved = { ...one, id: "other", setUpStart: "2026-12-20T06:00:00+01:00" };
    const added = { ...two, id: "new", items: [{ orderId: "O-9", copies: 99 }] };
    const next = {
      ...PLAN,
      builds: [moved, added, ...others],
      cost: { ...PLAN.cost, total: PLAN.cost.total - 5 },
    };
    const found = comparePlans(PLAN, next);
    expect(found.moved.map(({ to }) => to.id)).toEqual(["other"]);
    expect(found.added.map(({ id }) => id)).toEqual(["new"]);
    expect(found.dropped.map(({ id }) => id)).toEqual([two.id]);
    expect(found.costDifference).toBeCloseTo(-5, 9);
  });
});

test("shifts shade a row, and a machine out of service is marked with its reason", () => {
  const from = "2026-12-01T06:00:00+01:00";
  const machines = SHOP.machines.map((machine) => ({
    ...machine,
    outOfService: [{ from, to: "2026-12-01T08:00:00+01:00", reason: "belt" }],
  }));
  const ground = groundsOf({ ...SHOP, machines }, PICTURE.planned).get("F1");
  expect(ground?.outOfService).toMatchObject([{ reason: "belt" }]);
  expect(ground?.outOfService.map(({ startMin, endMin }) => endMin - startMin)).toEqual([120]);
  expect(ground?.staffed.length).toBeGreaterThan(0);
});

test("a bar's name is cut to what fits and never tells half a word", () => {
  const entry = {
    ...FIRST.build,
    items: [
      { orderId: "O-17", copies: 4 },
      { orderId: "O-21", copies: 2 },
    ],
  };
  expect(barLabel(entry, 40)).toBe("O-17 × 4, O-21 × 2");
  expect(barLabel(entry, 8)).toBe("O-17 +1");
  expect(barLabel(entry, 3)).toBe("");
  expect(barLabel({ ...entry, state: "running" }, 3)).toBe("▶");
});
