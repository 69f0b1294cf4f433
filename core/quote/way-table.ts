import type { BuildCosting } from "../cost/build-cost.ts";
import { runMin } from "../estimate/print-time.ts";
import type { Route } from "../estimate/route.ts";
import { machineTime } from "../plan/time/machine-time.ts";
import { workingTime } from "../plan/time/working-time.ts";
import type { Machine } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";
import { MIN_PER_DAY, MIN_PER_H } from "../units/conversions.ts";

/** Times and costs of one build of a way by its copies (index = copies; index 0 unused). */
export interface WayTable {
  readonly runMinByCopies: Float64Array;
  /** without changeover and tool paths, overhead included */
  readonly costByCopies: Float64Array;
}

/**
 * Tables of a way for builds of up to so many copies whose run fits the machine's longest stretch; shorter than the fewest
 * copies that the way allows where none fits. Example: 3 of 8 copies run within a stretch of 9 h: tables of 4 entries.
 */
export function wayTable(
  costing: BuildCosting,
  machine: Machine,
  route: Route,
  limits: { readonly copies: number; readonly longestRunMin: number },
): WayTable {
  const most = Math.min(route.copiesMax, limits.copies);
  const runs: number[] = [0];
  const costs: number[] = [0];
  for (let copies = 1; copies <= most; copies++) {
    const items = [{ route, copies }];
    const minutes = runMin(items);
    if (minutes > limits.longestRunMin) break;
    runs.push(minutes);
    costs.push(costing.amounts(items, machine, minutes).total);
  }
  return { runMinByCopies: Float64Array.from(runs), costByCopies: Float64Array.from(costs) };
}

/**
 * Longest print that a machine may run at a stretch in ordinary weeks, min: one staffed time, or several joined over the gaps
 * that it may span with nobody there; 0: nobody ever serves it. Closed days and times out of service are not ordinary.
 * Example: one shift of 8 h a day and at most 10 h unattended: 480 min; at most 16 h: 5 days, 6240 min.
 */
export function longestRunMin(shop: Shop, machine: Machine): number {
  const calendar = shop.calendars.find(({ id }) => id === machine.calendarId);
  if (!calendar) return 0;
  const manned = { ...calendar, closures: [], shifts: calendar.shifts.filter((one) => one.operators > 0) };
  const working = workingTime(manned, "UTC", SOME_MONDAY_MIN, SOME_MONDAY_MIN + ORDINARY_DAYS * MIN_PER_DAY);
  const { segments } = machineTime({
    working,
    blocks: [],
    freeFromMin: SOME_MONDAY_MIN,
    unattendedMaxMin: unattendedMin(machine),
  });
  return segments.reduce((longest, { startMin, endMin }) => Math.max(longest, endMin - startMin), 0);
}

/** 2001-01-01 was a Monday. */
const SOME_MONDAY_MIN = 978_307_200 / 60;
const ORDINARY_DAYS = 35;

function unattendedMin(machine: Machine): number {
  if (!machine.unattended) return 0;
  return machine.unattendedMaxH === undefined ? Infinity : machine.unattendedMaxH * MIN_PER_H;
}
