import type { DatedPlan, PlacedBuild } from "./placed-builds.ts";
import type { TaskOrder } from "./simulation-task.ts";

/**
 * Every order that the plan speaks of, by id: copies that it leaves unplanned, or whose build the shop cannot place, are
 * missing. Deliveries of copies made elsewhere are taken as sure.
 * Example: 3 of 10 copies unplanned give `missingCopies` 3.
 */
export function taskOrders(source: DatedPlan, builds: readonly PlacedBuild[]): TaskOrder[] {
  const { shop, plan, minute, startMin } = source;
  const missing = missingCopies(source, builds);
  const arrivals = new Map<string, number>();
  for (const { orderId, arriveAt } of plan.boughtOut) {
    const atMin = minute(arriveAt) - startMin;
    arrivals.set(orderId, Math.max(arrivals.get(orderId) ?? atMin, atMin));
  }
  const made = builds.flatMap(({ build }) => build.items.map(({ orderId }) => orderId));
  const ids = new Set([...made, ...arrivals.keys(), ...missing.keys()]);
  const dueAt = new Map(shop.orders.map((order) => [order.id, order.dueAt]));
  return [...ids].toSorted().map((orderId) => {
    const due = dueAt.get(orderId);
    return {
      orderId,
      dueMin: due === undefined ? null : minute(due) - startMin,
      missingCopies: missing.get(orderId) ?? 0,
      boughtOutMin: arrivals.get(orderId) ?? null,
    };
  });
}

function missingCopies({ plan }: DatedPlan, builds: readonly PlacedBuild[]): Map<string, number> {
  const missing = new Map<string, number>();
  const placed = new Set(builds.map(({ build }) => build));
  const lost = plan.builds.filter(
    (build) => !placed.has(build) && build.state !== "done" && build.state !== "failed",
  );
  for (const { orderId, copies } of [...plan.unplanned, ...lost.flatMap(({ items }) => items)]) {
    missing.set(orderId, (missing.get(orderId) ?? 0) + Math.max(1, copies));
  }
  return missing;
}
