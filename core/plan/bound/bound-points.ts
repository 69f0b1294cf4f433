import type { PlanProblem, Stretch } from "../plan-problem.ts";

/** Staffed windows up to the horizon that get a point each; later ones get points in widening steps. */
const MOST_WINDOWS = 80;
/** Due dates inside a window become points too while there are no more points than this: each costs rows. */
const MOST_POINTS = 64;
/** Windows after the last full one, in widening steps. */
const LATE_WINDOWS = [1, 2, 3, 5, 8, 13, 21];

/**
 * Instants at which the bound counts what is finished on one calendar: ends of staffed windows, and due dates inside them
 * where there are few. Bucket t is what completes after point t - 1 and at or before point t; what completes after the last
 * point is not limited by any capacity.
 */
export function boundPoints(problem: PlanProblem, calendarIndex: number): Float64Array {
  const windows = (problem.calendars[calendarIndex]?.windows ?? []).filter(
    (window) => window.endMin > problem.startMin,
  );
  const latestDueMin = problem.lines.reduce((latest, line) => Math.max(latest, line.dueMin), 0);
  const fullUntilMin = Math.max(problem.horizonEndMin, latestDueMin);
  let full = windows.findIndex((window) => window.startMin >= fullUntilMin);
  full = Math.min(full < 0 ? windows.length : full, MOST_WINDOWS);
  const kept = windows.slice(0, full);
  for (const step of LATE_WINDOWS) {
    const window = windows[full - 1 + step];
    if (window) kept.push(window);
  }
  const ends = kept.map((window) => window.endMin);
  const dues = duesInside(problem, kept);
  const points = ends.length + dues.length <= MOST_POINTS ? [...ends, ...dues] : ends;
  return Float64Array.from(new Set(points)).toSorted();
}

function duesInside(problem: PlanProblem, windows: readonly Stretch[]): number[] {
  const dues = new Set(problem.lines.map((line) => line.dueMin));
  const isInside = (dueMin: number): boolean =>
    windows.some((window) => window.startMin < dueMin && dueMin < window.endMin);
  return [...dues].filter(isInside);
}
