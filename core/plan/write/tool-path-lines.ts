import type { BuildCosting } from "../../cost/build-cost.ts";
import type { CostLine } from "../../cost/cost-line.ts";
import { toolPathFactor } from "../../estimate/tool-path-work.ts";
import type { Process } from "../../shop/machine.ts";
import type { Shop } from "../../shop/shop.ts";

/** Copies of an order that one build makes by one process. */
export interface ToolPathUse {
  readonly orderId: string;
  readonly partId: string;
  readonly process: Process;
  readonly copies: number;
}

/**
 * Cost lines of tool paths that do not exist yet: once for every part and process in use, shared by copies among the orders
 * that use them. Example: a new part in builds of 3 copies for one order and 1 for another: three quarters and one quarter.
 */
export function toolPathLines(costing: BuildCosting, shop: Shop, uses: readonly ToolPathUse[]): CostLine[] {
  const ready = new Set(
    shop.parts.flatMap(({ id, toolPathsReady }) => toolPathsReady.map((process) => keyOf(id, process))),
  );
  const parts = new Map(shop.parts.map((part) => [part.id, part]));
  const groups = new Map<string, { process: Process; partId: string; byOrder: Map<string, number> }>();
  for (const { orderId, partId, process, copies } of uses) {
    const key = keyOf(partId, process);
    if (ready.has(key)) continue;
    const group = groups.get(key) ?? { process, partId, byOrder: new Map<string, number>() };
    group.byOrder.set(orderId, (group.byOrder.get(orderId) ?? 0) + copies);
    groups.set(key, group);
  }
  return [...groups.values()].flatMap(({ process, partId, byOrder }) => {
    const users = [...byOrder].map(([orderId, copies]) => ({ orderId, copies }));
    const part = parts.get(partId);
    return costing.engineeringLines(users, process, part ? toolPathFactor(part, process) : 1);
  });
}

function keyOf(partId: string, process: Process): string {
  return JSON.stringify([partId, process]);
}
