import type { PlanProblem, Stretch, WorkingTime } from "../plan/plan-problem.ts";
import { machineTime } from "../plan/time/machine-time.ts";
import { workingTime } from "../plan/time/working-time.ts";
import { minuteOf } from "../shop/instants.ts";
import type { Machine } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";
import { hoursBetween } from "./fleet-capacity.ts";

/** Shares of a usual week that are open in each real week: [week][class], [week][calendar]. */
export interface OpenShares {
  readonly ofClass: readonly Float64Array[];
  readonly ofCalendar: readonly Float64Array[];
}

const WEEK_MIN = 7 * MIN_PER_DAY;

/**
 * Closed days and times out of service by week: staffed hours of the real week over those of a usual one. `problem` is the
 * shop's without them, from the first week on. Example: Friday closed in a week of five equal days: 0.8.
 */
export function openShares(shop: Shop, problem: PlanProblem, weeks: number): OpenShares {
  const fromMin = problem.startMin;
  const calendars = shop.calendars.map((calendar) =>
    workingTime(calendar, shop.timeZone, fromMin, fromMin + weeks * WEEK_MIN),
  );
  const real = new Map(shop.machines.map((machine) => [machine.id, windowsOf(shop, machine, calendars)]));
  const allWeeks = Array.from({ length: weeks }, (_, week) => fromMin + week * WEEK_MIN);
  return {
    ofClass: allWeeks.map((startMin) =>
      Float64Array.from(problem.classes, ({ machineIndices }) => {
        const members = machineIndices.map((index) => problem.machines[index]!);
        const openH = sumOf(members, (each) =>
          hoursBetween(real.get(each.machineId)!, startMin, startMin + WEEK_MIN),
        );
        return shareOf(
          openH,
          sumOf(members, (each) => hoursBetween(each.windows, fromMin, fromMin + WEEK_MIN)),
        );
      }),
    ),
    ofCalendar: allWeeks.map((startMin) =>
      Float64Array.from(problem.calendars, (usual) => {
        const own = calendars.find(({ calendarId }) => calendarId === usual.calendarId)!;
        return shareOf(peopleH(own, startMin), peopleH(usual, fromMin));
      }),
    ),
  };
}

function windowsOf(shop: Shop, machine: Machine, calendars: readonly WorkingTime[]): readonly Stretch[] {
  const working = calendars.find(({ calendarId }) => calendarId === machine.calendarId);
  if (!working) throw new RangeError(`machine ${machine.id} has no calendar`);
  const blocks = machine.outOfService.map(({ from, to }) => ({
    startMin: minuteOf(from, shop.timeZone),
    endMin: minuteOf(to, shop.timeZone),
  }));
  return machineTime({ working, blocks, freeFromMin: Number.NEGATIVE_INFINITY, unattendedMaxMin: 0 }).windows;
}

function peopleH({ operators }: WorkingTime, startMin: number): number {
  return sumOf(operators, (each) => each.operators * hoursBetween([each], startMin, startMin + WEEK_MIN));
}

/** Never above 1: a week in which clocks go back is a usual one. */
function shareOf(openH: number, usualH: number): number {
  return usualH > 0 ? Math.min(1, openH / usualH) : 0;
}

function sumOf<T>(list: readonly T[], of: (each: T) => number): number {
  return list.reduce((sum, each) => sum + of(each), 0);
}
