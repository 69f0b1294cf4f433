import { buyOutLine } from "../../cost/buy-out-cost.ts";
import type { CostLine } from "../../cost/cost-line.ts";
import { lateLine } from "../../cost/late-cost.ts";
import type { Finding } from "../../shop/finding.ts";
import { MONEY_TOLERANCE, nearlyEqual } from "../../units/tolerance.ts";
import { lateCosts } from "./check-lateness.ts";
import { checkViews } from "./check-views.ts";
import { movingLines } from "./check-replan.ts";
import { inSequence } from "./check-sequence.ts";
import { broken } from "./check-source.ts";
import type { CheckSource } from "./check-source.ts";
import type { PlanDocument } from "../plan-document.ts";
import { toolPathLines } from "../write/tool-path-lines.ts";

type DocumentLine = PlanDocument["costLines"][number];

/**
 * Money, recomputed from the shop document alone: the cost lines of every build and of the plan, the views of their total to
 * the last minor unit, the orders' cost, and a bound that is not above the cost. Where a build has no feasible route its
 * cost cannot be computed: then only the bound is checked.
 */
export function checkMoney(source: CheckSource): Finding[] {
  const bound = checkBound(source.plan);
  if (source.planned.some(({ items }) => items === null)) return bound;
  const byBuild = buildLines(source);
  const own = planLines(source);
  const lines = [...byBuild.values()].flat().concat(own);
  return [
    ...checkBuildLines(source, byBuild),
    ...checkPlanLines(source.plan, own),
    ...checkViews(source.plan, lines),
    ...bound,
  ];
}

function buildLines(source: CheckSource): Map<string, CostLine[]> {
  const lines = new Map<string, CostLine[]>();
  for (const { checked, before } of inSequence(source)) {
    const { build, machine, items } = checked;
    if (!items) continue;
    lines.set(build.id, [
      ...source.costing.lines(items, machine, build.id),
      ...source.costing.changeoverLines(items, machine, before, build.id),
    ]);
  }
  return lines;
}

function planLines(source: CheckSource): CostLine[] {
  const { currency } = source.shop;
  const boughtOut = source.plan.boughtOut.map(({ orderId, copies }) => {
    const order = source.order(orderId);
    const price = order ? source.part(order).buyOut?.pricePerPiece : undefined;
    return buyOutLine(orderId, copies, price ?? 0, currency);
  });
  const late = lateCosts(source).map(({ orderId, amount }) => ({
    ...lateLine(orderId, 0, 0, currency),
    amount,
  }));
  return [
    ...toolPathLines(source.costing, source.shop, toolPathUses(source)),
    ...boughtOut,
    ...late,
    ...movingLines(source),
  ];
}

function toolPathUses(source: CheckSource) {
  return source.planned.flatMap(({ items, machine }) =>
    (items ?? []).map(({ orderId, copies, route }) => ({
      orderId,
      copies,
      partId: route.partId,
      process: machine.process,
    })),
  );
}

function checkBuildLines(source: CheckSource, expected: ReadonlyMap<string, readonly CostLine[]>): Finding[] {
  const planned = source.plan.builds.flatMap((build) => {
    const difference = firstDifference(build.costLines, expected.get(build.id) ?? []);
    if (!difference) return [];
    return [broken("cost-lines", ["builds", build.id, "costLines"], `Build ${build.id}: ${difference}.`)];
  });
  return planned;
}

function checkPlanLines(plan: PlanDocument, expected: readonly CostLine[]): Finding[] {
  const difference = firstDifference(plan.costLines, expected);
  return difference ? [broken("cost-lines", ["costLines"], `The plan's own cost lines: ${difference}.`)] : [];
}

/** The first kind of cost of an order, machine and feedstock whose sum differs, in words. */
function firstDifference(stated: readonly DocumentLine[], expected: readonly CostLine[]): string | null {
  const statedSums = sums(stated);
  const expectedSums = sums(expected);
  for (const key of new Set([...statedSums.keys(), ...expectedSums.keys()])) {
    const said = statedSums.get(key) ?? 0;
    const right = expectedSums.get(key) ?? 0;
    if (!nearlyEqual(said, right, MONEY_TOLERANCE))
      return `${key} is ${said} in the plan, ${right} recomputed`;
  }
  return null;
}

function sums(lines: readonly (DocumentLine | CostLine)[]): Map<string, number> {
  const totals = new Map<string, number>();
  for (const { kind, orderId, machineId, feedstockId, buildId, amount } of lines) {
    const place = [orderId, machineId, feedstockId, buildId].filter((id) => id !== undefined).join(", ");
    const key = `${kind} of ${place}`;
    totals.set(key, (totals.get(key) ?? 0) + amount);
  }
  return totals;
}

function checkBound({ bound, cost }: PlanDocument): Finding[] {
  const gapPct = bound.value > 0 ? (cost.total / bound.value - 1) * 100 : cost.total > 0 ? 100 : 0;
  if (bound.value <= cost.total + MONEY_TOLERANCE && nearlyEqual(bound.gapPct, gapPct, MONEY_TOLERANCE))
    return [];
  return [
    broken(
      "bound",
      ["bound"],
      `The bound is ${bound.value} with a gap of ${bound.gapPct} %; the cost is ${cost.total}, which it must not exceed.`,
    ),
  ];
}
