import { firstPlace } from "../../../core/plan/move/first-place.ts";
import type { MoveVerdict } from "../../../core/plan/move/judge-move.ts";
import { openMoves } from "../../../core/plan/move/move-desk.ts";
import { waysOn } from "../../../core/plan/move/move-ways.ts";
import type { PlanDocument, PlannedBuild } from "../../../core/plan/plan-document.ts";
import type { Shop } from "../../../core/shop/shop.ts";

/** Another place for a build: a machine and a feedstock with the first free time; verdict null: there is none, and why. */
export interface OtherPlace {
  readonly machineId: string;
  readonly feedstockId: string;
  readonly verdict: MoveVerdict | null;
  readonly reasons: readonly string[];
}

/** So many feedstocks of each machine are tried, the cheapest first. */
const MOST_WAYS = 2;

/**
 * Other places for a build, found machine by machine; each step gives all found so far, the cheapest first, then the machines
 * that have none. Example: after two of three machines two or more entries.
 */
export function* findPlaces(
  shop: Shop,
  plan: PlanDocument,
  standing: readonly PlannedBuild[],
  buildId: string,
): Generator<readonly OtherPlace[], readonly OtherPlace[]> {
  const desk = openMoves(shop, plan, standing, buildId);
  const found: OtherPlace[] = [];
  for (const { id: machineId } of shop.machines) {
    const answers = waysOn(desk, machineId);
    const ways = answers
      .flatMap((answer) => (answer.status === "way" ? [answer.way] : []))
      .slice(0, MOST_WAYS);
    const refusals = answers.flatMap((answer) => (answer.status === "refused" ? [answer.reasons] : []));
    for (const way of ways) {
      const verdict = firstPlace(desk, way, desk.source.startMin);
      const isHere =
        verdict?.build.setUpStart === desk.build.setUpStart && machineId === desk.build.machineId;
      if (!isHere || way.feedstockId !== desk.build.feedstockId)
        found.push({ machineId, feedstockId: way.feedstockId, verdict, reasons: [] });
      yield found.toSorted(cheapestFirst);
    }
    if (ways.length === 0) {
      const reasons = refusals.toSorted((a, b) => a.length - b.length)[0] ?? [];
      found.push({ machineId, feedstockId: "", verdict: null, reasons });
    }
  }
  return found.toSorted(cheapestFirst);
}

function cheapestFirst(a: OtherPlace, b: OtherPlace): number {
  const costOf = ({ verdict }: OtherPlace): number => verdict?.extraCost ?? Number.MAX_VALUE;
  return costOf(a) - costOf(b);
}
