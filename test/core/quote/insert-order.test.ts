import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../core/plan/check/check-plan.ts";
import { firstAnswer, refinedAnswer } from "../../../core/quote/first-answer.ts";
import { insertLines } from "../../../core/quote/insert-order.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import { MONEY_TOLERANCE } from "../../../core/units/tolerance.ts";
import { aLine, aQuoteDesk, aRunningShop } from "../../fixtures/a-quote-desk.ts";

const { plan, committed, made } = await aRunningShop();
const before = JSON.stringify(committed.shop);
const desk = await aQuoteDesk(committed, plan);
const deskBefore = JSON.stringify(desk.standing);
const PART = made.shop.parts[0]!.id;

describe("the desk as it is opened", () => {
  test("has every planned build to the minute where the plan has it", () => {
    const place = (build: (typeof plan.builds)[number]): string =>
      JSON.stringify([build.machineId, build.setUpStart, build.printStart, build.printEnd, build.unloadEnd]);
    expect(desk.standingPlan.builds.map(place).toSorted()).toEqual(plan.builds.map(place).toSorted());
  });

  test("has a plan that passes every check, also where it had to make one", async () => {
    expect(checkPlan(desk.shop, desk.standingPlan)).toEqual([]);
    const alone = await aQuoteDesk(made);
    expect(checkPlan(alone.shop, alone.standingPlan)).toEqual([]);
    expect(alone.standing.unplaced).toEqual([]);
  });
});

describe("a line put into the plan", () => {
  const inserted = insertLines(desk, [aLine(desk, PART, 6, 4)]);

  test("makes a plan that passes every check and holds all its copies", () => {
    expect(checkPlan(inserted.shop, inserted.plan!)).toEqual([]);
    const copies = inserted.plan!.builds.flatMap(({ items }) =>
      items.filter(({ orderId }) => orderId === "Q-1"),
    );
    expect(copies.reduce((sum, item) => sum + item.copies, 0)).toBe(6);
  });

  test("is finished when the plan says", () => {
    const order = inserted.plan!.orders.find(({ orderId }) => orderId === "Q-1");
    expect(minuteOf(order!.finishedAt!, made.shop.timeZone)).toBe(inserted.lines[0]!.finishedAtMin);
  });

  test("costs what the two plans differ by, its own lateness aside", () => {
    const late = inserted.plan!.orders.find(({ orderId }) => orderId === "Q-1")!.lateCost;
    expect(inserted.schedule.cost - desk.standing.cost - late).toBeCloseTo(inserted.extraCost, 1);
  });

  test("leaves committed builds as they are, and the shop and the desk too", () => {
    for (const build of committed.shop.builds) {
      const kept = inserted.plan!.builds.find(({ id }) => id === build.id);
      expect(kept).toMatchObject(build);
    }
    expect(JSON.stringify(committed.shop)).toBe(before);
    expect(JSON.stringify(desk.standing)).toBe(deskBefore);
  });

  test("names exactly the other orders whose finish in the plan has changed", () => {
    const finish = new Map(desk.standingPlan.orders.map(({ orderId, finishedAt }) => [orderId, finishedAt]));
    const changed = inserted.plan!.orders.filter(
      ({ orderId, finishedAt }) => orderId !== "Q-1" && finish.get(orderId) !== finishedAt,
    );
    const named = inserted.others.filter(({ wasMin, isMin }) => wasMin !== isMin);
    expect(named.map(({ orderId }) => orderId).toSorted()).toEqual(
      changed.map(({ orderId }) => orderId).toSorted(),
    );
  });

  test("comes out the same when it is asked again from a desk opened anew", async () => {
    const again = insertLines(await aQuoteDesk(committed, plan), [aLine(desk, PART, 6, 4)]);
    expect(again.plan).toEqual(inserted.plan);
  });

  test("pinned to a machine is made on that machine alone", () => {
    const machineId = inserted.plan!.builds.find(({ items }) => items[0]?.orderId === "Q-1")!.machineId;
    const { plan: pinned } = insertLines(desk, [{ ...aLine(desk, PART, 6, 9), machineId }]);
    const machines = pinned!.builds.filter(({ items }) => items.some(({ orderId }) => orderId === "Q-1"));
    expect([...new Set(machines.map((build) => build.machineId))]).toEqual([machineId]);
  });
});

test("two lines are put in together, each with its own date", () => {
  const second = { ...aLine(desk, made.shop.parts[1]!.id, 3, null), id: "Q-2" };
  const both = insertLines(desk, [aLine(desk, PART, 6, 6), second]);
  expect(checkPlan(both.shop, both.plan!)).toEqual([]);
  expect(both.lines.map(({ finishedAtMin }) => typeof finishedAtMin)).toEqual(["number", "number"]);
});

test("price and added cost never fall when the date is earlier, at first and refined", () => {
  for (const part of made.shop.parts.slice(0, 5)) {
    for (const answer of [firstAnswer, refinedAnswer]) {
      let [cost, price] = [-Infinity, -Infinity];
      for (const day of [null, 21, 14, 10, 7, 5, 4, 3, 2, 1, 0.2]) {
        const { extraCost, total } = answer(desk, [aLine(desk, part.id, 4, day)]);
        expect(extraCost, `${part.id} by day ${day}`).toBeGreaterThanOrEqual(cost - MONEY_TOLERANCE);
        expect(total!.total, `${part.id} by day ${day}`).toBeGreaterThanOrEqual(price);
        [cost, price] = [extraCost, total!.total];
      }
    }
  }
});
