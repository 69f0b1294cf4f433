import { expect, test } from "vitest";
import { simulate } from "../../../core/quote/dates/simulate.ts";
import { simulationTask } from "../../../core/quote/dates/simulation-task.ts";
import { insertLines } from "../../../core/quote/insert-order.ts";
import { planToDate } from "../../../core/quote/plan-to-date.ts";
import { aLine, aQuoteDesk, aRunningShop } from "../../fixtures/a-quote-desk.ts";

const { plan, committed, made } = await aRunningShop();
const desk = await aQuoteDesk(committed, plan);
const CONTROL = { runs: 200, seed: 3 };
const byBuild = (builds: readonly { readonly id: string }[]) =>
  builds.toSorted((a, b) => (a.id < b.id ? -1 : 1));

test.each([1, 6, 40])(
  "%s copies: the quick way gives the builds, the copies left out and the dates of the checked document",
  (quantity) => {
    const line = aLine(desk, made.shop.parts[0]!.id, quantity, 4);
    const whole = insertLines(desk, [line]);
    const quick = planToDate(insertLines(desk, [line], { withoutDocument: true }));
    expect(byBuild(quick.builds)).toEqual(byBuild(whole.plan!.builds));
    expect(quick.feedstockNeeds).toEqual(whole.plan!.feedstockNeeds);
    const slowTask = simulationTask(whole.shop, whole.plan!);
    const quickTask = simulationTask(whole.shop, quick);
    expect(quickTask).toEqual(slowTask);
    const all = simulate(slowTask, CONTROL);
    const own = simulate(quickTask, { ...CONTROL, orderIds: [line.id] });
    const at = all.orders.findIndex(({ orderId }) => orderId === line.id);
    expect(own.finishedMin).toEqual([all.finishedMin[at]]);
  },
);

test("orders asked for alone finish as they do among all, one by one and together", () => {
  const task = simulationTask(desk.shop, desk.standingPlan);
  const all = simulate(task, CONTROL);
  for (const { orderId } of all.orders) {
    const [own] = simulate(task, { ...CONTROL, runs: 20, orderIds: [orderId] }).finishedMin;
    const at = all.orders.findIndex((order) => order.orderId === orderId);
    expect(own, orderId).toEqual(all.finishedMin[at]!.subarray(0, 20));
  }
  const ids = all.orders.slice(0, 3).map(({ orderId }) => orderId);
  expect(simulate(task, { ...CONTROL, orderIds: ids }).finishedMin).toEqual(all.finishedMin.slice(0, 3));
});
