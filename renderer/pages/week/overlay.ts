import type { PlanDocument, PlannedBuild } from "../../../core/plan/plan-document.ts";
import { keepsItsPlace } from "../../../core/shop/build-copies.ts";
import type { Build } from "../../../core/shop/build.ts";
import type { Shop } from "../../../core/shop/shop.ts";

/** A build as it stands now, and the accepted plan's own version of it; null: the plan does not know it. */
export interface StandingBuild {
  readonly build: PlannedBuild;
  readonly asPlanned: PlannedBuild | null;
}

/**
 * The builds as they stand: those of the plan, with what was committed, moved or let go since then. The shop has the last word
 * on builds that keep their place; one that is let go is back where the plan had it. Example: a build of the plan that the
 * shop has as committed on another machine stands there; after undo it stands where the plan put it.
 */
export function standingBuilds(shop: Shop, plan: PlanDocument | null): StandingBuild[] {
  const ofShop = new Map(shop.builds.map((build) => [build.id, build]));
  const known = new Set(plan?.builds.map(({ id }) => id));
  const ofPlan = (plan?.builds ?? []).flatMap((asPlanned): StandingBuild[] => {
    const now = ofShop.get(asPlanned.id);
    if (now && keepsItsPlace(now)) return [{ build: written(now, asPlanned), asPlanned }];
    if (now && now.state !== "planned") return [];
    const isLetGo = asPlanned.state === "committed" || asPlanned.state === "running";
    return [{ build: isLetGo ? { ...asPlanned, state: "planned" } : asPlanned, asPlanned }];
  });
  const others = shop.builds
    .filter((build) => keepsItsPlace(build) && !known.has(build.id))
    .map((build) => ({ build: written(build, null), asPlanned: null }));
  return [...ofPlan, ...others];
}

/** The shop's build with what only a plan knows, as far as that still holds. */
function written(build: Build, asPlanned: PlannedBuild | null): PlannedBuild {
  const isThere = asPlanned !== null && isSamePlace(build, asPlanned);
  return {
    ...build,
    changeoverMin: isThere ? asPlanned.changeoverMin : 0,
    massKg: isThere ? asPlanned.massKg : 0,
    costLines: isThere ? asPlanned.costLines : [],
  };
}

/** Says whether a build is on the same machine at the same time with the same feedstock. */
export function isSamePlace(a: Build, b: Build): boolean {
  return (
    a.machineId === b.machineId &&
    a.feedstockId === b.feedstockId &&
    a.nozzleId === b.nozzleId &&
    a.setUpStart === b.setUpStart
  );
}
