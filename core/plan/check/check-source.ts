import { makeBuildCosting } from "../../cost/build-cost.ts";
import type { BuildCosting } from "../../cost/build-cost.ts";
import type { OrderCopies } from "../../cost/build-lines.ts";
import { findEveryRoute } from "../../estimate/find-routes.ts";
import type { Route, RouteAnswer } from "../../estimate/route.ts";
import type { Feedstock } from "../../shop/feedstock.ts";
import { whereOf } from "../../shop/finding.ts";
import type { Finding } from "../../shop/finding.ts";
import { minuteOf } from "../../shop/instants.ts";
import type { Machine } from "../../shop/machine.ts";
import type { Order } from "../../shop/order.ts";
import type { Part } from "../../shop/part.ts";
import type { Shop } from "../../shop/shop.ts";
import { MIN_PER_DAY } from "../../units/conversions.ts";
import { remembered } from "../../units/remembered.ts";
import { groupAlike } from "../compile/machine-classes.ts";
import type { PlanDocument, PlannedBuild } from "../plan-document.ts";
import type { WorkingTime } from "../plan-problem.ts";
import { workingTime } from "../time/working-time.ts";

/** One build of the plan whose ids all exist, with its times in epoch minutes. */
export interface CheckedBuild {
  readonly build: PlannedBuild;
  readonly machine: Machine;
  readonly feedstock: Feedstock;
  readonly setUpStartMin: number;
  readonly printStartMin: number;
  readonly printEndMin: number;
  readonly unloadEndMin: number;
  /** start of unloading */
  readonly unloadStartMin: number;
  /** its items with their routes; null where one of them has no feasible route so */
  readonly items: readonly OrderCopies[] | null;
}

/** A plan and its shop opened for checking: nothing here comes from the search. */
export interface CheckSource {
  readonly shop: Shop;
  readonly plan: PlanDocument;
  readonly startMin: number;
  /** planned builds by set-up start */
  readonly planned: readonly CheckedBuild[];
  /** committed and running builds by set-up start */
  readonly fixed: readonly CheckedBuild[];
  readonly costing: BuildCosting;
  readonly minute: (instant: string) => number;
  readonly working: (machine: Machine) => WorkingTime;
  readonly order: (id: string) => Order | undefined;
  readonly part: (order: Order) => Part;
  /** the answers for one part on one machine with one feedstock */
  readonly routes: RouteFinder;
}

export type RouteFinder = (part: Part, machine: Machine, feedstock: Feedstock) => readonly RouteAnswer[];

/** Opens a plan for checking. Builds and orders with unknown ids are left out here: `checkReferences` names them. */
export function openCheck(shop: Shop, plan: PlanDocument): CheckSource {
  const minute = remembered((instant: string): number => minuteOf(instant, shop.timeZone));
  const orders = new Map(shop.orders.map((order) => [order.id, order]));
  const parts = new Map(shop.parts.map((part) => [part.id, part]));
  const part = (order: Order): Part => {
    const found = parts.get(order.partId);
    if (!found) throw new Error(`order ${order.id} names no part of the shop: ${order.partId}`);
    return found;
  };
  const lookUp = { shop, minute, order: (id: string) => orders.get(id), part, routes: routeFinder(shop) };
  const builds = plan.builds
    .flatMap((build) => openBuild(lookUp, build))
    .toSorted((a, b) => a.setUpStartMin - b.setUpStartMin);
  const startMin = minute(plan.plannedFrom);
  return {
    ...lookUp,
    plan,
    startMin,
    planned: builds.filter(({ build }) => build.state === "planned"),
    fixed: builds.filter(({ build }) => build.state !== "planned"),
    costing: makeBuildCosting(shop),
    working: workingTimes(shop, startMin, builds),
  };
}

/** A finding about a plan: always an error, since a plan that breaks a rule must not be used. */
export function broken(code: string, where: readonly string[], sentence: string): Finding {
  return { severity: "error", code, where: whereOf(...where), sentence };
}

/** What routes are looked up with. */
type LookUp = Pick<CheckSource, "shop" | "minute" | "order" | "part" | "routes">;

function openBuild(lookUp: LookUp, build: PlannedBuild): CheckedBuild[] {
  const { shop, minute } = lookUp;
  const machine = shop.machines.find((candidate) => candidate.id === build.machineId);
  const feedstock = shop.feedstocks.find((candidate) => candidate.id === build.feedstockId);
  if (!machine || !feedstock || build.items.some(({ orderId }) => !lookUp.order(orderId))) return [];
  const items = build.state === "planned" ? itemsOf(lookUp, build, machine, feedstock) : null;
  return [checkedBuild(build, { machine, feedstock }, items, minute)];
}

/** A build with its times in numbers. Example: taken off by 10:00 where unloading takes 14.5 min: unloading starts at 9:45. */
export function checkedBuild(
  build: PlannedBuild,
  { machine, feedstock }: Pick<CheckedBuild, "machine" | "feedstock">,
  items: readonly OrderCopies[] | null,
  minute: CheckSource["minute"],
): CheckedBuild {
  const unloadEndMin = minute(build.unloadEnd);
  return {
    build,
    machine,
    feedstock,
    setUpStartMin: minute(build.setUpStart),
    printStartMin: minute(build.printStart),
    printEndMin: minute(build.printEnd),
    unloadEndMin,
    unloadStartMin: unloadEndMin - Math.ceil(machine.unloadMin),
    items,
  };
}

function itemsOf(
  lookUp: LookUp,
  build: PlannedBuild,
  machine: Machine,
  feedstock: Feedstock,
): OrderCopies[] | null {
  const items = build.items.flatMap(({ orderId, copies }) => {
    const route = routeInBuild(lookUp, build, { machine, feedstock }, orderId);
    return route ? [{ orderId, copies, route }] : [];
  });
  return items.length === build.items.length ? items : null;
}

/** The feasible route by which a build makes an order's part; null where there is none with its nozzle, bead, layer and axis. */
export function routeInBuild(
  { order, part, routes }: LookUp,
  build: PlannedBuild,
  { machine, feedstock }: { readonly machine: Machine; readonly feedstock: Feedstock },
  orderId: string,
): Route | null {
  const found = order(orderId);
  const answers = found ? routes(part(found), machine, feedstock) : [];
  return answers.map(routeOf).find((route) => route && isMadeSo(route, build)) ?? null;
}

function routeOf(answer: RouteAnswer): Route | null {
  return answer.status === "route" ? answer.route : null;
}

/** Says whether a route is the one that a build names. */
function isMadeSo(route: Route, build: PlannedBuild): boolean {
  return (
    route.nozzleId === build.nozzleId &&
    route.orientation === build.orientation &&
    Math.abs(route.layerHeightMm - build.layerHeightMm) < SAME_MM &&
    Math.abs(route.beadWidthMm - build.beadWidthMm) < SAME_MM
  );
}

const SAME_MM = 1e-9;

/** Machines that are alike have the same routes, so each is found once. */
function routeFinder(shop: Shop): RouteFinder {
  const groupOf = new Map<string, number>();
  groupAlike(shop.machines).forEach((group, index) => {
    for (const member of group) groupOf.set(shop.machines[member]?.id ?? "", index);
  });
  const known = new Map<string, readonly RouteAnswer[]>();
  return (part, machine, feedstock) => {
    const key = JSON.stringify([part.id, groupOf.get(machine.id), feedstock.id]);
    const answers = known.get(key) ?? findEveryRoute(part, machine, [feedstock]);
    known.set(key, answers);
    return answers;
  };
}

/** Calendars laid out with room on both sides, so that no window is cut where the plan begins or ends. */
function workingTimes(
  shop: Shop,
  startMin: number,
  builds: readonly CheckedBuild[],
): (machine: Machine) => WorkingTime {
  const fromMin = Math.min(startMin, ...builds.map((build) => build.setUpStartMin)) - ROOM_MIN;
  const toMin = Math.max(startMin, ...builds.map((build) => build.unloadEndMin)) + ROOM_MIN;
  const known = new Map<string, WorkingTime>();
  return (machine) => {
    const before = known.get(machine.calendarId);
    if (before) return before;
    const calendar = shop.calendars.find((candidate) => candidate.id === machine.calendarId);
    if (!calendar)
      throw new Error(`machine ${machine.id} names no calendar of the shop: ${machine.calendarId}`);
    const working = workingTime(calendar, shop.timeZone, fromMin, toMin);
    known.set(machine.calendarId, working);
    return working;
  };
}

const ROOM_MIN = 14 * MIN_PER_DAY;
