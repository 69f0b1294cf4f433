import type { Build } from "../../shop/build.ts";
import type { Finding } from "../../shop/finding.ts";
import type { Shop } from "../../shop/shop.ts";
import { broken } from "./check-source.ts";
import { keepsItsPlace } from "../../shop/build-copies.ts";
import type { PlanDocument } from "../plan-document.ts";

/** Committed and running builds of the shop come through untouched; the plan adds none, and finishes none. */
export function checkCommitted(shop: Shop, plan: PlanDocument): Finding[] {
  const fixed = shop.builds.filter(keepsItsPlace);
  const known = new Set(fixed.map(({ id }) => id));
  return [
    ...fixed.flatMap((build) => checkKept(plan, build)),
    ...checkStates(plan, known),
    ...checkTakenIds(shop, plan),
  ];
}

function checkKept(plan: PlanDocument, build: Build): Finding[] {
  const kept = plan.builds.find(({ id }) => id === build.id);
  if (!kept) {
    return [
      broken(
        "committed",
        ["builds", build.id],
        `Build ${build.id} is ${build.state} in the shop, but the plan leaves it out.`,
      ),
    ];
  }
  const { changeoverMin: _changeoverMin, massKg: _massKg, costLines: _costLines, ...rest } = kept;
  const changed = [...new Set([...Object.keys(build), ...Object.keys(rest)])].filter(
    (field) => JSON.stringify(fieldOf(build, field)) !== JSON.stringify(fieldOf(rest, field)),
  );
  if (changed.length === 0) return [];
  return [
    broken(
      "committed",
      ["builds", build.id],
      `Build ${build.id} is ${build.state} in the shop and must stay as it is; the plan changes its ${changed.join(", ")}.`,
    ),
  ];
}

function fieldOf(build: Build, field: string): unknown {
  return Object.entries(build).find(([key]) => key === field)?.[1];
}

function checkStates(plan: PlanDocument, known: ReadonlySet<string>): Finding[] {
  return plan.builds
    .filter(({ id, state }) => state !== "planned" && !known.has(id))
    .map(({ id, state }) =>
      broken(
        "committed",
        ["builds", id, "state"],
        `Build ${id} is ${state} in the plan; the shop has no such build.`,
      ),
    );
}

/** A planned build must not take the id of one that the shop keeps a record of; those of an earlier plan have a check of their own. */
function checkTakenIds(shop: Shop, plan: PlanDocument): Finding[] {
  const taken = new Set(
    shop.builds.filter(({ state }) => state === "done" || state === "failed").map(({ id }) => id),
  );
  return plan.builds
    .filter(({ id }) => taken.has(id))
    .map(({ id }) =>
      broken("duplicate-id", ["builds", id], `Build ${id} has the id of a build that the shop keeps.`),
    );
}
