import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { PartPlan } from "../../assets/demo/part-kinds.ts";
import { demoShop } from "../../assets/demo/works.ts";
import { makeBuildCosting } from "../../core/cost/build-cost.ts";
import { makeRouteFinder } from "../../core/cost/rank-ways.ts";
import { runMin, slowestLayerS } from "../../core/estimate/print-time.ts";
import type { Route, RouteAnswer, RouteReasonCode } from "../../core/estimate/route.ts";
import { findStandings } from "../../core/estimate/standings.ts";
import { checkShop } from "../../core/shop/check-shop.ts";
import { standsFor } from "../../core/shop/direction.ts";
import { minuteOf } from "../../core/shop/instants.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Part } from "../../core/shop/part.ts";
import { shopSchema } from "../../core/shop/shop.ts";

const file = readFileSync(new URL("../../assets/demo.shop.json", import.meta.url), "utf8");
const shop = shopSchema.parse(JSON.parse(file));
const findRoutes = makeRouteFinder(shop, makeBuildCosting(shop));

function found<T extends { id: string }>(list: readonly T[], id: string): T {
  const item = list.find((one) => one.id === id);
  if (!item) throw new RangeError(`the demo shop has no ${id}`);
  return item;
}

/** Measuring forty meshes takes a while, and test/assets does it for some of them: here the file's own measures are taken. */
function withKnownBody(plan: PartPlan): Part {
  return { ...plan, geometry: found(shop.parts, plan.id).geometry };
}

const known = new Map<string, RouteAnswer[]>();

function answersOf(partId: string, machineId: string): RouteAnswer[] {
  const key = `${partId} on ${machineId}`;
  const answers =
    known.get(key) ?? findRoutes(found(shop.parts, partId), found(shop.machines, machineId), shop.feedstocks);
  known.set(key, answers);
  return answers;
}

function routesOf(partId: string, machines: readonly Machine[] = shop.machines): Route[] {
  return machines.flatMap(({ id }) =>
    answersOf(partId, id).flatMap((answer) => (answer.status === "route" ? [answer.route] : [])),
  );
}

function refusalCodes(partId: string, machineId: string): Set<RouteReasonCode>[] {
  return answersOf(partId, machineId).map((answer) =>
    answer.status === "refused" ? new Set(answer.reasons.map(({ code }) => code)) : new Set(),
  );
}

function sizes(machines: readonly Machine[]): Set<string> {
  return new Set(machines.map(({ envelopeMm }) => JSON.stringify(envelopeMm)));
}

const filament = shop.machines.filter(({ process }) => process === "filament");
const pellet = shop.machines.filter(({ process }) => process === "pellet");

describe("the demo shop's file", () => {
  test("is what its script writes", () => {
    expect(JSON.parse(file)).toEqual(JSON.parse(JSON.stringify(demoShop(withKnownBody))));
  });

  test("has the machines, calendars, feedstocks, parts and lines it promises", () => {
    expect(filament).toHaveLength(9);
    expect(pellet).toHaveLength(3);
    expect(sizes(filament).size).toBe(3);
    expect(sizes(pellet).size).toBe(2);
    expect(shop.calendars).toHaveLength(2);
    expect(shop.feedstocks).toHaveLength(12);
    expect(new Set(shop.feedstocks.map(({ form }) => form)).size).toBe(2);
    expect(shop.parts).toHaveLength(40);
    expect(shop.orders).toHaveLength(120);
  });

  test("has no fault that its check finds, and one warning: machines may run with nobody there", () => {
    expect(checkShop(shop).map(({ code }) => code)).toEqual(["unattended"]);
  });

  test("marks every name as invented", () => {
    const names = [
      shop.name,
      ...shop.orders.map(({ customer }) => customer),
      ...shop.feedstocks.map(({ name }) => name),
    ];
    for (const name of names) expect(name).toContain("(invented)");
  });

  test("orders every part, and every line can be made or bought", () => {
    for (const part of shop.parts) {
      expect(
        shop.orders.some(({ partId }) => partId === part.id),
        part.id,
      ).toBe(true);
      expect(routesOf(part.id).length > 0 || part.buyOut !== undefined, part.id).toBe(true);
    }
  });

  test("shows pins, buying out, a closure, a day out of service, and finished, running and committed builds", () => {
    expect(shop.orders.filter(({ pinned }) => pinned?.machineId)).not.toHaveLength(0);
    expect(shop.orders.filter(({ pinned }) => pinned?.feedstockId)).not.toHaveLength(0);
    expect(shop.parts.filter(({ buyOut }) => buyOut)).not.toHaveLength(0);
    expect(shop.calendars.some(({ closures }) => closures.some(({ from }) => from === "2026-12-05"))).toBe(
      true,
    );
    expect(shop.machines.filter(({ outOfService }) => outOfService.length > 0)).toHaveLength(1);
    expect(new Set(shop.builds.map(({ state }) => state))).toEqual(new Set(["done", "running", "committed"]));
  });
});

describe("a body of the demo shop", () => {
  const bodies = shop.parts.map((part): [string, Part] => [part.id, part]);

  test.each(bodies)("%s is no larger than its box and has at least the surface of a ball", (_id, part) => {
    const { volumeMm3, areaMm2, boxMm } = part.geometry.measures;
    expect(volumeMm3).toBeLessThanOrEqual(boxMm.x * boxMm.y * boxMm.z * (1 + 1e-9));
    expect(areaMm2).toBeGreaterThanOrEqual((36 * Math.PI * volumeMm3 ** 2) ** (1 / 3));
    expect(part.smallestFeatureMm).toBeLessThanOrEqual(Math.min(boxMm.x, boxMm.y, boxMm.z));
  });

  test.each(bodies)("%s was measured in every direction it may be built in", (_id, part) => {
    const { standings = [] } = part.geometry.measures;
    expect(part.geometry.kind).toBe("mesh");
    const wanted = ["x", "-x", "y", "-y", "z", "-z"].filter((up) =>
      part.orientations?.some((name) => standsFor(name, up)),
    );
    expect(standings.map(({ up }) => up).toSorted()).toEqual(wanted.toSorted());
  });
});

describe("the demo shop shows", () => {
  test("a part that fits pellet machines only", () => {
    expect(routesOf("boat-mould-half", filament)).toEqual([]);
    for (const codes of refusalCodes("boat-mould-half", "F1")) expect(codes).toContain("too-large");
    expect(new Set(routesOf("boat-mould-half").map(({ machineId }) => machineId))).toEqual(new Set(["L1"]));
  });

  test("a part too fine for every pellet machine", () => {
    expect(routesOf("clip", filament)).not.toHaveLength(0);
    for (const { id } of pellet) {
      for (const codes of refusalCodes("clip", id)) expect(codes).toContain("feature-too-fine");
    }
  });

  test("a part that pellets make cheaper only from some quantity, its tool paths being new", () => {
    const costing = makeBuildCosting(shop);
    const part = found(shop.parts, "storage-bin");
    expect(part.toolPathsReady).toEqual(["filament"]);
    const cheapest = (machines: readonly Machine[], quantity: number) =>
      Math.min(...routesOf(part.id, machines).map((route) => costOf(costing, route, quantity)));
    const onPellets = (quantity: number) => cheapest(pellet, quantity) + costing.engineeringCost("pellet");
    expect(onPellets(2)).toBeGreaterThan(cheapest(filament, 2));
    expect(onPellets(10)).toBeLessThan(cheapest(filament, 10));
    expect(shop.orders.filter(({ partId }) => partId === part.id).map(({ quantity }) => quantity)).toEqual([
      10, 2,
    ]);
  });

  test("a part of which several must be printed together to keep the layer time", () => {
    const routes = routesOf("bollard-cap");
    expect(routes).not.toHaveLength(0);
    for (const route of routes) {
      expect(route.copiesMin).toBeGreaterThan(1);
      const machine = found(shop.machines, route.machineId);
      const quickestS = Math.min(...route.layerGroups.map(({ workS }) => workS)) + route.layerChangeS;
      expect(route.shortestLayerS - quickestS).toBeGreaterThan(machine.maxWaitPerLayerS ?? Infinity);
    }
  });

  test("a part of which the longest layer time allows fewer than the platform", () => {
    const machine = found(shop.machines, "G1");
    const part = found(shop.parts, "duct-transition");
    const routes = routesOf(part.id, [machine]);
    expect(routes).not.toHaveLength(0);
    const { standings } = findStandings(part, machine);
    for (const route of routes) {
      const standing = standings.find(({ up }) => up === route.orientation);
      expect(route.copiesMax).toBeLessThan(standing?.copies ?? 0);
      expect(slowestLayerS({ route, copies: route.copiesMax + 1 })).toBeGreaterThan(route.longestLayerS);
    }
  });

  test("a hard promise that there is time to keep", () => {
    const promised = shop.orders.filter(({ allowLate }) => !allowLate);
    expect(promised.length).toBeGreaterThanOrEqual(2);
    for (const { partId, dueAt, releaseAt, quantity } of promised) {
      const openMin = minuteOf(dueAt, shop.timeZone) - minuteOf(releaseAt, shop.timeZone);
      const quickest = Math.min(
        ...routesOf(partId).map(
          (route) => Math.ceil(quantity / route.copiesMax) * runMin([{ route, copies: 1 }]),
        ),
      );
      expect(quickest).toBeLessThan(openMin);
    }
  });

  test("a print that lasts into the night on machines approved for it, longer than any shift", () => {
    const [route] = routesOf("gripper-finger", [found(shop.machines, "C3")]);
    if (!route) throw new Error("no route");
    expect(found(shop.machines, "C3").unattended).toBe(true);
    expect(runMin([{ route, copies: 20 }])).toBeGreaterThan(9 * 60);
    for (const machine of pellet) expect(machine.unattended).toBe(false);
  });

  test("a flame class that leaves one grade in each form", () => {
    expect(new Set(routesOf("busbar-guard").map(({ feedstockId }) => feedstockId))).toEqual(
      new Set(["absfr-f", "absfr-p"]),
    );
  });

  test("heat deflection and strength that leave the hot grades", () => {
    expect(new Set(routesOf("lamp-socket").map(({ feedstockId }) => feedstockId))).toEqual(
      new Set(["pc-f", "pa6cf-f"]),
    );
  });

  test("builds whose times hold what they make", () => {
    for (const build of shop.builds) {
      const machine = found(shop.machines, build.machineId);
      const item = build.items[0];
      const order = found(shop.orders, item?.orderId ?? "");
      const route = routesOf(order.partId, [machine]).find(
        ({ nozzleId, feedstockId }) => nozzleId === build.nozzleId && feedstockId === build.feedstockId,
      );
      if (!route || !item) throw new Error(`no route for ${build.id}`);
      const printMin = minuteOf(build.printEnd, shop.timeZone) - minuteOf(build.printStart, shop.timeZone);
      const estimatedMin = runMin([{ route, copies: item.copies }]);
      expect(Math.abs(printMin / estimatedMin - 1), build.id).toBeLessThan(0.02);
      expect([build.layerHeightMm, build.beadWidthMm]).toEqual([route.layerHeightMm, route.beadWidthMm]);
    }
  });
});

/** Cost of so many copies in builds of up to the most that fit. */
function costOf(costing: ReturnType<typeof makeBuildCosting>, route: Route, quantity: number): number {
  const machine = found(shop.machines, route.machineId);
  let total = 0;
  for (let left = quantity; left > 0; left -= route.copiesMax) {
    const copies = Math.min(left, route.copiesMax);
    if (copies < route.copiesMin) return Infinity;
    total += costing.amounts([{ route, copies }], machine).total;
  }
  return total;
}
