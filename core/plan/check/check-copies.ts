import type { Finding } from "../../shop/finding.ts";
import type { Order } from "../../shop/order.ts";
import { MIN_PER_DAY } from "../../units/conversions.ts";
import { nearlyEqual } from "../../units/tolerance.ts";
import { broken } from "./check-source.ts";
import type { CheckSource } from "./check-source.ts";
import { copiesInBuilds } from "../../shop/build-copies.ts";
import type { PlanDocument, UnplannedReason } from "../plan-document.ts";

/**
 * Nothing is lost and nothing made twice: copies planned, bought out, not planned and already made or committed are the
 * copies ordered. Copies that are not planned have a reason, copies bought out a price and a date, and pins hold.
 */
export function checkCopies(source: CheckSource): Finding[] {
  const settled = copiesInBuilds(source.shop.builds);
  const planned = plannedCopies(source.plan);
  return [
    ...source.shop.orders.flatMap((order) =>
      checkOrder(source, order, settled.get(order.id) ?? 0, planned.get(order.id) ?? 0),
    ),
    ...source.plan.unplanned.flatMap(({ orderId, copies, reasons }) =>
      checkReasons(orderId, copies, reasons),
    ),
    ...checkBoughtOut(source),
    ...checkPins(source),
  ];
}

/** Copies of each order in planned builds. */
function plannedCopies({ builds }: PlanDocument): Map<string, number> {
  const planned = new Map<string, number>();
  for (const { orderId, copies } of builds.flatMap(({ state, items }) =>
    state === "planned" ? items : [],
  )) {
    planned.set(orderId, (planned.get(orderId) ?? 0) + copies);
  }
  return planned;
}

function checkOrder({ plan }: CheckSource, order: Order, settled: number, planned: number): Finding[] {
  const boughtOut = copiesOf(plan.boughtOut, order.id);
  const own = plan.unplanned.filter(({ reasons }) => !reasons.some(({ code }) => code === SET_ASIDE));
  const unplanned = copiesOf(own, order.id);
  const open = Math.max(0, order.quantity - settled);
  if (planned + boughtOut + unplanned === open) return [];
  return [
    broken(
      "copies",
      ["orders", order.id],
      `Order ${order.id} is for ${order.quantity} copies, ${settled} made or committed; the plan has ${planned} planned, ${boughtOut} bought out and ${unplanned} not planned instead of ${open} in all.`,
    ),
  ];
}

/** Copies of an entry that is not in the shop: another one with the same id, or one that cannot be used. */
const SET_ASIDE = "set-aside";

function copiesOf(
  items: readonly { readonly orderId: string; readonly copies: number }[],
  orderId: string,
): number {
  return items.reduce((sum, item) => (item.orderId === orderId ? sum + item.copies : sum), 0);
}

function checkReasons(orderId: string, copies: number, reasons: readonly UnplannedReason[]): Finding[] {
  if (reasons.some(({ sentence }) => sentence !== "")) return [];
  return [
    broken(
      "no-reason",
      ["unplanned", orderId],
      `${copies} copies of order ${orderId} are not planned, and no reason is given.`,
    ),
  ];
}

function checkBoughtOut(source: CheckSource): Finding[] {
  return source.plan.boughtOut.flatMap(({ orderId, copies, arriveAt, cost }) => {
    const order = source.order(orderId);
    const buyOut = order ? source.part(order).buyOut : undefined;
    if (!buyOut) {
      return [
        broken(
          "buy-out",
          ["boughtOut", orderId],
          `${copies} copies of order ${orderId} are bought out, but its part has no price for that.`,
        ),
      ];
    }
    const earliestMin = source.startMin + Math.ceil(buyOut.leadTimeDays * MIN_PER_DAY);
    const expected = copies * buyOut.pricePerPiece;
    if (source.minute(arriveAt) === earliestMin && nearlyEqual(cost, expected, CENT)) return [];
    return [
      broken(
        "buy-out",
        ["boughtOut", orderId],
        `${copies} copies of order ${orderId} are bought out for ${cost} and arrive at ${arriveAt}; they cost ${expected} and take ${buyOut.leadTimeDays} days from the start of the plan.`,
      ),
    ];
  });
}

/** Shown amounts are rounded to minor units. */
const CENT = 0.01;

function checkPins(source: CheckSource): Finding[] {
  return source.planned.flatMap(({ build }) =>
    build.items.flatMap(({ orderId }) => {
      const pinned = source.order(orderId)?.pinned;
      const machine = pinned?.machineId ?? build.machineId;
      const feedstock = pinned?.feedstockId ?? build.feedstockId;
      if (machine === build.machineId && feedstock === build.feedstockId) return [];
      return [
        broken(
          "pinned",
          ["builds", build.id, "items", orderId],
          `Build ${build.id} makes order ${orderId} on ${build.machineId} of ${build.feedstockId}; it is pinned to ${machine} and ${feedstock}.`,
        ),
      ];
    }),
  );
}
