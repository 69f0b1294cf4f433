import type { PlanProblem, Stretch } from "../plan-problem.ts";

/**
 * Who is busy when: operators free in every minute of every calendar, counted from the start of the plan, committed work
 * taken off. Calendars in which operators can never be short (as many as machines at every staffed minute) are not counted.
 */
export class OperatorUse {
  /** by calendar; null where operators can never be short */
  readonly free: readonly (Int16Array | null)[];

  constructor(problem: PlanProblem, base: readonly Int16Array[]) {
    const machines = problem.calendars.map(() => 0);
    for (const facts of problem.classes) {
      machines[facts.calendarIndex] = (machines[facts.calendarIndex] ?? 0) + facts.machineIndices.length;
    }
    this.free = base.map((minutes, index) => (canBeShort(minutes, machines[index] ?? 0) ? minutes : null));
  }
}

function canBeShort(minutes: Int16Array, machines: number): boolean {
  for (let minute = 0; minute < minutes.length; minute++) {
    if (minutes[minute]! > 0 && minutes[minute]! < machines) return true;
  }
  return false;
}

/** Adds `change` to the free operators of every minute from `fromMin` to before `toMin`. */
export function changeFree(free: Int16Array, fromMin: number, toMin: number, change: number): void {
  for (let minute = fromMin; minute < toMin; minute++) free[minute] = free[minute]! + change;
}

/** Last minute in `[fromMin, toMin)` in which nobody is free, or -1. */
export function lastShort(free: Int16Array, fromMin: number, toMin: number): number {
  for (let minute = toMin - 1; minute >= fromMin; minute--) if (free[minute]! <= 0) return minute;
  return -1;
}

/** Operators of each calendar by minute from the start of the plan, less those in committed work. */
export function operatorMinutes(problem: PlanProblem): Int16Array[] {
  const { startMin } = problem;
  const minutes = problem.calendars.map((calendar) => {
    const endMin = calendar.operators.at(-1)?.endMin ?? startMin;
    const list = new Int16Array(Math.max(0, endMin - startMin));
    for (const stretch of calendar.operators) {
      list.fill(Math.min(stretch.operators, MOST_OPERATORS), ...bounds(stretch, startMin));
    }
    return list;
  });
  for (const { calendarIndex, stretch } of problem.committedWork) {
    const list = minutes[calendarIndex];
    const [from, to] = bounds(stretch, startMin);
    if (list) changeFree(list, from, Math.min(to, list.length), -1);
  }
  return minutes;
}

const MOST_OPERATORS = 30_000;

function bounds({ startMin, endMin }: Stretch, originMin: number): [number, number] {
  return [Math.max(0, startMin - originMin), Math.max(0, endMin - originMin)];
}

/** When somebody is free in a calendar, min from the start of the plan. Example: 1, 1, 0, 2 by minute gives 0-2 and 3-4. */
export function servedStretches(minutes: Int16Array): Stretch[] {
  const parts: Stretch[] = [];
  let openedMin = -1;
  for (let minute = 0; minute < minutes.length; minute++) {
    if (minutes[minute]! > 0) {
      if (openedMin < 0) openedMin = minute;
    } else if (openedMin >= 0) {
      parts.push({ startMin: openedMin, endMin: minute });
      openedMin = -1;
    }
  }
  if (openedMin >= 0) parts.push({ startMin: openedMin, endMin: minutes.length });
  return parts;
}
