import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { minuteOf } from "../../core/shop/instants.ts";
import { shopSchema } from "../../core/shop/shop.ts";
import { planWithSteps } from "../fixtures/plan-with-steps.ts";

const file = readFileSync(new URL("../../assets/demo.shop.json", import.meta.url), "utf8");
const shop = shopSchema.parse(JSON.parse(file));
const minute = (instant: string): number => minuteOf(instant, shop.timeZone);
const request = { fromMin: minute("2026-11-30T00:00"), days: 7 };
const plan = await planWithSteps({ shop, request }, 400);
const planned = plan.builds.filter(({ state }) => state === "planned");
const partOf = new Map(shop.orders.map(({ id, partId }) => [id, partId]));
const madeOn = (partId: string): Set<string> =>
  new Set(
    planned
      .filter(({ items }) => items.some(({ orderId }) => partOf.get(orderId) === partId))
      .map(({ machineId }) => machineId),
  );

describe("the planned week of the demo shop", () => {
  test("plans every copy, most lines in time", () => {
    expect(plan.unplanned).toEqual([]);
    const late = plan.orders.filter(({ lateMin }) => lateMin > 0);
    expect(late.length).toBeLessThan(shop.orders.length / 10);
  });

  test("has the line late that is asked for at too short notice on one machine, and says why", () => {
    const hopeless = shop.orders.find(({ partId, pinned }) => partId === "gripper-finger" && pinned);
    const outcome = plan.orders.find(({ orderId }) => orderId === hopeless?.id);
    expect(outcome?.lateMin).toBeGreaterThan(0);
    expect(outcome?.why).not.toEqual([]);
  });

  test("keeps the promises that must hold", () => {
    for (const { id } of shop.orders.filter(({ allowLate }) => !allowLate)) {
      expect(plan.orders.find(({ orderId }) => orderId === id)?.lateMin, id).toBe(0);
    }
  });

  test("prints into the night only where that was approved", () => {
    const overnight = planned.filter(
      ({ printStart, printEnd }) => printStart.slice(0, 10) !== printEnd.slice(0, 10),
    );
    const approved = new Set(shop.machines.filter(({ unattended }) => unattended).map(({ id }) => id));
    expect(overnight.length).toBeGreaterThan(0);
    for (const build of overnight) expect(approved, build.id).toContain(build.machineId);
  });

  test("makes the boat moulds on the pellet machine that takes them, the clips on filament machines", () => {
    expect(madeOn("boat-mould-half")).toEqual(new Set(["L1"]));
    for (const id of madeOn("clip")) expect(id).toMatch(/^[BCF]/);
  });

  test("makes most storage bins on pellets, being enough to pay for their tool paths", () => {
    const bins = planned.flatMap(({ machineId, items }) =>
      items
        .filter(({ orderId }) => partOf.get(orderId) === "storage-bin")
        .map(({ copies }) => ({ machineId, copies })),
    );
    const copiesOn = (pellet: boolean) =>
      bins
        .filter(({ machineId }) => machineId.startsWith("G") === pellet)
        .reduce((sum, { copies }) => sum + copies, 0);
    expect(copiesOn(true)).toBeGreaterThan(2 * copiesOn(false));
  });

  test("makes bollard caps several at a time", () => {
    for (const { items } of planned) {
      for (const { orderId, copies } of items) {
        if (partOf.get(orderId) === "bollard-cap") expect(copies).toBeGreaterThan(1);
      }
    }
    expect(madeOn("bollard-cap").size).toBeGreaterThan(0);
  });

  test("has something made elsewhere where that is cheaper", () => {
    expect(plan.boughtOut.map(({ orderId }) => partOf.get(orderId))).toContain("manifold");
  });

  test("costs less than either hand rule, and not much more than its bound", () => {
    for (const { name, cost } of plan.handRules) expect(plan.cost.total, name).toBeLessThan(0.9 * cost);
    expect(plan.bound.gapPct).toBeGreaterThan(0);
    expect(plan.bound.gapPct).toBeLessThan(15);
  });
});
