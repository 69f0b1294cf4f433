import { hazardPerH } from "../../cost/expected-failure-cost.ts";
import type { Stretch, WorkingTime } from "../../plan/plan-problem.ts";
import { machineTime } from "../../plan/time/machine-time.ts";
import { joinTouching } from "../../plan/time/stretches.ts";
import { workingTime } from "../../plan/time/working-time.ts";
import { minuteOf } from "../../shop/instants.ts";
import type { Machine } from "../../shop/machine.ts";
import type { Shop } from "../../shop/shop.ts";
import { MIN_PER_DAY, MIN_PER_H } from "../../units/conversions.ts";
import type { Chances } from "./chances.ts";
import { drawKey } from "./keyed-draws.ts";
import type { PlacedBuild } from "./placed-builds.ts";
import { flatFrom, flatOf } from "./flat-lists.ts";
import type { TaskCalendars, TaskMachines } from "./simulation-task.ts";
import { spareOperators } from "./spare-operators.ts";

/** What time is laid out for: builds calendar by calendar and machine by machine. */
export interface Layout {
  readonly shop: Shop;
  /** start of the plan, epoch minute */
  readonly startMin: number;
  readonly builds: readonly PlacedBuild[];
  readonly chances: Chances;
}

/** One machine with its builds, and when it can be served and can print. */
interface MachineRow {
  readonly machine: Machine;
  readonly builds: readonly PlacedBuild[];
  readonly windows: readonly Stretch[];
  readonly segments: readonly PrintSegment[];
}

/** Where one print may run: by `byMin` its estimate must be over, and one that takes longer may go on until `lastMin`. */
interface PrintSegment extends Stretch {
  readonly byMin: number;
  readonly lastMin: number;
}

/**
 * Lays out the calendars that serve a plan's builds and their machines, in minutes from the start of the plan, far enough
 * beyond its last unload for what goes wrong. A print that is not over when its segment ends goes on for as long as somebody
 * stays or, where the machine is approved to run unattended, as long as that is approved; never into a closed day or a time
 * out of service. Example: one machine on one calendar gives `machineFrom` 0, 1.
 */
export function timeRows(layout: Layout): {
  readonly machines: TaskMachines;
  readonly calendars: TaskCalendars;
} {
  const calendars = groupsOf(layout.builds, ({ calendar }) => calendar.id).map((builds) => {
    const working = workingOf(layout, builds);
    const machines = groupsOf(builds, ({ machine }) => machine.id).map((own) =>
      machineRow(layout, own, working),
    );
    return { working, machines, spare: spareOperators(working.operators, builds) };
  });
  return {
    machines: machineRows(calendars.flatMap(({ machines }) => machines)),
    calendars: calendarRows(calendars),
  };
}

/** Consecutive builds that have the same key. */
function groupsOf(builds: readonly PlacedBuild[], keyOf: (placed: PlacedBuild) => string): PlacedBuild[][] {
  const groups: PlacedBuild[][] = [];
  for (const placed of builds) {
    const last = groups.at(-1);
    if (last?.[0] && keyOf(last[0]) === keyOf(placed)) last.push(placed);
    else groups.push([placed]);
  }
  return groups;
}

/** A calendar in minutes from the start of the plan. */
function workingOf({ shop, startMin, builds: all }: Layout, builds: readonly PlacedBuild[]): WorkingTime {
  const calendar = builds[0]?.calendar;
  if (!calendar) throw new RangeError("a calendar with no builds needs no time");
  const firstMin = Math.min(0, ...builds.map(({ setUpStartMin }) => setUpStartMin));
  const lastMin = Math.max(0, ...all.map(({ unloadEndMin }) => unloadEndMin));
  const fromMin = startMin + firstMin - BEFORE_MIN;
  const working = workingTime(calendar, shop.timeZone, fromMin, startMin + lastMin + TAIL_MIN);
  const shifted = <Kind extends Stretch>(list: readonly Kind[]): Kind[] =>
    list.map((stretch) => ({
      ...stretch,
      startMin: stretch.startMin - startMin,
      endMin: stretch.endMin - startMin,
    }));
  return {
    calendarId: calendar.id,
    windows: shifted(working.windows),
    operators: shifted(working.operators),
    closures: shifted(working.closures),
  };
}

/** Room before the first build, so that no window is cut where it begins. */
const BEFORE_MIN = 14 * MIN_PER_DAY;
/** Time beyond the plan's last unload: what is not finished by then is said not to be finished. */
const TAIL_MIN = 92 * MIN_PER_DAY;

function machineRow(layout: Layout, builds: readonly PlacedBuild[], working: WorkingTime): MachineRow {
  const machine = builds[0]?.machine;
  if (!machine) throw new RangeError("a machine with no builds needs no time");
  const at = (instant: string): number => minuteOf(instant, layout.shop.timeZone) - layout.startMin;
  const blocks = machine.outOfService.map(({ from, to }) => ({ startMin: at(from), endMin: at(to) }));
  const aloneMin = aloneMaxMin(machine);
  const time = machineTime({ working, blocks, freeFromMin: -Infinity, unattendedMaxMin: aloneMin });
  const shut = joinTouching([...blocks, ...working.closures].toSorted((a, b) => a.startMin - b.startMin));
  const segments = printSegments(time.segments, shut, layout.chances, aloneMin);
  return { machine, builds, windows: time.windows, segments };
}

/** Longest stretch that a machine may print with nobody there, min. */
function aloneMaxMin({ unattended, unattendedMaxH }: Machine): number {
  if (!unattended) return 0;
  return unattendedMaxH === undefined ? Infinity : unattendedMaxH * MIN_PER_H;
}

function printSegments(
  segments: readonly Stretch[],
  shut: readonly Stretch[],
  { stayOnMin, overtimeMin }: Chances,
  aloneMin: number,
): PrintSegment[] {
  let next = 0;
  return segments.map(({ startMin, endMin }) => {
    while ((shut[next]?.startMin ?? Infinity) < endMin) next++;
    const shutMin = shut[next]?.startMin ?? Infinity;
    const lastMin = Math.min(endMin + Math.max(stayOnMin, aloneMin), shutMin);
    return { startMin, endMin, byMin: Math.min(endMin + overtimeMin, lastMin), lastMin };
  });
}

function machineRows(rows: readonly MachineRow[]): TaskMachines {
  const keys = rows.map(({ machine }) => drawKey(machine.id));
  const windows = rows.map((row) => row.windows);
  const segments = rows.map((row) => row.segments);
  return {
    ids: rows.map(({ machine }) => machine.id),
    buildFrom: flatFrom(rows.map(({ builds }) => builds)),
    timeFactor: new Float64Array(rows.length).fill(1),
    hazardPerMin: Float64Array.from(rows, ({ machine }) => hazardPerH(machine.failuresPer1000H) / MIN_PER_H),
    unloadMin: Float64Array.from(rows, ({ machine }) => Math.ceil(machine.unloadMin)),
    keyA: Int32Array.from(keys, ({ a }) => a),
    keyB: Int32Array.from(keys, ({ b }) => b),
    windowFrom: flatFrom(windows),
    windowStartMin: flatOf(windows, ({ startMin }) => startMin),
    windowEndMin: flatOf(windows, ({ endMin }) => endMin),
    segmentFrom: flatFrom(segments),
    segmentStartMin: flatOf(segments, ({ startMin }) => startMin),
    segmentEndMin: flatOf(segments, ({ endMin }) => endMin),
    segmentByMin: flatOf(segments, ({ byMin }) => byMin),
    segmentLastMin: flatOf(segments, ({ lastMin }) => lastMin),
  };
}

/** One calendar with its machines. */
interface CalendarRow {
  readonly working: WorkingTime;
  readonly machines: readonly MachineRow[];
  readonly spare: WorkingTime["operators"];
}

function calendarRows(rows: readonly CalendarRow[]): TaskCalendars {
  const operators = rows.map(({ working }) => working.operators);
  const spare = rows.map((row) => row.spare);
  return {
    machineFrom: flatFrom(rows.map(({ machines }) => machines)),
    stretchFrom: flatFrom(operators),
    stretchStartMin: flatOf(operators, ({ startMin }) => startMin),
    stretchEndMin: flatOf(operators, ({ endMin }) => endMin),
    operators: flatOf(operators, (stretch) => stretch.operators),
    spareFrom: flatFrom(spare),
    spareStartMin: flatOf(spare, ({ startMin }) => startMin),
    spareEndMin: flatOf(spare, ({ endMin }) => endMin),
    spare: flatOf(spare, (stretch) => stretch.operators),
  };
}
