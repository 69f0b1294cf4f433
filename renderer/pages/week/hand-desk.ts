import type { Build } from "../../../core/shop/build.ts";
import { judgeMove, type MoveVerdict } from "../../../core/plan/move/judge-move.ts";
import { openMoves } from "../../../core/plan/move/move-desk.ts";
import { type MoveWay, type MoveWayAnswer, waysOn } from "../../../core/plan/move/move-ways.ts";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import type { Ghost } from "./ghost.ts";
import type { WeekBuild, WeekPicture } from "./week-picture.ts";

/** Where a build in hand would stand, and what would become of it there. */
export interface Carried {
  readonly entry: WeekBuild;
  readonly row: number;
  readonly setUpMin: number;
  /** null: it has not been moved yet, or cannot be made there at all */
  readonly verdict: MoveVerdict | null;
  /** why it cannot stand there; empty: it can */
  readonly refusals: readonly string[];
}

/** The rules at hand while one build is carried about. */
export interface HandDesk {
  /** null: there is no such machine */
  readonly judge: (row: number, setUpMin: number) => Carried | null;
  readonly ghostOf: (carried: Carried) => Ghost;
}

const NO_FEEDSTOCK = "No feedstock of the shop goes into this machine.";

/** Opens the rules for one build of the picture; ways on a machine are found once. */
export function openHand(shop: Shop, plan: PlanDocument, picture: WeekPicture, entry: WeekBuild): HandDesk {
  const standing = [...picture.byId.values()].map(({ build }) => build);
  const desk = openMoves(shop, plan, standing, entry.build.id);
  const known = new Map<string, readonly MoveWayAnswer[]>();
  return {
    judge: (row, setUpMin) => {
      const machine = picture.rows[row]?.machine;
      if (!machine) return null;
      const answers = known.get(machine.id) ?? waysOn(desk, machine.id);
      known.set(machine.id, answers);
      const way = bestWay(answers, entry.build);
      if (!way) return { entry, row, setUpMin, verdict: null, refusals: nearestReasons(answers) };
      const verdict = judgeMove(desk, way, setUpMin);
      return { entry, row, setUpMin, verdict, refusals: verdict.refusals };
    },
    ghostOf: (carried) => ghostOf(carried, desk.source.minute),
  };
}

/** With the feedstock that it has now, else the cheapest. */
function bestWay(answers: readonly MoveWayAnswer[], { feedstockId }: Build): MoveWay | undefined {
  const ways = answers.flatMap((answer) => (answer.status === "way" ? [answer.way] : []));
  return ways.find((way) => way.feedstockId === feedstockId) ?? ways[0];
}

function nearestReasons(answers: readonly MoveWayAnswer[]): readonly string[] {
  const refusals = answers.flatMap((answer) => (answer.status === "refused" ? [answer.reasons] : []));
  return refusals.toSorted((a, b) => a.length - b.length)[0] ?? [NO_FEEDSTOCK];
}

function ghostOf(
  { entry, row, setUpMin, verdict, refusals }: Carried,
  minute: (instant: string) => number,
): Ghost {
  const place = { buildId: entry.build.id, row, setUpMin, isAllowed: refusals.length === 0 };
  if (verdict) {
    const { printStart, printEnd, unloadEnd } = verdict.build;
    return { ...place, printMin: minute(printStart), doneMin: minute(printEnd), endMin: minute(unloadEnd) };
  }
  const byMin = setUpMin - entry.setUpMin;
  const { printMin, doneMin, endMin } = entry;
  return { ...place, printMin: printMin + byMin, doneMin: doneMin + byMin, endMin: endMin + byMin };
}
