import { expect, test } from "vitest";
import { shopBuild, withEarlierPlan } from "../../../../core/plan/replan/with-earlier-plan.ts";
import { buildSchema } from "../../../../core/shop/build.ts";
import { aPlan } from "../../../fixtures/a-plan.ts";
import { aWorks } from "../../../fixtures/a-works.ts";

const SHOP = aWorks();
const PLAN = aPlan(SHOP);
const planned = PLAN.builds.filter(({ state }) => state === "planned");

test("planned builds of an accepted plan become the shop's planned builds, in the form of the shop document", () => {
  const { builds } = withEarlierPlan(SHOP, PLAN);
  const added = builds.slice(SHOP.builds.length);
  expect(added.map(({ id }) => id)).toEqual(planned.map(({ id }) => id));
  expect(added.every((build) => buildSchema.safeParse(build).success && build.state === "planned")).toBe(
    true,
  );
});

test("a build that the shop knows itself stays as the shop has it", () => {
  const [first] = planned;
  if (!first) throw new Error("the plan has no planned build");
  const committed = shopBuild(first, "committed");
  const shop = { ...SHOP, builds: [...SHOP.builds, committed] };
  const { builds } = withEarlierPlan(shop, PLAN);
  expect(builds.filter(({ id }) => id === first.id)).toEqual([committed]);
  expect(builds).toHaveLength(SHOP.builds.length + planned.length);
});

test("a plan without planned builds leaves the very shop", () => {
  expect(withEarlierPlan(SHOP, { ...PLAN, builds: [] })).toBe(SHOP);
});
