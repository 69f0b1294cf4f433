import type { Feedstock } from "../shop/feedstock.ts";
import type { Order } from "../shop/order.ts";
import type { Shop } from "../shop/shop.ts";

/** What people call the things a plan refers to by id. A plan may be older than the shop: an unknown id stands for itself. */
export interface Names {
  machine(machineId: string): string;
  feedstock(feedstockId: string): string;
  /** the part that an order is for */
  part(orderId: string): string;
  customer(orderId: string): string;
  order(orderId: string): Order | null;
  grade(feedstockId: string): Feedstock | null;
}

/** Names of one shop, looked up by id. */
export function namesOf(shop: Shop): Names {
  const machines = new Map(shop.machines.map((machine) => [machine.id, machine.name]));
  const grades = new Map(shop.feedstocks.map((feedstock) => [feedstock.id, feedstock]));
  const orders = new Map(shop.orders.map((order) => [order.id, order]));
  const parts = new Map(shop.parts.map((part) => [part.id, part.name]));
  return {
    machine: (machineId) => machines.get(machineId) ?? machineId,
    feedstock: (feedstockId) => grades.get(feedstockId)?.name ?? feedstockId,
    part: (orderId) => parts.get(orders.get(orderId)?.partId ?? "") ?? orders.get(orderId)?.partId ?? "",
    customer: (orderId) => orders.get(orderId)?.customer ?? "",
    order: (orderId) => orders.get(orderId) ?? null,
    grade: (feedstockId) => grades.get(feedstockId) ?? null,
  };
}
