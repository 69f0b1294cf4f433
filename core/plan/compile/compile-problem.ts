import { type BuildCosting, makeBuildCosting } from "../../cost/build-cost.ts";
import { inIdOrder } from "../../shop/in-id-order.ts";
import { minuteOf } from "../../shop/instants.ts";
import type { Shop } from "../../shop/shop.ts";
import { MIN_PER_DAY } from "../../units/conversions.ts";
import { classTimes, type ClassTimes, withStateCount } from "./class-times.ts";
import { compileLines } from "./compile-lines.ts";
import { groupAlike } from "./machine-classes.ts";
import { keepsItsPlace } from "../../shop/build-copies.ts";
import { OptionFinder } from "./option-finder.ts";
import type { MachineClass, PlanOption, PlanProblem, Stretch, WorkingTime } from "../plan-problem.ts";
import type { UnplannedReason } from "../plan-document.ts";
import { changeoverTable, StateNumbers } from "./set-up-states.ts";
import { workingTime } from "../time/working-time.ts";
import { compileReplan } from "../replan/compile-replan.ts";

/** From when and for how many days to plan. */
export interface PlanRequest {
  /** start of the plan, epoch minute */
  readonly fromMin: number;
  readonly days: number;
}

/** Copies of an order that no plan can hold, with every reason. */
export interface Unplannable {
  readonly orderId: string;
  readonly copies: number;
  readonly reasons: readonly UnplannedReason[];
}

export interface CompiledProblem {
  readonly problem: PlanProblem;
  readonly unplannable: readonly Unplannable[];
}

/** Working time is laid out this far beyond the planned days, so that late work still finds its place. */
const TAIL_DAYS = 366;

/**
 * Turns a shop into numbers: calendars into instants, machines that are alike into classes, every open order line into its
 * options with times and costs by copies. The shop must have passed `check-shop`. Orders with no way to make or buy them
 * come back as unplannable, with reasons. The order of the lists in the shop does not matter: each is put in order of its ids.
 */
export function compileProblem(given: Shop, request: PlanRequest): CompiledProblem {
  const shop = inIdOrder(given);
  const horizonEndMin = request.fromMin + request.days * MIN_PER_DAY;
  const calendars = shop.calendars.map((calendar) =>
    workingTime(calendar, shop.timeZone, request.fromMin, horizonEndMin + TAIL_DAYS * MIN_PER_DAY),
  );
  const costing = makeBuildCosting(shop);
  const numbers = new StateNumbers(shop);
  const groups = groupAlike(shop.machines);
  const times = classTimes({ shop, groups, calendars, numbers, fromMin: request.fromMin });
  const finder = new OptionFinder({ shop, costing, numbers, times, groups });
  const { lines, options, engineering, unplannable } = compileLines({
    shop,
    finder,
    costing,
    times,
    request,
  });
  const machines = withStateCount(times.machines, numbers.states.length);
  const replan = compileReplan(shop, request.fromMin, { machines, states: numbers.states, lines, options });
  const problem: PlanProblem = {
    startMin: request.fromMin,
    horizonEndMin,
    calendars,
    states: numbers.states,
    classes: compileClasses(shop, costing, numbers, times, options),
    machines,
    lines,
    options,
    engineering,
    committedWork: committedWork(shop, calendars, request.fromMin),
    ...(replan ? { replan } : {}),
    mixedCost: mixedCostOf(shop, costing, options, times),
  };
  return { problem, unplannable };
}

function compileClasses(
  shop: Shop,
  costing: BuildCosting,
  numbers: StateNumbers,
  times: ClassTimes,
  options: readonly PlanOption[],
): MachineClass[] {
  return times.classes.map((facts, classIndex) => {
    const machine = shop.machines[facts.machineIndices[0] ?? -1];
    if (!machine) throw new RangeError("a class without machines");
    const toStates = new Set(
      options.filter((option) => option.classIndex === classIndex).map((option) => option.stateIndex),
    );
    const fromStates = new Set(toStates);
    for (const index of facts.machineIndices) {
      const start = times.machines[index]?.startState ?? numbers.states.length;
      if (start < numbers.states.length) fromStates.add(start);
    }
    return { ...facts, ...changeoverTable(costing, machine, numbers.states, fromStates, toStates) };
  });
}

/** Set-ups and unloads of fixed builds that lie ahead, by calendar. */
function committedWork(shop: Shop, calendars: readonly WorkingTime[], fromMin: number): CommittedWork[] {
  const work: CommittedWork[] = [];
  for (const build of shop.builds) {
    const machine = shop.machines.find((candidate) => candidate.id === build.machineId);
    if (!keepsItsPlace(build) || !machine) continue;
    const calendarIndex = calendars.findIndex((calendar) => calendar.calendarId === machine.calendarId);
    const at = (instant: string): number => minuteOf(instant, shop.timeZone);
    const unloadEndMin = at(build.unloadEnd);
    const stretches = [
      { startMin: at(build.setUpStart), endMin: at(build.printStart) },
      { startMin: unloadEndMin - Math.ceil(machine.unloadMin), endMin: unloadEndMin },
    ];
    for (const stretch of stretches) if (stretch.endMin > fromMin) work.push({ calendarIndex, stretch });
  }
  return work;
}

interface CommittedWork {
  readonly calendarIndex: number;
  readonly stretch: Stretch;
}

function mixedCostOf(
  shop: Shop,
  costing: BuildCosting,
  options: readonly PlanOption[],
  times: ClassTimes,
): PlanProblem["mixedCost"] {
  return (items) => {
    const first = options[items[0]?.optionIndex ?? -1];
    const machine = shop.machines[times.classes[first?.classIndex ?? -1]?.machineIndices[0] ?? -1];
    if (!machine) throw new RangeError("a build with no items has no cost");
    const routes = items.map((item) => {
      const option = options[item.optionIndex];
      if (!option) throw new RangeError(`no such option: ${item.optionIndex}`);
      return { route: option.route, copies: item.copies };
    });
    return costing.amounts(routes, machine).total;
  };
}
