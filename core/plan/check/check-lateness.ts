import { lateCostPerDay } from "../../cost/late-cost.ts";
import type { Finding } from "../../shop/finding.ts";
import type { Order } from "../../shop/order.ts";
import { MIN_PER_DAY } from "../../units/conversions.ts";
import { minorUnitDigits } from "../../units/currency.ts";
import { broken } from "./check-source.ts";
import type { CheckSource } from "./check-source.ts";

/** What this plan brings of one order, and when. */
interface OrderDates {
  readonly order: Order;
  readonly dueMin: number;
  /** copies of planned builds and bought-out ones by the minute at which they are off the machine or delivered */
  readonly deliveries: readonly { readonly copies: number; readonly atMin: number }[];
  /** last end of a committed build of the order; null: none */
  readonly fixedEndMin: number | null;
}

/**
 * Due dates: a promise that must hold is not late, and every open order's finish, lateness and cost of lateness are what
 * the plan's own builds and deliveries make them.
 */
export function checkLateness(source: CheckSource): Finding[] {
  const dates = orderDates(source);
  return [...dates.flatMap(checkPromise), ...dates.flatMap((entry) => checkOutcome(source, entry))];
}

/**
 * Cost of lateness of each order, by hand: minutes late of the last planned copy, or copy by copy with its share of the
 * ordered ones, times the cost of a day / 1440. Orders in time are left out.
 */
export function lateCosts(source: CheckSource): { orderId: string; amount: number }[] {
  return orderDates(source)
    .map((dates) => ({ orderId: dates.order.id, amount: lateCostOf(source, dates) }))
    .filter(({ amount }) => amount > 0);
}

function orderDates(source: CheckSource): OrderDates[] {
  const deliveries = new Map<string, { copies: number; atMin: number }[]>();
  const add = (orderId: string, copies: number, atMin: number): void => {
    deliveries.set(orderId, [...(deliveries.get(orderId) ?? []), { copies, atMin }]);
  };
  for (const { build, unloadEndMin } of source.planned) {
    for (const { orderId, copies } of build.items) add(orderId, copies, unloadEndMin);
  }
  for (const { orderId, copies, arriveAt } of source.plan.boughtOut)
    add(orderId, copies, source.minute(arriveAt));
  const fixedEnds = new Map<string, number>();
  for (const { build, unloadEndMin } of source.fixed) {
    for (const { orderId } of build.items) {
      fixedEnds.set(orderId, Math.max(unloadEndMin, fixedEnds.get(orderId) ?? unloadEndMin));
    }
  }
  return source.shop.orders.map((order) => ({
    order,
    dueMin: source.minute(order.dueAt),
    deliveries: deliveries.get(order.id) ?? [],
    fixedEndMin: fixedEnds.get(order.id) ?? null,
  }));
}

function checkPromise({ order, dueMin, deliveries }: OrderDates): Finding[] {
  const lateCopies = deliveries.reduce((sum, { copies, atMin }) => (atMin > dueMin ? sum + copies : sum), 0);
  if (order.allowLate || lateCopies === 0) return [];
  return [
    broken(
      "promise",
      ["orders", order.id],
      `Order ${order.id} must not be late, but ${lateCopies} of its copies come after ${order.dueAt}.`,
    ),
  ];
}

function checkOutcome(source: CheckSource, dates: OrderDates): Finding[] {
  const { order, dueMin, deliveries, fixedEndMin } = dates;
  const outcome = source.plan.orders.find(({ orderId }) => orderId === order.id);
  const unplanned = source.plan.unplanned.some(({ orderId }) => orderId === order.id);
  const isOpen = deliveries.length > 0 || fixedEndMin !== null || unplanned;
  if (!outcome) {
    if (!isOpen) return [];
    return [
      broken(
        "order-missing",
        ["orders", order.id],
        `Order ${order.id} is open, but the plan's orders leave it out.`,
      ),
    ];
  }
  const ends = [...deliveries.map(({ atMin }) => atMin), ...(fixedEndMin === null ? [] : [fixedEndMin])];
  const finishedMin = ends.length > 0 ? Math.max(...ends) : null;
  const lateMin = finishedMin === null ? 0 : Math.max(0, finishedMin - dueMin);
  const statedMin = outcome.finishedAt === null ? null : source.minute(outcome.finishedAt);
  const lateCost = lateCostOf(source, dates);
  const right =
    statedMin === finishedMin &&
    outcome.lateMin === lateMin &&
    source.minute(outcome.dueAt) === dueMin &&
    Math.abs(outcome.lateCost - lateCost) <= halfMinorUnit(source);
  if (right) return [];
  return [
    broken(
      "late-figures",
      ["orders", order.id],
      `Order ${order.id} is said to be late by ${outcome.lateMin} min at a cost of ${outcome.lateCost}, finished ${outcome.finishedAt ?? "never"} and due ${outcome.dueAt}; its builds and deliveries make it ${lateMin} min and ${lateCost.toFixed(4)}.`,
    ),
  ];
}

function lateCostOf({ shop }: CheckSource, { order, dueMin, deliveries }: OrderDates): number {
  const perMin = lateCostPerDay(order, shop.costing) / MIN_PER_DAY;
  const lateness = deliveries.map(({ copies, atMin }) => ({ copies, lateMin: Math.max(0, atMin - dueMin) }));
  if (!order.perPiece) return perMin * Math.max(0, ...lateness.map(({ lateMin }) => lateMin));
  return lateness.reduce((sum, { copies, lateMin }) => sum + (perMin * copies * lateMin) / order.quantity, 0);
}

function halfMinorUnit({ shop }: CheckSource): number {
  return 0.5 / 10 ** minorUnitDigits(shop.currency) + DUST;
}

const DUST = 1e-6;
