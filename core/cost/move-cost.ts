import type { Build } from "../shop/build.ts";
import type { CostLine } from "./cost-line.ts";

/**
 * Cost lines of a build that an earlier plan had put in place and that the new one moves or drops: the cost of moving one
 * build, shared by copies among its orders. They belong to the machine and feedstock that the build had. No overhead; none
 * where moving costs nothing. Example: 20 for a build of 3 and 1 copies of two orders gives 15 and 5.
 */
export function moveLines(
  { items, machineId, feedstockId }: Build,
  costPerBuild: number,
  currency: string,
): CostLine[] {
  if (costPerBuild === 0) return [];
  const all = items.reduce((sum, { copies }) => sum + copies, 0);
  return items.map(({ orderId, copies }) => ({
    kind: "moving",
    amount: (copies / all) * costPerBuild,
    formula: "share of the copies x cost of moving one planned build",
    inputs: [
      { name: "share of the copies", value: copies / all, unit: "" },
      { name: "cost of moving one planned build", value: costPerBuild, unit: currency },
    ],
    orderId,
    machineId,
    feedstockId,
  }));
}
