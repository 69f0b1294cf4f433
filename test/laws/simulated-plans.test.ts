import { afterEach, describe, expect, test, vi } from "vitest";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import { machineTime } from "../../core/plan/time/machine-time.ts";
import { workingTime } from "../../core/plan/time/working-time.ts";
import { USUAL_CHANCES } from "../../core/quote/dates/chances.ts";
import { effectOnOthers } from "../../core/quote/dates/effect-on-others.ts";
import { OperatorRoom } from "../../core/quote/dates/operator-room.ts";
import { simulate } from "../../core/quote/dates/simulate.ts";
import { simulationTask } from "../../core/quote/dates/simulation-task.ts";
import { minuteOf } from "../../core/shop/instants.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { aCheckedShop, WEEK_SKETCH, writtenPlan } from "../fixtures/a-checked-week.ts";
import { CALM } from "../fixtures/a-dated-plan.ts";
import { aHandPlan } from "../fixtures/a-hand-plan.ts";

/** The same works in which nothing fails. */
function withoutFailures(shop: Shop): Shop {
  return { ...shop, machines: shop.machines.map((machine) => ({ ...machine, failuresPer1000H: 0 })) };
}

/** The same plan with all its feedstock there. */
function withFeedstock(plan: PlanDocument): PlanDocument {
  return { ...plan, feedstockNeeds: plan.feedstockNeeds.map((need) => ({ ...need, tooEarly: [] })) };
}

afterEach(() => {
  vi.restoreAllMocks();
});

describe("without chance and with all feedstock there", () => {
  const hand = (["S", "M", "L"] as const).map((size) => ({ name: size, ...aHandPlan(size, 3) }));
  const checkedShop = aCheckedShop();
  const week = { name: "checked week", shop: checkedShop, plan: writtenPlan(checkedShop, WEEK_SKETCH) };

  test.each([...hand, week])(
    "no order of the $name plan is later than in it, and none is lost",
    ({ shop, plan }) => {
      const task = simulationTask(withoutFailures(shop), withFeedstock(plan), CALM);
      const dates = simulate(task, { runs: 1, seed: 1 });
      expect([dates.stopsPerRun, dates.failuresPerRun]).toEqual([0, 0]);
      let told = 0;
      for (const { orderId, finishedAt } of plan.orders) {
        const index = dates.orders.findIndex((order) => order.orderId === orderId);
        if (finishedAt === null || dates.orders[index]?.missingCopies !== 0) continue;
        told += 1;
        const plannedMin = minuteOf(finishedAt, shop.timeZone) - dates.startMin;
        expect(dates.finishedMin[index]?.[0], orderId).toBeLessThanOrEqual(plannedMin + 1e-6);
      }
      expect(told).toBeGreaterThan(5);
    },
  );
});

describe("with chance", () => {
  const { shop, plan } = aHandPlan("M", 2);
  const task = simulationTask(shop, plan, { ...USUAL_CHANCES, buildVariation: 0.2 });

  test("no more are at work at once than there are operators, and nobody is at work where nobody is there", () => {
    const works: { calendar: number; startMin: number; endMin: number }[] = [];
    let calendar = -1;
    vi.spyOn(OperatorRoom.prototype, "open").mockImplementation(function open(this: OperatorRoom, index) {
      calendar = index;
      return realOpen.call(this, index);
    });
    vi.spyOn(OperatorRoom.prototype, "take").mockImplementation(function take(
      this: OperatorRoom,
      startMin,
      endMin,
      early,
    ) {
      works.push({ calendar, startMin, endMin });
      realTake.call(this, startMin, endMin, early);
    });
    for (let seed = 1; seed <= 20; seed++) {
      works.length = 0;
      simulate(task, { runs: 1, seed });
      expect(works.length).toBeGreaterThan(2 * task.builds.ids.length - 1);
      for (const work of works) {
        const own = works.filter((other) => other.calendar === work.calendar);
        const atOnce = own.filter(
          ({ startMin, endMin }) => startMin <= work.startMin + 1e-6 && endMin > work.startMin + 1e-6,
        );
        expect(atOnce.length).toBeLessThanOrEqual(operatorsAt(work.calendar, work.startMin));
      }
    }
  });

  test("a longer spread and more failures make no order earlier on average", () => {
    const without = simulate(simulationTask(withoutFailures(shop), plan, CALM), { runs: 100, seed: 1 });
    const effects = effectOnOthers(simulate(task, { runs: 100, seed: 1 }), without);
    const earlier = effects.filter(({ laterMin, errorMin }) => laterMin < -4 * errorMin - 30);
    expect(effects.length).toBeGreaterThan(100);
    expect(earlier).toEqual([]);
  });

  const realOpen = OperatorRoom.prototype.open;
  const realTake = OperatorRoom.prototype.take;

  /** Operators of the task's calendar by the shop document; 0 where nobody is there. */
  function operatorsAt(calendar: number, atMin: number): number {
    const machineId = task.machines.ids[task.calendars.machineFrom[calendar] ?? -1];
    const machine = shop.machines.find(({ id }) => id === machineId);
    const found = shop.calendars.find(({ id }) => id === machine?.calendarId);
    if (!found) throw new Error("no calendar");
    const fromMin = task.startMin - 3 * 1440;
    const working = known.get(found.id) ?? workingTime(found, shop.timeZone, fromMin, fromMin + 100 * 1440);
    known.set(found.id, working);
    const epochMin = task.startMin + atMin + 1e-6;
    return (
      working.operators.find(({ startMin, endMin }) => startMin <= epochMin && epochMin < endMin)
        ?.operators ?? 0
    );
  }

  const known = new Map<string, ReturnType<typeof workingTime>>();

  test("and machines have room for what they do: windows of the task are those of the planner", () => {
    const [machine] = shop.machines;
    const calendar = shop.calendars.find(({ id }) => id === machine?.calendarId);
    if (!machine || !calendar) throw new Error("no machine");
    const working = workingTime(calendar, shop.timeZone, task.startMin, task.startMin + 7 * 1440);
    const { windows } = machineTime({ working, blocks: [], freeFromMin: task.startMin, unattendedMaxMin: 0 });
    const place = task.machines.ids.indexOf(machine.id);
    const from = task.machines.windowFrom[place] ?? 0;
    const own = [...task.machines.windowStartMin.subarray(from, task.machines.windowFrom[place + 1])];
    for (const { startMin } of windows.slice(1)) expect(own).toContain(startMin - task.startMin);
  });
});
