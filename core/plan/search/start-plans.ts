import { dispatchShares } from "./dispatch.ts";
import { placeEarlier } from "./as-before.ts";
import { takeOutBroken } from "./promises.ts";
import { ALWAYS, type PlaceRule, Recreate } from "./recreate.ts";
import { roundShares, type Shares } from "./rounding.ts";
import { SavedPlan } from "./saved-plan.ts";
import type { SearchData } from "./search-data.ts";
import { SearchState } from "./search-state.ts";
import { Trial } from "./trial.ts";

/** An empty plan: every copy without a place. */
export function emptyPlan(data: SearchData): Trial {
  return new Trial(new SearchState(data, penaltyOf(data)));
}

/** More than placing one copy can cost, whatever it delays: all work once, and every line late until the last window. */
function penaltyOf(data: SearchData): number {
  const { problem } = data;
  const lastMin = problem.machines.reduce((last, machine) => {
    return Math.max(last, (machine.windows.at(-1)?.endMin ?? problem.startMin) - problem.startMin);
  }, 0);
  return problem.lines.reduce(
    (sum, line, index) => {
      const cheapest = data.lineOptions[index]![0];
      const copies = cheapest === undefined ? 1 : data.optionMax[cheapest]!;
      const perCopy = cheapest === undefined ? 0 : data.costOf(cheapest, copies) / copies;
      const bought = line.buyOut?.pricePerPiece ?? 0;
      return sum + line.quantity * Math.max(perCopy, bought) + line.lateCostPerMin * lastMin;
    },
    LEAST_PENALTY + data.makespanRate * lastMin,
  );
}

const LEAST_PENALTY = 1000;

/** Asks only every so often: reading the clock for every build would take longer than placing it. */
function askedSeldom(question: () => boolean): () => boolean {
  let calls = 0;
  let answer = true;
  return () => {
    if (calls++ % CALLS_PER_QUESTION === 0) answer = question();
    return answer;
  };
}

const CALLS_PER_QUESTION = 16;

const AT_END: PlaceRule = { atEnd: true, random: null };
export const ANYWHERE: PlaceRule = { atEnd: false, random: null };

/** Line by line in order of due dates, at the cheapest option and machine, while `goOn` says so. */
export function placeAll(trial: Trial, rule: PlaceRule, goOn: () => boolean): void {
  const { data } = trial.state;
  const recreate = new Recreate(trial, null);
  const lines = Array.from({ length: data.lineCount }, (_, line) => line);
  lines.sort((a, b) => data.dueMin[a]! - data.dueMin[b]! || a - b);
  for (const line of lines) {
    if (!goOn()) return;
    recreate.placeLine(line, rule, goOn);
  }
}

/**
 * The cheapest of the plans to start from: dispatched from the linear program's shares where there are any, and line by line
 * by due date, after what is there and (while `hasTime`) at the best of all positions. With shares everything ends with
 * the time, whatever has no place by then: the first plan is made without them, and is always whole.
 */
export function startPlan(trial: Trial, start: Shares | null, hasTime: () => boolean): void {
  const isTimeLeft = askedSeldom(hasTime);
  const { state } = trial;
  const best = new SavedPlan();
  const empty = new SavedPlan();
  empty.save(state);
  const keepBetter = (): void => {
    if (state.money < best.money) best.save(state);
    empty.restore(trial);
  };
  if (start) {
    dispatchShares(trial, roundShares(state.data, start));
    takeOutBroken(trial);
    placeAll(trial, ANYWHERE, isTimeLeft);
    keepBetter();
  }
  if (state.data.problem.replan) {
    placeEarlier(trial);
    placeAll(trial, ANYWHERE, start ? isTimeLeft : ALWAYS);
    keepBetter();
  }
  placeAll(trial, AT_END, start ? isTimeLeft : ALWAYS);
  keepBetter();
  if (isTimeLeft()) {
    placeAll(trial, ANYWHERE, isTimeLeft);
    keepBetter();
  }
  best.restore(trial);
}
