import { minuteOf } from "../../shop/instants.ts";
import type { Shop } from "../../shop/shop.ts";
import { remembered } from "../../units/remembered.ts";
import { type Chances, USUAL_CHANCES } from "./chances.ts";
import { type PlanAhead, placedBuilds } from "./placed-builds.ts";
import { buildRows } from "./task-builds.ts";
import { taskOrders } from "./task-orders.ts";
import { timeRows } from "./task-time.ts";

/** One order of the plan as the simulation sees it. Times are minutes from the start of the plan. */
export interface TaskOrder {
  readonly orderId: string;
  /** due date, min; null: the shop has no such order */
  readonly dueMin: number | null;
  /** copies that have no place in the plan: the order is never whole in it */
  readonly missingCopies: number;
  /** last delivery of copies made elsewhere, min; null: none */
  readonly boughtOutMin: number | null;
}

/** Builds machine by machine in the order of the plan. Times are minutes from the start of the plan. */
export interface TaskBuilds {
  readonly ids: readonly string[];
  /** set-up starts in the plan */
  readonly setUpAtMin: Float64Array;
  /** set-up starts no earlier: as planned or so much before as is allowed, or when its feedstock has come and is dry */
  readonly earliestMin: Float64Array;
  /** set-up with its changeover */
  readonly setUpMin: Float64Array;
  /** set-up after a failure: the machine has everything loaded */
  readonly againMin: Float64Array;
  /** estimate of the whole run */
  readonly runMin: Float64Array;
  /** part of it that does not vary: warm-up and cool-down */
  readonly fixedMin: Float64Array;
  /** unload starts in the plan */
  readonly unloadAtMin: Float64Array;
  /** print began (running builds only); NaN: it has not */
  readonly begunMin: Float64Array;
  /** 1: committed or running, begins as it stands in the plan even where nobody is there */
  readonly fixed: Uint8Array;
  readonly keyA: Int32Array;
  readonly keyB: Int32Array;
  /** its orders are `orderIndex` from `orderFrom[build]` to before `orderFrom[build + 1]` */
  readonly orderFrom: Int32Array;
  readonly orderIndex: Int32Array;
}

/** Machines calendar by calendar; lists of one machine lie from `...From[machine]` to before `...From[machine + 1]`. */
export interface TaskMachines {
  readonly ids: readonly string[];
  readonly buildFrom: Int32Array;
  /** what prints take over their estimate on average: 1, but where an input is tried */
  readonly timeFactor: Float64Array;
  /** failures a printing minute */
  readonly hazardPerMin: Float64Array;
  readonly unloadMin: Float64Array;
  readonly keyA: Int32Array;
  readonly keyB: Int32Array;
  /** staffed time: a set-up, a clearing or an unload lies inside one window */
  readonly windowFrom: Int32Array;
  readonly windowStartMin: Float64Array;
  readonly windowEndMin: Float64Array;
  /** where one print may run; until when the estimate of one that is begun must be over, and until when one may go on that takes longer */
  readonly segmentFrom: Int32Array;
  readonly segmentStartMin: Float64Array;
  readonly segmentEndMin: Float64Array;
  readonly segmentByMin: Float64Array;
  readonly segmentLastMin: Float64Array;
}

/** Calendars; lists of one calendar lie from `...From[calendar]` to before `...From[calendar + 1]`. */
export interface TaskCalendars {
  readonly machineFrom: Int32Array;
  readonly stretchFrom: Int32Array;
  readonly stretchStartMin: Float64Array;
  readonly stretchEndMin: Float64Array;
  readonly operators: Float64Array;
  /** the same time cut finer: operators that the plan leaves free */
  readonly spareFrom: Int32Array;
  readonly spareStartMin: Float64Array;
  readonly spareEndMin: Float64Array;
  readonly spare: Float64Array;
}

/** A plan made ready for simulation: plain numbers in typed arrays. */
export interface SimulationTask {
  /** start of the plan, epoch minute: all times of the task count from here */
  readonly startMin: number;
  readonly orders: readonly TaskOrder[];
  readonly builds: TaskBuilds;
  readonly machines: TaskMachines;
  readonly calendars: TaskCalendars;
  readonly chances: Chances;
  /** what of the plan could not be taken over, as sentences */
  readonly notes: readonly string[];
}

/**
 * Makes a plan ready for simulation from the shop and the plan document: committed, running and planned builds in the plan's
 * order on each machine, staffed time, operators, times out of service, and which order each build belongs to. A plan that
 * names what the shop has not is taken over as far as it goes; the notes say what was left out.
 * Example: a plan of 2 builds for one order on one machine gives `builds.ids` of 2 and `orders` of 1.
 */
export function simulationTask(
  shop: Shop,
  plan: PlanAhead,
  chances: Chances = USUAL_CHANCES,
): SimulationTask {
  const minute = remembered((instant: string): number => minuteOf(instant, shop.timeZone));
  const startMin = minute(plan.plannedFrom);
  const source = { shop, plan, minute, startMin, chances };
  const { builds, notes } = placedBuilds(source);
  const orders = taskOrders(source, builds);
  return {
    startMin,
    orders,
    builds: buildRows(builds, orders),
    ...timeRows({ shop, startMin, builds, chances }),
    chances,
    notes,
  };
}
