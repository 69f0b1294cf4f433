import type { PlanProblem } from "../plan/plan-problem.ts";
import type { Schedule, ScheduledBuild } from "../plan/schedule.ts";
import { MOST_ITEMS, type SearchState } from "../plan/search/search-state.ts";
import type { Trial } from "../plan/search/trial.ts";
import { minuteOf } from "../shop/instants.ts";
import type { Shop } from "../shop/shop.ts";

/**
 * Puts every build of a schedule into an empty plan exactly where it is, without asking whether it could start earlier. The
 * numbers of lines, options and machines must be those of the trial's problem. Example: 623 builds of a schedule stand to the
 * minute where they were, and the money adds up to the schedule's cost.
 */
export function freeze(trial: Trial, schedule: Pick<Schedule, "builds" | "boughtOut">): void {
  const { state } = trial;
  for (const { lineIndex, copies } of schedule.boughtOut) {
    state.boughtOut[lineIndex]! += copies;
    state.unplaced[lineIndex]! -= copies;
  }
  const inOrder = schedule.builds.toSorted((a, b) => a.setUpStartMin - b.setUpStartMin);
  for (const build of inOrder) put(state, build);
  trial.recount();
}

function put(state: SearchState, { machineIndex, items, ...times }: ScheduledBuild): void {
  const { data } = state;
  const { startMin } = data.problem;
  const canShare = items.length === 1 || (items.length <= MOST_ITEMS && state.mixed.of(items) !== null);
  const isWanted = items.every(
    ({ optionIndex, copies }) => copies <= state.unplaced[data.optionLine[optionIndex]!]!,
  );
  const build = canShare && isWanted ? state.takeBuild() : -1;
  if (build < 0) return;
  state.describe(build, items);
  state.setUpStart[build] = times.setUpStartMin - startMin;
  state.printStart[build] = times.printStartMin - startMin;
  state.endAt[build] = times.unloadEndMin - startMin;
  state.windowOf[build] = windowAt(state, machineIndex, times.unloadEndMin - startMin);
  state.putIn(machineIndex, build);
  for (const { optionIndex, copies } of items) state.unplaced[data.optionLine[optionIndex]!]! -= copies;
}

/** The machine's window in which an unload ends. */
function windowAt({ windows }: SearchState, machine: number, endMin: number): number {
  const { firstWindow, windowEnd } = windows;
  let window = firstWindow[machine]!;
  const last = firstWindow[machine + 1]! - 1;
  while (window < last && windowEnd[window]! < endMin) window++;
  return window;
}

/**
 * Builds of an earlier plan as a schedule at their own times: those that can still be made as they are, with the run time that
 * the estimate has now. Example: a build whose estimate has changed since by a minute is left out.
 */
export function earlierSchedule(problem: PlanProblem, shop: Shop): ScheduledBuild[] {
  const known = new Map(shop.builds.map((build) => [build.id, build]));
  const minute = (instant: string): number => minuteOf(instant, shop.timeZone);
  return (problem.replan?.builds ?? []).flatMap(({ buildId, machineIndex, items }): ScheduledBuild[] => {
    const build = known.get(buildId);
    if (!build || items.length === 0) return [];
    const printStartMin = minute(build.printStart);
    const printEndMin = minute(build.printEnd);
    const [first] = items;
    const runMin =
      items.length === 1 && first
        ? problem.options[first.optionIndex]?.runMinByCopies[first.copies]
        : printEndMin - printStartMin;
    if (runMin !== printEndMin - printStartMin) return [];
    return [
      {
        machineIndex,
        items,
        setUpStartMin: minute(build.setUpStart),
        printStartMin,
        printEndMin,
        unloadEndMin: minute(build.unloadEnd),
      },
    ];
  });
}
