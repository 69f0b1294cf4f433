import type { PlanProblem } from "../plan-problem.ts";
import type { ScheduledBuild } from "../schedule.ts";

/** Builds of a schedule that are where an earlier plan had them, with the earlier build's id. */
export type KeptBuilds = ReadonlyMap<ScheduledBuild, string>;

/**
 * Which builds stay where an earlier plan had them: same machine, nozzle, feedstock and items, and a set-up that starts at
 * about the same time. Earlier builds are looked at in the order of their starts, and each takes the first build that is still
 * free for it. Example: a build of 10 copies at 08:10 instead of 08:00 stays; with 9 copies it does not.
 */
export function keptBuilds({ replan }: PlanProblem, builds: readonly ScheduledBuild[]): KeptBuilds {
  const kept = new Map<ScheduledBuild, string>();
  if (!replan) return kept;
  const inOrder = builds.toSorted((a, b) => a.setUpStartMin - b.setUpStartMin);
  for (const earlier of replan.builds) {
    const wanted = itemsKey(earlier.items);
    const found = inOrder.find(
      (build) =>
        !kept.has(build) &&
        build.machineIndex === earlier.machineIndex &&
        Math.abs(build.setUpStartMin - earlier.setUpStartMin) <= earlier.aboutMin &&
        itemsKey(build.items) === wanted,
    );
    if (found) kept.set(found, earlier.buildId);
  }
  return kept;
}

/** Money that moving builds costs: all earlier builds that do not stay. 0 where there was no earlier plan. */
export function movingCost(problem: PlanProblem, builds: readonly ScheduledBuild[]): number {
  const { replan } = problem;
  if (!replan || replan.costPerBuild === 0) return 0;
  return replan.costPerBuild * (replan.builds.length - keptBuilds(problem, builds).size);
}

/** Equal items give equal keys, in whatever order they stand. */
export function itemsKey(
  items: readonly { readonly optionIndex: number; readonly copies: number }[],
): string {
  return items
    .map(({ optionIndex, copies }) => `${optionIndex}*${copies}`)
    .toSorted()
    .join(" ");
}
