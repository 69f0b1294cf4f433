import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../../core/plan/check/check-plan.ts";
import type { PlanDocument } from "../../../../core/plan/plan-document.ts";
import { replanText } from "../../../../core/report/replan-words.ts";
import { displayOf } from "../../../../core/report/display.ts";
import type { Shop } from "../../../../core/shop/shop.ts";
import { makeShop } from "../../../bench/make-shop.ts";
import { planWithSteps } from "../../../fixtures/plan-with-steps.ts";

const given = makeShop("S", { seed: 3 });
const first = await planWithSteps(given, 60);

/** The works a moment later: its plan stands, one order has gone, and moving a build costs so much. */
function later(moveCostPerBuild: number): Shop {
  const gone = first.builds[0]?.items[0]?.orderId;
  const builds = first.builds.map(
    ({ changeoverMin: _changeoverMin, massKg: _massKg, costLines: _costLines, ...build }) => build,
  );
  return {
    ...given.shop,
    costing: { ...given.shop.costing, moveCostPerBuild },
    orders: given.shop.orders.filter(({ id }) => id !== gone),
    builds: builds.filter(({ items }) => items.every(({ orderId }) => orderId !== gone)),
  };
}

const dearShop = later(500);
const dear = await planWithSteps({ shop: dearShop, request: given.request }, 60, 2);
const freeShop = later(0);
const free = await planWithSteps({ shop: freeShop, request: given.request }, 60, 2);

describe("a week planned again", () => {
  test("leaves nearly all builds where they were when moving them is dear", () => {
    expect(dear.replan?.earlierBuilds).toBe(dearShop.builds.length);
    expect(dear.replan?.keptBuilds).toBeGreaterThan(0.9 * dearShop.builds.length);
    expect(free.replan?.keptBuilds).toBeLessThan(dear.replan?.keptBuilds ?? 0);
  });

  test("costs nothing more for moved builds where moving is free", () => {
    expect(free.replan?.movedIds.length).toBeGreaterThan(0);
    expect(free.cost.byKind.moving).toBe(0);
  });

  test("pays for every build that moved, in a kind of cost of its own", () => {
    const moved = dear.replan?.movedIds.length ?? NaN;
    expect(dear.cost.byKind.moving).toBeCloseTo(500 * moved, 1);
  });

  test("leaves the id of a build that stays as it was", () => {
    const earlier = new Set(dearShop.builds.map(({ id }) => id));
    const same = dear.builds.filter(({ id }) => earlier.has(id));
    expect(same.length).toBe(dear.replan?.keptBuilds);
  });

  test("is never dearer than leaving everything in place, and its bound is below both", () => {
    for (const plan of [dear, free]) {
      const stayCost = plan.replan?.stayCost ?? Infinity;
      expect(plan.cost.total).toBeLessThanOrEqual(stayCost + 0.01);
      expect(plan.bound.value).toBeLessThanOrEqual(plan.cost.total);
    }
  });

  test("says how many were moved and what that saved", () => {
    const kept = free.replan?.keptBuilds;
    const moved = free.replan?.movedIds.length;
    const text = replanText(free, displayOf(freeShop, free.plannedFrom));
    expect(text).toContain(`Of ${freeShop.builds.length} builds planned before, ${kept} stay`);
    expect(text).toContain(`${moved} are moved or dropped, at no cost. Leaving all of them would cost`);
  });

  test("says nothing of it where there was no earlier plan", () => {
    expect(first.replan).toBeUndefined();
    expect(replanText(first, displayOf(given.shop))).toBeNull();
  });
});

function codes(plan: PlanDocument): string[] {
  return [...new Set(checkPlan(dearShop, plan).map(({ code }) => code))];
}

describe("the check of a plan made again", () => {
  const replan = dear.replan;
  if (!replan) throw new Error("the plan says nothing of the earlier one");

  test("passes the plan", () => {
    expect(codes(dear)).toEqual([]);
  });

  test.each([
    ["says that one more stays", { ...replan, keptBuilds: replan.keptBuilds + 1 }],
    ["says that another one moved", { ...replan, movedIds: [...replan.movedIds, "none"] }],
    ["says that moving costs less", { ...replan, costPerBuild: 1 }],
    ["could have left everything in place for less", { ...replan, stayCost: dear.cost.total - 1 }],
  ])("finds one that %s", (_what, wrong) => {
    expect(codes({ ...dear, replan: wrong })).toEqual(["replan"]);
  });

  test("finds one that says nothing of the earlier plan", () => {
    const { replan: _replan, ...silent } = dear;
    expect(codes(silent)).toEqual(["replan"]);
  });

  test("finds a build that gave up its id", () => {
    const builds = dear.builds.map((build) =>
      build.id === dearShop.builds[0]?.id ? { ...build, id: "another" } : build,
    );
    expect(codes({ ...dear, builds })).toContain("replan");
  });
});
