import { EmptyWorks } from "./empty-works.ts";
import type { PossibleBuild } from "./empty-works.ts";
import type { PlanLine, PlanProblem } from "../plan-problem.ts";

/** When a line would be finished with no other order in the way. */
export interface EarliestFinish {
  readonly finishMin: number;
  /** machine that makes its last copies */
  readonly machineIndex: number;
  readonly builds: number;
}

/**
 * When so many copies of a line would be finished on machines that make nothing else. Builds go one after another to the
 * machine and option that finish them first; full builds and several even splits are tried. Null: no place was found, or
 * it would take hundreds of builds. What it finds could be run, so it never says too early; a cleverer split of several
 * builds may be a little earlier.
 * Example: 10 copies of 60 min each and 15 min fixed, set-up 10 and unload 5 min, staffed from Monday 06:00: 16:30.
 */
export function earliestFinish(problem: PlanProblem, line: PlanLine, copies: number): EarliestFinish | null {
  let best: EarliestFinish | null = null;
  for (const builds of SPLITS) {
    if (builds > copies) break;
    const found = finishWith(problem, line, copies, Math.ceil(copies / builds));
    if (found && (!best || found.finishMin < best.finishMin)) best = found;
  }
  return best;
}

/**
 * Copies of a line that could be finished by a given minute if machines made nothing else: builds one after another, the
 * last one as small as it must be. Example: 0 where not even the smallest build ends in time.
 */
export function copiesBy(problem: PlanProblem, line: PlanLine, dueMin: number): number {
  const works = new EmptyWorks(problem);
  let done = 0;
  for (let builds = 0; builds < MOST_BUILDS && done < line.quantity; builds++) {
    const next = largestBy(works, line, line.quantity - done, dueMin);
    if (!next) break;
    works.take(next);
    done += next.copies;
  }
  return done;
}

/** Numbers of equal builds that are tried. */
const SPLITS = [1, 2, 3, 4, 6, 8, 12, 16] as const;
const MOST_BUILDS = 300;

function finishWith(
  problem: PlanProblem,
  line: PlanLine,
  copies: number,
  copiesPerBuild: number,
): EarliestFinish | null {
  const works = new EmptyWorks(problem);
  let last: PossibleBuild | null = null;
  let left = copies;
  let builds = 0;
  while (left > 0 && builds < MOST_BUILDS) {
    const next = works.firstFinished(line, Math.min(left, copiesPerBuild)) ?? works.firstFinished(line, left);
    if (!next) return null;
    works.take(next);
    left -= next.copies;
    builds++;
    if (!last || next.finishMin > last.finishMin) last = next;
  }
  return left > 0 || !last ? null : { finishMin: last.finishMin, machineIndex: last.machineIndex, builds };
}

/** Largest build that ends in time: the full one, or one found by halving. */
function largestBy(works: EmptyWorks, line: PlanLine, most: number, dueMin: number): PossibleBuild | null {
  const inTime = (copies: number): PossibleBuild | null => {
    const build = works.firstFinished(line, copies);
    return build && build.finishMin <= dueMin ? build : null;
  };
  let best = inTime(most);
  if (best) return best;
  let tooMany = most;
  let fits = 0;
  while (tooMany - fits > 1) {
    const middle = Math.floor((fits + tooMany) / 2);
    const build = inTime(middle);
    if (build) best = build;
    if (build) fits = middle;
    else tooMany = middle;
  }
  return best;
}
