import type { Build } from "../../shop/build.ts";
import { copiesInBuilds } from "../../shop/build-copies.ts";
import { isInstant, minuteOf } from "../../shop/instants.ts";
import type { Shop } from "../../shop/shop.ts";

/**
 * Builds of an earlier plan that a new one pays for when it moves them: in state planned, not begun at the start of the new
 * plan, on a machine and of a feedstock that the shop has, and with copies of orders that are still open. All others could not
 * stay whatever the plan does. Example: of two planned builds, one for yesterday and one for tomorrow, the second.
 */
export function earlierBuilds(shop: Shop, fromMin: number): Build[] {
  const settled = copiesInBuilds(shop.builds);
  const open = new Set(
    shop.orders.filter(({ id, quantity }) => quantity > (settled.get(id) ?? 0)).map(({ id }) => id),
  );
  const machines = new Set(shop.machines.map(({ id }) => id));
  const feedstocks = new Set(shop.feedstocks.map(({ id }) => id));
  return shop.builds.filter(
    (build) =>
      build.state === "planned" &&
      machines.has(build.machineId) &&
      feedstocks.has(build.feedstockId) &&
      build.items.every(({ orderId }) => open.has(orderId)) &&
      isInstant(build.setUpStart) &&
      isInstant(build.unloadEnd) &&
      minuteOf(build.setUpStart, shop.timeZone) >= fromMin,
  );
}

/**
 * How much earlier or later a build may start and still count as where it was, min: an hour, or just under half its length if
 * that is less, so that no build stands for two. Example: 180 min long: 60; 41 min long: 20.
 */
export function aboutMin(setUpStartMin: number, unloadEndMin: number): number {
  return Math.max(0, Math.min(MOST_MIN, Math.ceil((unloadEndMin - setUpStartMin) / 2) - 1));
}

const MOST_MIN = 60;
