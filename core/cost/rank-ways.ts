import { findRoutes } from "../estimate/find-routes.ts";
import type { RouteOptions } from "../estimate/find-routes.ts";
import type { Route, RouteAnswer } from "../estimate/route.ts";
import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { Shop } from "../shop/shop.ts";
import type { BuildCosting } from "./build-cost.ts";

/** One way to make a part and what a copy costs by it. */
export interface RankedWay<Way> {
  readonly way: Way;
  /** copies in one build: as many as are wanted, if so many go */
  readonly copies: number;
  /** one build over its copies, without changeover and tool paths; Infinity: it would never succeed */
  readonly costPerCopy: number;
}

/**
 * Ways to make a part on a machine, the cheapest first: what a copy costs in a build of as many as are wanted (at least the
 * fewest, at most the most that go). Supports, height and copies on the platform are all in that cost. Ways of equal cost keep
 * their order. Example: 6 wanted, 100 a build of 4 and 90 a build of 3: 25 a copy before 30.
 */
export function rankWays<Way extends { readonly route: Route }>(
  costing: BuildCosting,
  machine: Machine,
  ways: readonly Way[],
  wanted: number,
): RankedWay<Way>[] {
  return ways
    .map((way) => {
      const { route } = way;
      const copies = Math.min(route.copiesMax, Math.max(route.copiesMin, wanted));
      const { total } = costing.amounts([{ route, copies }], machine);
      return { way, copies, costPerCopy: Number.isFinite(total) ? total / copies : Infinity };
    })
    .toSorted((a, b) => (a.costPerCopy === b.costPerCopy ? 0 : a.costPerCopy - b.costPerCopy));
}

/** Finds the routes of a part as the shop would choose them. */
export type RouteFinder = (
  part: Part,
  machine: Machine,
  feedstocks: readonly Feedstock[],
  options?: Omit<RouteOptions, "choose">,
) => RouteAnswer[];

/**
 * Opens the routes of a shop: those of `findRoutes`, where a part from a mesh stands the way that makes a copy cheapest in a
 * build for its largest order. A plan may only use these; any route of `findEveryRoute` would be valid too.
 * Example: a part ordered 2 and 40 times is stood up for 40.
 */
export function makeRouteFinder(shop: Shop, costing: BuildCosting): RouteFinder {
  const largest = new Map<string, number>();
  for (const { partId, quantity } of shop.orders) {
    largest.set(partId, Math.max(quantity, largest.get(partId) ?? 1));
  }
  return (part, machine, feedstocks, options) => {
    const wanted = largest.get(part.id) ?? 1;
    return findRoutes(part, machine, feedstocks, {
      ...options,
      choose: (ways) => rankWays(costing, machine, ways, wanted)[0]?.way,
    });
  };
}
