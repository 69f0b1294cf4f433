import type { Costing } from "../shop/costing.ts";
import type { Order } from "../shop/order.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";
import type { CostLine } from "./cost-line.ts";

/** Cost of the whole order line being late by one day: its own, or the shop's default. Example: none given, default 50: 50. */
export function lateCostPerDay(order: Order, costing: Costing): number {
  return order.lateCostPerDay ?? costing.defaultLateCostPerDay;
}

/**
 * Cost line of an order that is late: minutes late / 1440 x cost of one day. Where each copy counts by itself, `lateMin` is
 * the mean over all ordered copies, those in time as 0. No overhead. Example: 2160 min at 50 per day cost 75.
 */
export function lateLine(orderId: string, lateMin: number, perDay: number, currency: string): CostLine {
  return {
    kind: "late",
    amount: (lateMin / MIN_PER_DAY) * perDay,
    formula: "time late x cost of one day late",
    inputs: [
      { name: "time late", value: lateMin, unit: "min" },
      { name: "cost of one day late", value: perDay, unit: `${currency}/day` },
    ],
    orderId,
  };
}
