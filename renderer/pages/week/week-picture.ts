import type { PlanDocument, PlannedBuild } from "../../../core/plan/plan-document.ts";
import type { Stretch } from "../../../core/plan/plan-problem.ts";
import { type FamilyMark, markByFeedstock, marksOfFamilies } from "../../../core/report/family-marks.ts";
import { compare } from "../../../core/report/week-facts.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import type { Order } from "../../../core/shop/order.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { MIN_PER_DAY } from "../../../core/units/conversions.ts";
import { groupBy } from "../../store/group-by.ts";
import { isSamePlace, type StandingBuild, standingBuilds } from "./overlay.ts";

/** One build with its times in epoch minutes, ready to be drawn, hit and read out. */
export interface WeekBuild {
  readonly build: PlannedBuild;
  readonly asPlanned: PlannedBuild | null;
  readonly row: number;
  readonly setUpMin: number;
  /** end of the changeover within the set-up */
  readonly changedMin: number;
  readonly printMin: number;
  readonly doneMin: number;
  /** start of unloading */
  readonly unloadMin: number;
  readonly endMin: number;
  readonly mark: FamilyMark;
  readonly isPinned: boolean;
  /** true: somebody moved it after the plan was made */
  readonly isMoved: boolean;
  /** by how much the latest of its orders is late with it; 0: in time, min */
  readonly lateMin: number;
  /** due dates of the orders of which it is the last build */
  readonly dues: readonly { readonly orderId: string; readonly dueMin: number }[];
}

export interface WeekRow {
  readonly machineId: string;
  /** null: the shop no longer has it */
  readonly machine: Machine | null;
  readonly name: string;
  /** in the order of their starts */
  readonly builds: readonly WeekBuild[];
}

/** Everything that the week page draws and lists: machines as rows, builds as they stand. */
export interface WeekPicture {
  readonly rows: readonly WeekRow[];
  readonly byId: ReadonlyMap<string, WeekBuild>;
  /** builds of each order */
  readonly byOrder: ReadonlyMap<string, readonly WeekBuild[]>;
  readonly marks: readonly FamilyMark[];
  /** the planned days and whatever goes beyond them */
  readonly bounds: Stretch;
  /** the planned days alone */
  readonly planned: Stretch;
}

/** The picture of a shop with a plan, or without one. Example: 12 machines and 90 builds give 12 rows with 90 bars. */
export function weekPicture(shop: Shop, plan: PlanDocument | null, fromMin: number): WeekPicture {
  const minute = (instant: string): number => minuteOf(instant, shop.timeZone);
  const standing = standingBuilds(shop, plan);
  const marks = marksOfFamilies(shop.feedstocks.map(({ family }) => family));
  const rowIds = machineIds(shop, standing);
  const rowOf = new Map(rowIds.map((machineId, row) => [machineId, row]));
  const machines = new Map(shop.machines.map((machine) => [machine.id, machine]));
  const orders = new Map(shop.orders.map((order) => [order.id, order]));
  const markOf = markByFeedstock(shop, marks);
  const lastEnds = lastEndOfOrders(standing, minute);
  const builds = standing
    .map((entry): WeekBuild => {
      const { build, asPlanned } = entry;
      const [setUpMin, endMin, doneMin] = [
        minute(build.setUpStart),
        minute(build.unloadEnd),
        minute(build.printEnd),
      ];
      const ordered = build.items.flatMap(({ orderId }) => orders.get(orderId) ?? []);
      const dues = ordered.map((order) => ({ orderId: order.id, dueMin: minute(order.dueAt) }));
      return {
        build,
        asPlanned,
        row: rowOf.get(build.machineId) ?? 0,
        setUpMin,
        changedMin: setUpMin + build.changeoverMin,
        printMin: minute(build.printStart),
        doneMin,
        unloadMin: Math.max(doneMin, endMin - Math.ceil(machines.get(build.machineId)?.unloadMin ?? 0)),
        endMin,
        mark: markOf(build.feedstockId),
        isPinned: ordered.some(isPinned),
        isMoved: asPlanned !== null && !isSamePlace(build, asPlanned),
        lateMin: dues.reduce((most, { dueMin }) => Math.max(most, endMin - dueMin), 0),
        dues: dues.filter(({ orderId }) => lastEnds.get(orderId) === endMin),
      };
    })
    .toSorted((a, b) => a.setUpMin - b.setUpMin || compare(a.build.id, b.build.id));
  const startMin = plan ? minute(plan.plannedFrom) : fromMin;
  const planned = { startMin, endMin: startMin + (plan?.horizonDays ?? USUAL_DAYS) * MIN_PER_DAY };
  const byRow = groupBy(builds, ({ row }) => row);
  const rows = rowIds.map((machineId, row) => ({
    machineId,
    machine: machines.get(machineId) ?? null,
    name: machines.get(machineId)?.name ?? machineId,
    builds: byRow.get(row) ?? [],
  }));
  return {
    rows,
    byId: new Map(builds.map((entry) => [entry.build.id, entry])),
    byOrder: buildsByOrder(builds),
    marks,
    bounds: boundsOf(builds, planned),
    planned,
  };
}

/** Says whether an order is pinned to a machine or a feedstock. */
export function isPinned({ pinned }: Order): boolean {
  return pinned?.machineId !== undefined || pinned?.feedstockId !== undefined;
}

/** Machines in the order of the shop; one that the shop no longer has comes last. */
function machineIds(shop: Shop, standing: readonly StandingBuild[]): string[] {
  return [
    ...new Set([...shop.machines.map(({ id }) => id), ...standing.map(({ build }) => build.machineId)]),
  ];
}

function lastEndOfOrders(
  standing: readonly StandingBuild[],
  minute: (instant: string) => number,
): ReadonlyMap<string, number> {
  const ends = new Map<string, number>();
  for (const { build } of standing) {
    const endMin = minute(build.unloadEnd);
    for (const { orderId } of build.items)
      ends.set(orderId, Math.max(endMin, ends.get(orderId) ?? -Infinity));
  }
  return ends;
}

function buildsByOrder(builds: readonly WeekBuild[]): ReadonlyMap<string, WeekBuild[]> {
  const byOrder = new Map<string, WeekBuild[]>();
  for (const entry of builds) {
    for (const { orderId } of entry.build.items) {
      const known = byOrder.get(orderId);
      if (known) known.push(entry);
      else byOrder.set(orderId, [entry]);
    }
  }
  return byOrder;
}

const USUAL_DAYS = 7;

function boundsOf(builds: readonly WeekBuild[], planned: Stretch): Stretch {
  let { startMin, endMin } = planned;
  for (const build of builds) {
    startMin = Math.min(startMin, build.setUpMin);
    endMin = Math.max(endMin, build.endMin);
  }
  return { startMin, endMin };
}
