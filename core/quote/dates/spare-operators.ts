import type { OperatorStretch } from "../../plan/plan-problem.ts";
import type { PlacedBuild } from "./placed-builds.ts";

/**
 * Operators that a plan leaves free: those of the calendar less the plan's own set-ups and unloads, cut where the number
 * changes, never below 0. The stretches are sorted and disjoint.
 * Example: 2 operators from 0 to 60 and one set-up from 10 to 20 leave 2 until 10, 1 until 20, 2 until 60.
 */
export function spareOperators(
  operators: readonly OperatorStretch[],
  builds: readonly PlacedBuild[],
): OperatorStretch[] {
  const changes = new Map<number, number>();
  let busy = 0;
  const change = (atMin: number, by: number): void => {
    changes.set(atMin, (changes.get(atMin) ?? 0) + by);
  };
  for (const placed of builds) {
    change(placed.setUpStartMin, 1);
    change(placed.printStartMin, -1);
    change(placed.unloadStartMin, 1);
    change(placed.unloadEndMin, -1);
  }
  const left = (all: number): number => Math.min(all, Math.max(0, all - busy));
  const points = [...changes].toSorted(([a], [b]) => a - b);
  const spare: OperatorStretch[] = [];
  let next = 0;
  for (const stretch of operators) {
    let { startMin } = stretch;
    for (let point = points[next]; point && point[0] < stretch.endMin; point = points[++next]) {
      if (point[0] > startMin) {
        spare.push({ startMin, endMin: point[0], operators: left(stretch.operators) });
        startMin = point[0];
      }
      busy += point[1];
    }
    spare.push({ startMin, endMin: stretch.endMin, operators: left(stretch.operators) });
  }
  return spare;
}
