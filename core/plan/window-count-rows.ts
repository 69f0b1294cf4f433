import type { ClassFrame } from "./class-frame.ts";
import type { PlanMachine, PlanProblem } from "./plan-problem.ts";
import { addChain, type ColumnList, type RowList } from "./sparse-columns.ts";

/** One way of counting builds that share a window with no gap in them. */
export interface WindowCount {
  /** a build counts the whole part of its set-up and run, min, times this */
  readonly perMin: number;
  /** first of the rows, one for each point of the class */
  readonly first: number;
}

/** Windows are cut into this many parts, each number one way of counting. Two parts: at most one build over half a window. */
const PARTS = [2, 3];

/** Counts cost rows for each class and point; larger problems are bounded well without them. */
const MOST_OPTIONS = 1200;

/**
 * Whole builds in windows: with a longest window of W minutes and m parts, builds of q minutes that lie in one window of
 * length w obey sum of floor(m q / (W + 1)) <= floor(m w / (W + 1)), for q adds up to at most w and rounding down only
 * loses (Chvatal-Gomory rounding; Gomory 1958). Cumulative over windows of all machines of a class up to each point, by class.
 */
export function addWindowCounts(
  problem: PlanProblem,
  frames: readonly ClassFrame[],
  rows: RowList,
  columns: ColumnList,
): WindowCount[][] {
  if (problem.options.length > MOST_OPTIONS) return frames.map(() => []);
  return frames.map((frame) => {
    const machines = problem.classes[frame.classIndex]!.machineIndices.map(
      (index) => problem.machines[index]!,
    );
    const longestMin = frame.patterns[0]!.spanMin;
    if (longestMin <= 0 || frame.points.length === 0) return [];
    return PARTS.map((parts) => {
      const perMin = parts / (longestMin + 1);
      return { perMin, first: addChain(rows, columns, countsOf(frame, machines, perMin)) };
    });
  });
}

/** Counts that the windows of all machines hold in each bucket. */
function countsOf(frame: ClassFrame, machines: readonly PlanMachine[], perMin: number): Float64Array {
  const upTo = Float64Array.from(frame.points, (pointMin) => {
    let counts = 0;
    for (const { windows } of machines) {
      for (const { startMin, endMin } of windows) {
        if (startMin >= pointMin) break;
        counts += wholeParts(Math.min(endMin, pointMin) - startMin, perMin);
      }
    }
    return counts;
  });
  return upTo.map((counts, at) => counts - (upTo[at - 1] ?? 0));
}

/** Whole parts of a window in so many minutes; what is a whole number but for round-off counts as it. */
export function wholeParts(minutes: number, perMin: number): number {
  return Math.floor(minutes * perMin + 1e-9);
}
