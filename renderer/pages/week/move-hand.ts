import { type Accessor, createEffect, createMemo, createSignal, on } from "solid-js";
import { shopBuild } from "../../../core/plan/replan/with-earlier-plan.ts";
import type { Build } from "../../../core/shop/build.ts";
import { keepsItsPlace } from "../../../core/shop/build-copies.ts";
import { instantOf } from "../../../core/shop/instants.ts";
import { useStores } from "../../store/stores.ts";
import type { Ghost } from "./ghost.ts";
import { type Carried, type HandDesk, openHand } from "./hand-desk.ts";
import { verdictSentence } from "./verdict-words.ts";
import type { WeekBuild } from "./week-picture.ts";
import type { WeekState } from "./week-state.ts";

/** A build taken in hand, by pointer or keys, to be put elsewhere. */
export interface MoveHand {
  readonly carried: Accessor<Carried | null>;
  readonly ghost: Accessor<Ghost | null>;
  /** start of the set-up where it is held; empty: nothing is */
  readonly instant: Accessor<string>;
  /** false: this build cannot be moved, and it was said why */
  readonly take: (entry: WeekBuild) => boolean;
  readonly carry: (row: number, setUpMin: number) => void;
  /** brings the place where it is held into sight */
  readonly showPlace: () => void;
  /** by machines up or down and by minutes; in time to the next place that is allowed */
  readonly nudge: (byRows: number, byMin: number) => void;
  /** puts it down where it is, if it may stand there: it becomes committed */
  readonly drop: () => void;
  readonly letGo: () => void;
}

/** Steps that a key tries until one is allowed: two weeks of quarters of an hour. */
const MOST_STEPS = 1344;

/** The hand of one week page. `put` writes what was decided into the shop, `reveal` brings a place into sight. */
export function createMoveHand(
  week: WeekState,
  put: (build: Build) => void,
  reveal: (ghost: Ghost) => void,
): MoveHand {
  const { shop, notes, format } = useStores();
  const [carried, setCarried] = createSignal<Carried | null>(null);
  let desk: HandDesk | null = null;
  const ghost = createMemo(() => {
    const now = carried();
    return now && desk ? desk.ghostOf(now) : null;
  });
  const showPlace = (): void => {
    const place = ghost();
    if (place) reveal(place);
  };
  const letGo = (): void => {
    setCarried(null);
    desk = null;
  };
  // The rules at hand are those of the plan that was shown when the build was taken.
  createEffect(on(week.plan, letGo, { defer: true }));
  return {
    carried,
    ghost,
    showPlace,
    letGo,
    instant: () => {
      const now = carried();
      return now ? instantOf(now.setUpMin, shop.shop().timeZone) : "";
    },
    take: (entry) => {
      const plan = week.plan();
      const reason = whyNot(week, entry);
      if (reason !== null) notes.tell(reason);
      if (reason !== null || !plan) return false;
      desk = openHand(shop.shop(), plan, week.picture(), entry);
      setCarried({ entry, row: entry.row, setUpMin: entry.setUpMin, verdict: null, refusals: [] });
      return true;
    },
    carry: (row, setUpMin) => {
      const next = desk?.judge(row, setUpMin);
      if (next) setCarried(next);
    },
    nudge: (byRows, byMin) => {
      const now = carried();
      if (!now || !desk) return;
      const row = Math.min(week.picture().rows.length - 1, Math.max(0, now.row + byRows));
      setCarried((byMin === 0 ? desk.judge(row, now.setUpMin) : nextAllowed(desk, now, byMin)) ?? now);
      showPlace();
    },
    drop: () => {
      const now = carried();
      if (!now) return;
      const isSame = now.row === now.entry.row && now.setUpMin === now.entry.setUpMin;
      if (!isSame && now.verdict && now.refusals.length === 0) put(shopBuild(now.verdict.build, "committed"));
      else if (!isSame) notes.tell(`Not moved. ${verdictSentence(now, format())}`);
      letGo();
    },
  };
}

/** The next place in time that is allowed; where there is none in two weeks, the first step all the same. */
function nextAllowed(desk: HandDesk, now: Carried, stepMin: number): Carried | null {
  for (let step = 1; step <= MOST_STEPS; step++) {
    const place = desk.judge(now.row, now.setUpMin + step * stepMin);
    if (place?.refusals.length === 0) return place;
  }
  return desk.judge(now.row, now.setUpMin + stepMin);
}

function whyNot(week: WeekState, { build }: WeekBuild): string | null {
  if (week.plan() === null) return "There is no plan yet: plan the week first.";
  if (!week.canEdit()) return "This is the new plan: accept it or keep the old one before you move anything.";
  if (build.state === "running") return `${build.id} is running: it cannot be moved.`;
  return keepsItsPlace(build) || build.state === "planned"
    ? null
    : `${build.id} is finished: it cannot be moved.`;
}
