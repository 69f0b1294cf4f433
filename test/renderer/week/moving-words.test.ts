import { expect, test } from "vitest";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { makeFormat } from "../../../renderer/format/format.ts";
import { movingSentence } from "../../../renderer/pages/week/moving-words.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { BRITISH_RULES } from "../format-rules.ts";

const FORMAT = makeFormat(BRITISH_RULES);
const PLAN = aPlan(aWorks());
const REPLAN = { costPerBuild: 25, earlierBuilds: 14, keptBuilds: 12, movedIds: ["B-1", "B-2"] };

function words(some: Partial<NonNullable<PlanDocument["replan"]>>, moving = 50): string | null {
  const cost = { ...PLAN.cost, byKind: { ...PLAN.cost.byKind, moving } };
  const replan = { ...REPLAN, stayCost: PLAN.cost.total + 184.5, ...some };
  return movingSentence({ ...PLAN, cost, replan }, FORMAT);
}

test("says how many builds stay, what moving the others costs, and what leaving them would cost", () => {
  expect(words({})).toBe(
    "Of 14 builds planned before, 12 stay; moving or dropping 2 costs 50.00\u202fEUR, 25.00\u202fEUR each, which is in its cost. Leaving all of them where they are would cost 184.50\u202fEUR more.",
  );
});

test("says where moving has no price, where leaving all is no cheaper way, and where none moves", () => {
  expect(words({ costPerBuild: 0 }, 0)).toContain("give moving a build no price");
  expect(words({ stayCost: null })).toContain("would leave more copies without a place");
  expect(words({ stayCost: PLAN.cost.total })).not.toContain("Leaving");
  expect(words({ movedIds: [], keptBuilds: 14 })).toBe(
    "Of 14 builds planned before, 14 stay; none is moved.",
  );
});

test("says nothing where there was no earlier plan", () => {
  expect(movingSentence(PLAN, FORMAT)).toBeNull();
});
