import type { PlanDocument, PlannedBuild } from "../../../core/plan/plan-document.ts";
import { lateOrders, unplannedCopies } from "../../../core/report/week-facts.ts";
import { minuteOf } from "../../../core/shop/instants.ts";

/** How a new plan differs from an earlier one. */
export interface PlanComparison {
  /** builds that make the same, on another machine or at another time */
  readonly moved: readonly { readonly from: PlannedBuild; readonly to: PlannedBuild }[];
  readonly added: readonly PlannedBuild[];
  readonly dropped: readonly PlannedBuild[];
  readonly sameBuilds: number;
  /** new less earlier, currency */
  readonly costDifference: number;
  readonly lateOrders: { readonly before: number; readonly after: number };
  readonly withoutPlace: { readonly before: number; readonly after: number };
}

/**
 * Compares two plans build by build. Builds that make the same copies of the same feedstock stand for one another, the nearest
 * in time on the same machine first: ids say nothing, since every plan counts anew. Example: one build an hour later and all
 * others alike: 1 moved, 0 added, 0 dropped.
 */
export function comparePlans(before: PlanDocument, after: PlanDocument): PlanComparison {
  const open = new Map<string, PlannedBuild[]>();
  for (const build of before.builds) open.set(makes(build), [...(open.get(makes(build)) ?? []), build]);
  const pairs: { from: PlannedBuild; to: PlannedBuild }[] = [];
  let left = [...after.builds];
  // Builds that did not move are found first, so that none of them is taken for another that did.
  for (const isPair of [isSameStart, isSameMachine, () => true]) {
    left = left.filter((build) => {
      const candidates = open.get(makes(build)) ?? [];
      const found = nearest(
        candidates.filter((candidate) => isPair(candidate, build)),
        build,
      );
      if (!found) return true;
      candidates.splice(candidates.indexOf(found), 1);
      pairs.push({ from: found, to: build });
      return false;
    });
  }
  const moved = pairs.filter(({ from, to }) => !isSameStart(from, to));
  return {
    moved,
    added: left,
    dropped: [...open.values()].flat(),
    sameBuilds: pairs.length - moved.length,
    costDifference: after.cost.total - before.cost.total,
    lateOrders: { before: lateOrders(before).length, after: lateOrders(after).length },
    withoutPlace: { before: unplannedCopies(before), after: unplannedCopies(after) },
  };
}

function makes({ feedstockId, items }: PlannedBuild): string {
  const copies = items.map((item) => `${item.copies} ${item.orderId}`).toSorted();
  return JSON.stringify([feedstockId, copies]);
}

function isSameMachine(a: PlannedBuild, b: PlannedBuild): boolean {
  return a.machineId === b.machineId;
}

function isSameStart(a: PlannedBuild, b: PlannedBuild): boolean {
  return isSameMachine(a, b) && startOf(a) === startOf(b);
}

function nearest(candidates: readonly PlannedBuild[], build: PlannedBuild): PlannedBuild | undefined {
  const at = startOf(build);
  return candidates.toSorted((a, b) => Math.abs(startOf(a) - at) - Math.abs(startOf(b) - at))[0];
}

/** Instants of a plan carry their offset. */
function startOf({ setUpStart }: PlannedBuild): number {
  return minuteOf(setUpStart, "UTC");
}
