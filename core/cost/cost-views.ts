import { roundToTotal } from "../units/money.ts";
import { COST_KINDS } from "./cost-line.ts";
import type { CostKind, CostLine } from "./cost-line.ts";

/** One row of a view: an order, machine or feedstock (empty id: belongs to none) and its rounded share of the total. */
export interface ViewRow {
  readonly id: string;
  readonly total: number;
}

/** One total seen by kind, order, machine and feedstock, in major units rounded to minor ones: every view adds up to it. */
export interface CostViews {
  byKind: Record<CostKind, number>;
  byOrder: ViewRow[];
  byMachine: ViewRow[];
  byFeedstock: ViewRow[];
  total: number;
}

/**
 * Sums cost lines into the views of one total. Every view is rounded once, by largest remainder, to the same total, so that
 * they agree to the last minor unit. Rows are in the order in which their ids first appear.
 * Example: lines of 0.333, 0.333 and 0.334 for orders A, B and C in EUR: total 1.00, orders 0.33, 0.33 and 0.34.
 */
export function costViews(lines: readonly CostLine[], currency: string): CostViews {
  const sum = lines.reduce((before, line) => before + line.amount, 0);
  return {
    byKind: kindView(lines, sum, currency),
    byOrder: view(lines, (line) => line.orderId, sum, currency),
    byMachine: view(lines, (line) => line.machineId ?? "", sum, currency),
    byFeedstock: view(lines, (line) => line.feedstockId ?? "", sum, currency),
    total: roundToTotal([sum], currency)[0] ?? 0,
  };
}

function kindView(lines: readonly CostLine[], sum: number, currency: string): CostViews["byKind"] {
  const amounts = COST_KINDS.map((kind) =>
    lines.reduce((before, line) => (line.kind === kind ? before + line.amount : before), 0),
  );
  const rounded = roundToTotal(amounts, currency, sum);
  return Object.fromEntries(
    COST_KINDS.map((kind, index) => [kind, rounded[index] ?? 0]),
  ) as CostViews["byKind"];
}

function view(
  lines: readonly CostLine[],
  idOf: (line: CostLine) => string,
  sum: number,
  currency: string,
): ViewRow[] {
  const amounts = new Map<string, number>();
  for (const line of lines) amounts.set(idOf(line), (amounts.get(idOf(line)) ?? 0) + line.amount);
  const rounded = roundToTotal([...amounts.values()], currency, sum);
  return [...amounts.keys()].map((id, index) => ({ id, total: rounded[index] ?? 0 }));
}
