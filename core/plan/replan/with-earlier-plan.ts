import type { Build } from "../../shop/build.ts";
import type { Shop } from "../../shop/shop.ts";
import type { PlanDocument, PlannedBuild } from "../plan-document.ts";

/**
 * The shop with an accepted plan's builds as its own builds in state planned, so that the next plan pays for each that it moves
 * (`moveCostPerBuild`). A build that the shop knows itself, because somebody committed, moved or finished it, stays as the shop
 * has it. Example: a plan of 9 builds of which 2 are committed since: 7 are added.
 */
export function withEarlierPlan(shop: Shop, plan: PlanDocument): Shop {
  const known = new Set(shop.builds.map(({ id }) => id));
  const earlier = plan.builds.filter(({ id, state }) => state === "planned" && !known.has(id));
  if (earlier.length === 0) return shop;
  return { ...shop, builds: [...shop.builds, ...earlier.map((build) => shopBuild(build, "planned"))] };
}

/** The shop's own part of a planned build: without what only a plan knows. Example: its mass and cost lines fall away. */
export function shopBuild(build: PlannedBuild, state: Build["state"]): Build {
  const { changeoverMin: _changeoverMin, massKg: _massKg, costLines: _costLines, ...own } = build;
  return { ...own, state };
}
