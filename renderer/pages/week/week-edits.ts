import type { Change } from "../../../core/shop/change.ts";
import type { Build } from "../../../core/shop/build.ts";
import type { Order } from "../../../core/shop/order.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { shopBuild } from "../../../core/plan/replan/with-earlier-plan.ts";
import type { WeekBuild, WeekPicture } from "./week-picture.ts";

/** Commits builds: they keep machine and time in every new plan. */
export function commitChanges(entries: readonly WeekBuild[]): Change[] {
  return entries.map(({ build }) => putBuild(shopBuild(build, "committed")));
}

/**
 * Planned builds of a machine that are set up before a minute. A new plan uses a machine only behind what is committed on it,
 * so these would have to move. Example: builds at 6, 9 and 12 o'clock, before 10 o'clock: the first two.
 */
export function plannedBefore(picture: WeekPicture, entry: WeekBuild): WeekBuild[] {
  const builds = picture.rows[entry.row]?.builds ?? [];
  return builds.filter(({ build, setUpMin }) => build.state === "planned" && setUpMin < entry.setUpMin);
}

/** The change that a build put elsewhere by hand means. */
export function putBuild(entry: Build): Change {
  return { kind: "put", list: "builds", entry, at: null };
}

/**
 * Lets a committed build go: back to where the plan had it. One that no plan placed stays in the shop as planned, so that the
 * next plan knows of it.
 */
export function letGoChanges({ build, asPlanned }: WeekBuild): Change[] {
  if (asPlanned?.state === "planned") return [{ kind: "remove", list: "builds", id: build.id, at: null }];
  return [putBuild(shopBuild(build, "planned"))];
}

/** What a pin holds an order to; undefined leaves it free. */
export type Pin = NonNullable<Order["pinned"]>;

/** Pins all orders of a build, or with an empty pin frees them. */
export function pinChanges(shop: Shop, { build }: WeekBuild, pin: Pin): Change[] {
  const ids = new Set(build.items.map(({ orderId }) => orderId));
  return shop.orders
    .filter(({ id }) => ids.has(id))
    .map((order) => {
      const { pinned: _pinned, ...free } = order;
      const isFree = pin.machineId === undefined && pin.feedstockId === undefined;
      return { kind: "put", list: "orders", entry: isFree ? free : { ...free, pinned: pin }, at: null };
    });
}

/** The pin of a build's first order, which stands for all of them. */
export function pinOf(shop: Shop, { build }: WeekBuild): Pin {
  return shop.orders.find(({ id }) => id === build.items[0]?.orderId)?.pinned ?? {};
}
