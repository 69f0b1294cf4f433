import { MIN_PER_DAY } from "../../units/conversions.ts";
import { changedTask, type TaskChange } from "./changed-task.ts";
import { orderDates } from "./likelihood.ts";
import { simulate, type SimulationControl } from "./simulate.ts";
import type { SimulationTask } from "./simulation-task.ts";

/** What a date becomes when one input is lower or higher than was taken. */
export interface DateDriver {
  /** the input in words */
  readonly input: string;
  readonly low: DateTried;
  readonly high: DateTried;
  /** how far the dates of the two lie apart, min; Infinity where one of them does not exist */
  readonly swingMin: number;
}

export interface DateTried {
  /** the change in words */
  readonly change: string;
  /** epoch minute; null: not kept with that likelihood at all */
  readonly byMin: number | null;
}

export interface DateDrivers {
  readonly orderId: string;
  readonly likelihoodPct: number;
  /** the date as things are taken, epoch minute; null: there is none, `reasons` say why */
  readonly byMin: number | null;
  readonly reasons: readonly string[];
  /** at most five, the largest swing first; inputs that move nothing are left out */
  readonly drivers: readonly DateDriver[];
}

export interface DriversControl extends Omit<SimulationControl, "orderIds"> {
  /** the date that is looked at; left out: 80 % */
  readonly likelihoodPct?: number;
}

/** Most inputs told. */
const TOLD = 5;

/**
 * The five inputs that move an order's date most: each is made lower and higher alone, and the plan is simulated again against the
 * same luck. Tried are print times (10 % shorter and longer, the band of the estimate) and failures (none, twice as many) of
 * each machine that makes the order, the spread of print times (half, one and a half), set-ups and unloads (a quarter shorter
 * and longer), operators (one more, one fewer), and late feedstock (a day sooner, a day later).
 * Example: an order whose one print takes 10 h has its print time first, about 2 h apart.
 */
export function dateDrivers(task: SimulationTask, orderId: string, control: DriversControl): DateDrivers {
  const likelihoodPct = control.likelihoodPct ?? 80;
  const dateOf = (tried: SimulationTask): Told => {
    const dates = orderDates(simulate(tried, { ...control, orderIds: [orderId] }), orderId, [likelihoodPct]);
    if (dates.status === "undated") return { byMin: null, reasons: dates.reasons };
    return { byMin: dates.kept[0]?.byMin ?? null, reasons: [] };
  };
  const { byMin, reasons } = dateOf(task);
  if (reasons.length > 0) return { orderId, likelihoodPct, byMin, reasons, drivers: [] };
  const drivers = inputsOf(task, orderId)
    .filter(() => !control.stopped?.())
    .map((input) => driverOf(input, (change) => dateOf(changedTask(task, change)).byMin))
    .filter(({ swingMin }) => swingMin > 0)
    .toSorted((a, b) => b.swingMin - a.swingMin);
  return { orderId, likelihoodPct, byMin, reasons, drivers: drivers.slice(0, TOLD) };
}

interface Told {
  readonly byMin: number | null;
  readonly reasons: readonly string[];
}

/** One input with the two changes that are tried. */
interface Input {
  readonly words: string;
  readonly low: readonly [words: string, change: TaskChange];
  readonly high: readonly [words: string, change: TaskChange];
}

function driverOf({ words, low, high }: Input, dateOf: (change: TaskChange) => number | null): DateDriver {
  const lowMin = dateOf(low[1]);
  const highMin = dateOf(high[1]);
  const isBoth = lowMin !== null && highMin !== null;
  const isOne = lowMin !== highMin;
  return {
    input: words,
    low: { change: low[0], byMin: lowMin },
    high: { change: high[0], byMin: highMin },
    swingMin: isBoth ? Math.abs(highMin - lowMin) : isOne ? Infinity : 0,
  };
}

function inputsOf(task: SimulationTask, orderId: string): Input[] {
  const machines = machinesOf(task, orderId);
  const isWaiting = task.builds.earliestMin.some((atMin, build) => atMin > task.builds.setUpAtMin[build]!);
  return [
    ...machines.map((machine) => printTime(task, machine)),
    ...machines.filter((machine) => task.machines.hazardPerMin[machine]! > 0).map((m) => failures(task, m)),
    SPREAD,
    WORK,
    PEOPLE,
    ...(isWaiting ? [FEEDSTOCK] : []),
  ];
}

function machinesOf({ machines, builds, orders }: SimulationTask, orderId: string): number[] {
  const index = orders.findIndex((order) => order.orderId === orderId);
  const all = [...machines.ids.keys()];
  return all.filter((machine) => {
    const from = builds.orderFrom[machines.buildFrom[machine]!];
    const to = builds.orderFrom[machines.buildFrom[machine + 1]!];
    return builds.orderIndex.subarray(from, to).includes(index);
  });
}

function printTime(task: SimulationTask, machine: number): Input {
  return {
    words: `print times on ${task.machines.ids[machine]}`,
    low: ["10 % shorter", { kind: "printTime", machine, factor: 0.9 }],
    high: ["10 % longer", { kind: "printTime", machine, factor: 1.1 }],
  };
}

function failures(task: SimulationTask, machine: number): Input {
  return {
    words: `failed prints on ${task.machines.ids[machine]}`,
    low: ["none", { kind: "failures", machine, factor: 0 }],
    high: ["twice as many", { kind: "failures", machine, factor: 2 }],
  };
}

const SPREAD: Input = {
  words: "how far print times lie from their estimates",
  low: ["half as far", { kind: "spread", factor: 0.5 }],
  high: ["half as far again", { kind: "spread", factor: 1.5 }],
};

const WORK: Input = {
  words: "time of set-ups and unloads",
  low: ["a quarter shorter", { kind: "work", factor: 0.75 }],
  high: ["a quarter longer", { kind: "work", factor: 1.25 }],
};

const PEOPLE: Input = {
  words: "people who set up and unload",
  low: ["one fewer at a time", { kind: "people", more: -1 }],
  high: ["one more at a time", { kind: "people", more: 1 }],
};

const FEEDSTOCK: Input = {
  words: "delivery of feedstock that comes late",
  low: ["a day sooner", { kind: "feedstock", laterMin: -MIN_PER_DAY }],
  high: ["a day later", { kind: "feedstock", laterMin: MIN_PER_DAY }],
};
