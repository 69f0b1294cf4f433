import { makeBuildCosting } from "../../core/cost/build-cost.ts";
import { findRoutes } from "../../core/estimate/find-routes.ts";
import { runMin } from "../../core/estimate/print-time.ts";
import type { Route } from "../../core/estimate/route.ts";
import type { Calendar } from "../../core/shop/calendar.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Part } from "../../core/shop/part.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { MIN_PER_H } from "../../core/units/conversions.ts";

/** Changeover that a build meets on average: about every third build changes feedstock. */
const CHANGEOVER_SHARE = 0.35;
/** Staffed time that can be used: the rest is lost between builds and at the ends of shifts. */
const STAFFED_SHARE = 0.92;
/** The same where nobody may leave the machine and hardly two of its long prints fit one day. */
const LONG_PRINT_SHARE = 0.72;
const LONG_PRINT_KIND = "L";
/** What the last print of a day goes on into the night, on average, on machines that may run unattended, h. */
const NIGHT_PRINT_H = 5.5;
const NIGHTS_PER_WEEK = 5;

/** The cheapest way to make a part, and what one copy of it takes in a full build. */
export interface CheapestWay {
  readonly route: Route;
  /** kind of machine: the name that alike machines share */
  readonly kind: string;
  readonly machine: Machine;
  /** most copies in one build that fit the platform and the longest print */
  readonly copies: number;
  readonly hoursPerCopy: number;
}

/** Kinds of machines of a shop with one machine of each and the longest print it takes, h. */
export interface KindOfMachine {
  readonly kind: string;
  readonly machine: Machine;
  readonly longestPrintH: number;
  readonly capacityH: number;
}

/** Kind of a machine made by the generator: the letters of its id. */
export function kindOf(machineId: string): string {
  return machineId.replace(/\d+$/, "");
}

/** Kinds of machines with the hours that all machines of the kind can be busy in so many weeks. */
export function kindsOfMachines(shop: Shop, weeks: number): KindOfMachine[] {
  const kinds = new Map<string, Machine[]>();
  for (const machine of shop.machines) {
    const kind = kindOf(machine.id);
    kinds.set(kind, [...(kinds.get(kind) ?? []), machine]);
  }
  return [...kinds].map(([kind, machines]) => {
    const machine = machines[0];
    const calendar = shop.calendars.find(({ id }) => id === machine?.calendarId);
    if (!machine || !calendar) throw new RangeError(`a kind without machine or calendar: ${kind}`);
    return {
      kind,
      machine,
      longestPrintH: longestH(machine, calendar),
      capacityH: machines.length * weeks * weeklyCapacityH(kind, machine, calendar),
    };
  });
}

/** One way to make a part and the kind of machine it runs on. */
export interface Way {
  readonly route: Route;
  readonly kind: KindOfMachine;
}

/** Every way to make a part on any kind of machine. */
export function waysOf(part: Part, shop: Shop, kinds: readonly KindOfMachine[]): Way[] {
  return kinds.flatMap((kind) =>
    findRoutes(part, kind.machine, shop.feedstocks).flatMap((answer) =>
      answer.status === "route" ? [{ route: answer.route, kind }] : [],
    ),
  );
}

/** The cheapest of these ways per copy, new tool paths included, in builds as full as `wanted` copies allow; null: none. */
export function cheapestWay(
  part: Part,
  shop: Shop,
  ways: readonly Way[],
  wanted: number,
): CheapestWay | null {
  const costing = makeBuildCosting({ ...shop, parts: [part] });
  let best: CheapestWay | null = null;
  let bestCost = Infinity;
  for (const { route, kind } of ways) {
    const { machine, longestPrintH } = kind;
    const copies = mostCopies(route, Math.min(route.copiesMax, wanted), longestPrintH);
    if (copies < route.copiesMin || copies < 1) continue;
    const engineering = part.toolPathsReady.includes(route.process)
      ? 0
      : costing.engineeringCost(route.process);
    const cost = costing.amounts([{ route, copies }], machine).total / copies + engineering / wanted;
    if (cost >= bestCost) continue;
    bestCost = cost;
    best = {
      route,
      kind: kind.kind,
      machine,
      copies,
      hoursPerCopy: occupiedH(route, machine, copies) / copies,
    };
  }
  return best;
}

/** Hours of one build on its machine, with set-up, average changeover and unload. */
export function occupiedH(route: Route, machine: Machine, copies: number): number {
  const { setUpMin, unloadMin, changeover } = machine;
  const changeMin = CHANGEOVER_SHARE * changeover.newFamilyMin;
  return (runMin([{ route, copies }]) + setUpMin + unloadMin + changeMin) / MIN_PER_H;
}

/** Hours of so many copies in builds as full as possible. */
export function hoursFor(way: CheapestWay, quantity: number): number {
  const full = Math.floor(quantity / way.copies);
  const rest = quantity - full * way.copies;
  const restH = rest > 0 ? occupiedH(way.route, way.machine, rest) : 0;
  return full * occupiedH(way.route, way.machine, way.copies) + restH;
}

function mostCopies(route: Route, limit: number, longestPrintH: number): number {
  let copies = Math.min(limit, MOST_COPIES);
  while (copies > 0 && runMin([{ route, copies }]) > longestPrintH * MIN_PER_H)
    copies = Math.floor(copies * 0.8);
  return copies;
}

const MOST_COPIES = 200;

function longestH(machine: Machine, calendar: Calendar): number {
  const shiftH = Math.max(...staffedHoursByDay(calendar));
  if (!machine.unattended) return shiftH;
  return machine.unattendedMaxH === undefined ? UNATTENDED_PRINT_H : shiftH + machine.unattendedMaxH;
}

/** A print over a weekend is possible, but nobody loads a platform for longer than this in the calibration, h. */
const UNATTENDED_PRINT_H = 60;

function weeklyCapacityH(kind: string, machine: Machine, calendar: Calendar): number {
  const staffedH = staffedHoursByDay(calendar).reduce((sum, hours) => sum + hours, 0);
  const share = kind === LONG_PRINT_KIND ? LONG_PRINT_SHARE : STAFFED_SHARE;
  return share * staffedH + (machine.unattended ? NIGHTS_PER_WEEK * NIGHT_PRINT_H : 0);
}

function staffedHoursByDay(calendar: Calendar): number[] {
  const hours = Array.from({ length: 7 }, () => 0);
  for (const shift of calendar.shifts) {
    const lengthH = (hourOf(shift.end) - hourOf(shift.start) + 24) % 24 || 24;
    for (const day of shift.days) hours[day - 1] = (hours[day - 1] ?? 0) + lengthH;
  }
  return hours;
}

function hourOf(timeOfDay: string): number {
  const [hours = "0", minutes = "0"] = timeOfDay.split(":");
  return Number(hours) + Number(minutes) / 60;
}
