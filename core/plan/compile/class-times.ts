import type { Build } from "../../shop/build.ts";
import { minuteOf } from "../../shop/instants.ts";
import type { Machine } from "../../shop/machine.ts";
import type { Shop } from "../../shop/shop.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import { machineTime } from "../time/machine-time.ts";
import { keepsItsPlace } from "../../shop/build-copies.ts";
import type { MachineClass, PlanMachine, Stretch, WorkingTime } from "../plan-problem.ts";
import type { StateNumbers } from "./set-up-states.ts";

/** Classes without their changeover tables, and machines in time. */
export interface ClassTimes {
  readonly classes: readonly Omit<MachineClass, "changeoverMin" | "changeoverCost">[];
  readonly machines: readonly PlanMachine[];
}

export interface ClassTimesInput {
  readonly shop: Shop;
  readonly groups: readonly (readonly number[])[];
  readonly calendars: readonly WorkingTime[];
  readonly numbers: StateNumbers;
  readonly fromMin: number;
}

/** Lays every machine out in time: free from, loaded then, staffed windows, stretches for one print, times out of service. */
export function classTimes(input: ClassTimesInput): ClassTimes {
  const classOf = new Map<number, number>();
  input.groups.forEach((group, classIndex) => {
    for (const index of group) classOf.set(index, classIndex);
  });
  const machines = input.shop.machines.map((machine, index) =>
    planMachine(input, machine, classOf.get(index) ?? -1),
  );
  return { classes: input.groups.map((group) => classFacts(input, group)), machines };
}

function classFacts(input: ClassTimesInput, group: readonly number[]): ClassTimes["classes"][number] {
  const machine = input.shop.machines[group[0] ?? -1];
  if (!machine) throw new RangeError("a class without machines");
  const marginMm = 2 * machine.edgeMarginMm;
  return {
    machineIndices: group,
    calendarIndex: calendarIndexOf(input, machine),
    process: machine.process,
    setUpMin: Math.ceil(machine.setUpMin),
    unloadMin: Math.ceil(machine.unloadMin),
    mixedPlatform: machine.mixedPlatform,
    unattended: machine.unattended,
    unattendedMaxMin: unattendedMaxMin(machine),
    platformMm: { x: machine.envelopeMm.x - marginMm, y: machine.envelopeMm.y - marginMm },
    partGapMm: machine.partGapMm,
  };
}

function planMachine(input: ClassTimesInput, machine: Machine, classIndex: number): PlanMachine {
  const { shop, fromMin, numbers } = input;
  const working = input.calendars[calendarIndexOf(input, machine)];
  if (!working) throw new RangeError(`machine ${machine.id} has no calendar`);
  const fixed = shop.builds.filter((build) => build.machineId === machine.id && keepsItsPlace(build));
  const last = lastOf(fixed, shop.timeZone);
  const freeFromMin = Math.max(fromMin, last ? minuteOf(last.unloadEnd, shop.timeZone) : fromMin);
  const loaded = last ?? machine.loaded;
  const blocks = blocksOf(machine, shop.timeZone);
  const time = machineTime({ working, blocks, freeFromMin, unattendedMaxMin: unattendedMaxMin(machine) });
  return {
    machineId: machine.id,
    classIndex,
    freeFromMin,
    startState: loaded ? numbers.of(loaded) : NOTHING_LOADED,
    blocks,
    ...time,
  };
}

/** Stands for "nothing loaded" until all states are numbered. */
const NOTHING_LOADED = Number.MAX_SAFE_INTEGER;

/** The same machines with "nothing loaded" as the number after the last state. */
export function withStateCount(machines: readonly PlanMachine[], states: number): PlanMachine[] {
  return machines.map((machine) => ({ ...machine, startState: Math.min(machine.startState, states) }));
}

function calendarIndexOf(input: ClassTimesInput, machine: Machine): number {
  return input.calendars.findIndex((calendar) => calendar.calendarId === machine.calendarId);
}

function unattendedMaxMin(machine: Machine): number {
  if (!machine.unattended) return 0;
  return machine.unattendedMaxH === undefined ? Infinity : machine.unattendedMaxH * MIN_PER_H;
}

function lastOf(builds: readonly Build[], timeZone: string): Build | undefined {
  const endMin = (build: Build): number => minuteOf(build.unloadEnd, timeZone);
  return builds.reduce<Build | undefined>(
    (last, build) => (last === undefined || endMin(build) > endMin(last) ? build : last),
    undefined,
  );
}

function blocksOf(machine: Machine, timeZone: string): Stretch[] {
  return machine.outOfService
    .map(({ from, to }) => ({ startMin: minuteOf(from, timeZone), endMin: minuteOf(to, timeZone) }))
    .toSorted((a, b) => a.startMin - b.startMin);
}
