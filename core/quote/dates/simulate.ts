import { at } from "../../plan/at.ts";
import { ShopFloor } from "./shop-floor.ts";
import type { SimulationTask, TaskOrder } from "./simulation-task.ts";

export interface SimulationControl {
  /** how often the plan is lived through */
  readonly runs: number;
  readonly seed: number;
  /** only these orders, each run no longer than until they are whole: faster, and equal; left out: all orders */
  readonly orderIds?: readonly string[];
  /** asked now and then; true ends the simulation with the runs made so far */
  readonly stopped?: () => boolean;
}

/** When each order was whole in each run. */
export interface SimulatedDates {
  /** start of the plan, epoch minute */
  readonly startMin: number;
  /** runs made: fewer than asked for where it was stopped */
  readonly runs: number;
  readonly seed: number;
  readonly orders: readonly TaskOrder[];
  /** by order, then by run: last copy off the machine or delivered, min from the start of the plan; Infinity: never */
  readonly finishedMin: readonly Float64Array[];
  /** failed attempts in one run as far as it was lived through, mean */
  readonly failuresPerRun: number;
  /** prints stopped in one run because nobody could stay, mean */
  readonly stopsPerRun: number;
  /** what of the plan could not be simulated, as sentences */
  readonly notes: readonly string[];
}

/**
 * Lives through a plan many times: print times lognormal about the estimate, failures by each machine's hazard.
 *
 * The rules: the sequence on each machine is the plan's. A set-up begins when planned, or later where the machine, the people
 * or the feedstock are late; never earlier. An unload begins when the print is over; before its time in the plan only with
 * people whom the plan leaves free, so that early work delays nobody. Set-ups, unloads and clearings queue for the calendar's
 * operators, first come first served, each inside one staffed stretch of the machine. A print begins only where its estimate
 * ends within time in which the machine may print or, being behind the plan, shortly after people leave (`overtimeMin`). One
 * that takes longer goes on while somebody stays (`stayOnMin`), or alone as long as is approved, never into a closed day or a
 * time out of service; else it is stopped and lost. A lost print is cleared and set up again when somebody is there, takes as
 * long as before, and may fail again. A build for which no time is left is never whole, and its machine goes on with the next.
 * What is bought out comes when it is said to. Committed builds begin as they stand; a running one is known to be running still.
 *
 * Draws depend on the seed, the run and the build's machine and orders: with one order more the other builds meet the same
 * luck. The law of restarted prints is that of `restartOutlook` (core/estimate/failure.ts).
 * Example: one build of 10 h with no spread and no failures ends in every run as planned.
 */
export function simulate(task: SimulationTask, control: SimulationControl): SimulatedDates {
  const wanted = Math.max(0, Math.floor(control.runs) || 0);
  const indices = indicesOf(task.orders, control.orderIds);
  const floor = new ShopFloor(task, new Set(indices));
  const calendars = calendarsOf(task, indices);
  const finishedMin = indices.map(() => new Float64Array(wanted));
  let runs = 0;
  for (; runs < wanted; runs++) {
    if (runs % RUNS_BETWEEN === 0 && control.stopped?.()) break;
    floor.run(control.seed, runs, calendars);
    for (let place = 0; place < indices.length; place++) {
      finishedMin[place]![runs] = floor.finishedMin[indices[place]!]!;
    }
  }
  return {
    startMin: task.startMin,
    runs,
    seed: control.seed,
    orders: indices.map((index) => at(task.orders, index)),
    finishedMin: finishedMin.map((times) => times.subarray(0, runs)),
    failuresPerRun: runs === 0 ? 0 : floor.failures / runs,
    stopsPerRun: runs === 0 ? 0 : floor.stops / runs,
    notes: task.notes,
  };
}

function indicesOf(orders: readonly TaskOrder[], orderIds: readonly string[] | undefined): number[] {
  const indices = [...orders.keys()];
  if (!orderIds) return indices;
  const chosen = new Set(orderIds);
  return indices.filter((index) => chosen.has(at(orders, index).orderId));
}

/** Calendars that serve a build of one of these orders. */
function calendarsOf(
  { builds, machines, calendars }: SimulationTask,
  indices: readonly number[],
): Int32Array {
  const chosen = new Set(indices);
  const serves = (calendar: number): boolean => {
    const firstBuild = machines.buildFrom[calendars.machineFrom[calendar]!]!;
    const lastBuild = machines.buildFrom[calendars.machineFrom[calendar + 1]!]!;
    const own = builds.orderIndex.subarray(builds.orderFrom[firstBuild], builds.orderFrom[lastBuild]);
    return own.some((order) => chosen.has(order));
  };
  const all = Array.from({ length: calendars.machineFrom.length - 1 }, (_, calendar) => calendar);
  return Int32Array.from(all.filter(serves));
}

/** Runs between two questions whether to stop. */
const RUNS_BETWEEN = 32;
