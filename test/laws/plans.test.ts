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
    "is valid, loses and repeats nothing, and costs no less than its bound",
    async () => {
      for (const seed of lawSeeds(40)) {
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
    "costs the same whatever the order of the shop's lists, at the same seed and number of steps",
    async () => {
      for (const seed of lawSeeds(10)) {
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

describe("a plan of a tiny shop", () => {
  test("is no worse than either hand rule", async () => {
    for (const seed of lawSeeds(20)) {
      const plan = await planWithSteps(makeTinyShop(seed), SEARCH_STEPS);
      for (const rule of plan.handRules) {
        expect(plan.cost.total, `tiny shop ${seed}, ${rule.name}`).toBeLessThanOrEqual(rule.cost + 0.01);
      }
    }
  });
});
