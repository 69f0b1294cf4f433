import type { Build } from "./build.ts";

/**
 * Copies of each order that builds have made or are committed to. Where copies of several orders shared a build and some of
 * them failed, nobody recorded whose: such a build counts for none of them.
 * Example: a finished build of 5 copies with actual.goodCopies 4 counts 4, a committed one of 5 counts 5.
 */
export function copiesInBuilds(builds: readonly Build[]): Map<string, number> {
  const made = new Map<string, number>();
  for (const build of builds) {
    for (const item of build.items) {
      made.set(item.orderId, (made.get(item.orderId) ?? 0) + goodOf(build, item.copies));
    }
  }
  return made;
}

/** True where a build keeps its place in any plan: it is committed or running. */
export function keepsItsPlace(build: Build): boolean {
  return build.state === "committed" || build.state === "running";
}

function goodOf(build: Build, copies: number): number {
  if (build.state === "planned") return 0;
  if (keepsItsPlace(build)) return copies;
  const all = build.items.reduce((sum, item) => sum + item.copies, 0);
  const good = build.actual?.goodCopies ?? (build.state === "done" ? all : 0);
  if (good >= all) return copies;
  return build.items.length === 1 ? good : 0;
}
