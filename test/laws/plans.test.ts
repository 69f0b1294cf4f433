import { describe, expect, test } from "vitest";
import { checkPlan } from "../../core/plan/check/check-plan.ts";
import { copiesInBuilds } from "../../core/shop/build-copies.ts";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { makeRandomShop } from "../bench/random-shop.ts";
import { makeTinyShop } from "../bench/tiny-shop.ts";
import { planWithSteps } from "../fixtures/plan-with-steps.ts";
import { lawSeeds, permuted } from "./law-shops.ts";

const SEARCH_STEPS = 20;
const MINUTES = 60_000;
/** How many shops each law takes: few enough to be quick, or as the environment says. */
const VALID = lawSeeds(40);
const REORDERED = lawSeeds(10);
const AGAINST_RULES = lawSeeds(20);

/** Copies of each order wherever a plan may put them. */
function accountedCopies(shop: Shop, plan: PlanDocument): Map<string, number> {
  const copies = copiesInBuilds(shop.builds);
  const add = (orderId: string, count: number): void => {
    copies.set(orderId, (copies.get(orderId) ?? 0) + count);
  };
  for (const build of plan.builds) {
    if (build.state === "planned") for (const item of build.items) add(item.orderId, item.copies);
  }
  for (const { orderId, copies: count } of [...plan.boughtOut, ...plan.unplanned]) add(orderId, count);
  return copies;
}

describe("a plan of a random shop", () => {
  test(
    `is valid, loses and repeats nothing, and costs no less than its bound (${VALID.length} shops)`,
    async () => {
      for (const seed of VALID) {
        const random = makeRandomShop(seed);
        const plan = await planWithSteps(random, SEARCH_STEPS).catch((error: unknown) => {
          throw new Error(`random shop ${seed}`, { cause: error });
        });
        const errors = checkPlan(random.shop, plan).filter(({ severity }) => severity === "error");
        expect(errors, `random shop ${seed}`).toEqual([]);
        const accounted = accountedCopies(random.shop, plan);
        for (const { id, quantity } of random.shop.orders) {
          expect(accounted.get(id), `random shop ${seed}, order ${id}`).toBe(quantity);
        }
        expect(plan.bound.value, `random shop ${seed}`).toBeLessThanOrEqual(plan.cost.total + 0.01);
      }
    },
    20 * MINUTES,
  );

  test(
    `costs the same whatever the order of the shop's lists, at the same seed and number of steps (${REORDERED.length} shops)`,
    async () => {
      for (const seed of REORDERED) {
        const random = makeRandomShop(seed);
        const plan = await planWithSteps(random, SEARCH_STEPS);
        const other = await planWithSteps({ ...random, shop: permuted(random.shop, seed) }, SEARCH_STEPS);
        expect(other.cost.total, `random shop ${seed}`).toBe(plan.cost.total);
        expect(other.bound.value, `random shop ${seed}`).toBeCloseTo(plan.bound.value, 4);
      }
    },
    20 * MINUTES,
  );
});

test("a promise that is given up does not take the others' places away (random shop 212)", async () => {
  const { shop, request } = makeRandomShop(212);
  const plan = await planWithSteps({ shop, request }, SEARCH_STEPS);
  expect(plan.handRules).toHaveLength(2);
});

describe("a plan of a tiny shop", () => {
  test(`places no fewer copies than either hand rule and, of as many, costs no more (${AGAINST_RULES.length} shops)`, {
    timeout: 20 * MINUTES,
  }, async () => {
    for (const seed of AGAINST_RULES) {
      const plan = await planWithSteps(makeTinyShop(seed), SEARCH_STEPS);
      const unplanned = plan.unplanned.reduce((sum, { copies }) => sum + copies, 0);
      for (const rule of plan.handRules) {
        expect(unplanned, `tiny shop ${seed}, ${rule.name}`).toBeLessThanOrEqual(rule.unplannedCopies);
        if (rule.unplannedCopies > unplanned) continue;
        expect(plan.cost.total, `tiny shop ${seed}, ${rule.name}`).toBeLessThanOrEqual(rule.cost + 0.01);
      }
    }
  });
});
