import { buyOutLine } from "../../cost/buy-out-cost.ts";
import type { CostLine } from "../../cost/cost-line.ts";
import { lateCostPerDay, lateLine } from "../../cost/late-cost.ts";
import type { LineOutcome } from "./line-outcomes.ts";
import { at } from "../at.ts";
import type { PlanSource } from "./plan-source.ts";
import { toolPathLines } from "./tool-path-lines.ts";
import type { ToolPathUse } from "./tool-path-lines.ts";

/**
 * Cost lines that belong to no build: tool paths of new parts (once for a part and process, shared by copies among the
 * orders that use them), copies made elsewhere, and lateness.
 */
export function planCostLines(source: PlanSource, outcomes: readonly LineOutcome[]): CostLine[] {
  return [
    ...toolPathLines(source.costing, source.shop, toolPathUses(source)),
    ...boughtOutLines(source),
    ...latenessLines(source, outcomes),
  ];
}

function toolPathUses({ problem, schedule }: PlanSource): ToolPathUse[] {
  return schedule.builds.flatMap((build) =>
    build.items.map(({ optionIndex, copies }) => {
      const { lineIndex, route } = at(problem.options, optionIndex);
      return {
        orderId: at(problem.lines, lineIndex).orderId,
        partId: route.partId,
        process: route.process,
        copies,
      };
    }),
  );
}

function boughtOutLines({ problem, schedule, shop }: PlanSource): CostLine[] {
  return schedule.boughtOut.map(({ lineIndex, copies }) => {
    const { orderId, buyOut } = at(problem.lines, lineIndex);
    return buyOutLine(orderId, copies, buyOut?.pricePerPiece ?? 0, shop.currency);
  });
}

function latenessLines(source: PlanSource, outcomes: readonly LineOutcome[]): CostLine[] {
  const { costing, currency } = source.shop;
  return outcomes
    .filter(({ lateCost }) => lateCost > 0)
    .map(({ line, lateness }) => {
      const perDay = lateCostPerDay(source.order(line.orderId), costing);
      return lateLine(line.orderId, lateness.chargedMin, perDay, currency);
    });
}
