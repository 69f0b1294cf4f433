import type { CostLine } from "../../cost/cost-line.ts";
import type { ViewRow } from "../../cost/cost-views.ts";
import type { Finding } from "../../shop/finding.ts";
import { minorUnitDigits } from "../../units/currency.ts";
import { broken } from "./check-source.ts";
import type { PlanDocument } from "../plan-document.ts";

/**
 * The views of one total. The total is the sum of all cost lines, rounded; every view adds up to it exactly, and each of its
 * rows is its own sum rounded up or down. Each order shows its own row.
 */
export function checkViews({ cost, orders, currency }: PlanDocument, lines: readonly CostLine[]): Finding[] {
  const unit = 1 / 10 ** minorUnitDigits(currency);
  const kinds = Object.entries(cost.byKind).map(([id, total]) => ({ id, total }));
  const views: readonly View[] = [
    { name: "byKind", rows: kinds, sums: sumsBy(lines, (line) => line.kind) },
    { name: "byOrder", rows: cost.byOrder, sums: sumsBy(lines, (line) => line.orderId) },
    { name: "byMachine", rows: cost.byMachine, sums: sumsBy(lines, (line) => line.machineId ?? "") },
    { name: "byFeedstock", rows: cost.byFeedstock, sums: sumsBy(lines, (line) => line.feedstockId ?? "") },
  ];
  return [
    ...checkTotal(cost.total, lines, unit),
    ...views.flatMap((view) => checkView(view, cost.total, unit)),
    ...checkOrderCosts(cost.byOrder, orders),
  ];
}

interface View {
  readonly name: string;
  readonly rows: readonly ViewRow[];
  readonly sums: ReadonlyMap<string, number>;
}

function sumsBy(lines: readonly CostLine[], idOf: (line: CostLine) => string): Map<string, number> {
  const sums = new Map<string, number>();
  for (const line of lines) sums.set(idOf(line), (sums.get(idOf(line)) ?? 0) + line.amount);
  return sums;
}

function checkTotal(stated: number, lines: readonly CostLine[], unit: number): Finding[] {
  const total = lines.reduce((sum, { amount }) => sum + amount, 0);
  if (Math.abs(stated - total) <= unit / 2 + DUST) return [];
  return [
    broken(
      "cost-view",
      ["cost", "total"],
      `The total is ${stated} in the plan; its cost lines make it ${total}.`,
    ),
  ];
}

function checkView({ name, rows, sums }: View, total: number, unit: number): Finding[] {
  const stated = new Map(rows.map((row) => [row.id, row.total]));
  const ids = [...new Set([...sums.keys(), ...stated.keys()])];
  const wrong = ids.find((id) => Math.abs((stated.get(id) ?? 0) - (sums.get(id) ?? 0)) >= unit + DUST);
  if (wrong !== undefined) {
    const row = wrong === "" ? name : `${name} ${wrong}`;
    return [
      broken(
        "cost-view",
        ["cost", name, wrong],
        `The cost ${row} is ${stated.get(wrong) ?? 0} in the plan; its cost lines make it ${sums.get(wrong) ?? 0}.`,
      ),
    ];
  }
  const sum = rows.reduce((before, row) => before + row.total, 0);
  if (Math.abs(sum - total) <= DUST * Math.max(1, total)) return [];
  return [
    broken("cost-view", ["cost", name], `The cost ${name} adds up to ${sum}, not to the total of ${total}.`),
  ];
}

function checkOrderCosts(rows: readonly ViewRow[], orders: PlanDocument["orders"]): Finding[] {
  const byOrder = new Map(rows.map(({ id, total }) => [id, total]));
  return orders
    .filter(({ orderId, cost }) => Math.abs(cost - (byOrder.get(orderId) ?? 0)) > DUST)
    .map(({ orderId, cost }) =>
      broken(
        "cost-view",
        ["orders", orderId, "cost"],
        `Order ${orderId} shows a cost of ${cost}; in the view by order it is ${byOrder.get(orderId) ?? 0}.`,
      ),
    );
}

const DUST = 1e-6;
