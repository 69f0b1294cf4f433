import { COST_KINDS, type CostLine } from "../../../core/cost/cost-line.ts";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { shownCostLines } from "../../../core/report/week-facts.ts";
import { roundToTotal } from "../../../core/units/money.ts";
import { groupBy } from "../../store/group-by.ts";

/** What the total may be opened by first. */
export type CostView = "kind" | "order" | "machine" | "feedstock";

/** An amount with what it is made of. What its parts show adds up to what it shows. */
export interface CostNode {
  /** unique in the tree */
  readonly key: string;
  /** what the label stands for: a kind, an order, a machine, a feedstock, or one line */
  readonly by: CostView | "line";
  /** the kind or the id; "": belongs to none */
  readonly id: string;
  /** unrounded */
  readonly amount: number;
  readonly shown: number;
  readonly lines: readonly CostLine[];
  readonly children: () => readonly CostNode[];
}

const THEN: Readonly<Record<CostView, CostView>> = {
  kind: "order",
  order: "kind",
  machine: "kind",
  feedstock: "kind",
};

/**
 * The total of a plan opened by a view, then by a second one, then into its lines. Every level is rounded by largest remainder
 * to what its parent shows, so that the shown parts always add up. Example: 1.00 of three lines of 0.333: 0.34, 0.33, 0.33.
 */
export function costTree(plan: PlanDocument, view: CostView): CostNode[] {
  const lines = shownCostLines(plan).map(({ line }) => line);
  const groups = grouped(lines, view, plan.cost.total, plan.currency, "");
  return inOrder(groups, view);
}

function grouped(
  lines: readonly CostLine[],
  by: CostView,
  shownTotal: number,
  currency: string,
  parent: string,
): CostNode[] {
  const groups = [...groupBy(lines, (line) => idOf(line, by))];
  const amounts = groups.map(([, own]) => sumOf(own));
  const shown = roundToTotal(amounts, currency, shownTotal);
  return groups.map(([id, own], index) => {
    const key = `${parent}/${by}:${id}`;
    const mine = shown[index] ?? 0;
    const children = remembered(() =>
      parent === ""
        ? inOrder(grouped(own, THEN[by], mine, currency, key), THEN[by])
        : lineNodes(own, mine, currency, key),
    );
    return { key, by, id, amount: amounts[index] ?? 0, shown: mine, lines: own, children };
  });
}

function lineNodes(
  lines: readonly CostLine[],
  shownTotal: number,
  currency: string,
  parent: string,
): CostNode[] {
  const sorted = lines.toSorted((a, b) => b.amount - a.amount);
  const shown = roundToTotal(
    sorted.map(({ amount }) => amount),
    currency,
    shownTotal,
  );
  return sorted.map((line, index) => ({
    key: `${parent}/${index}`,
    by: "line",
    id: line.buildId ?? line.orderId,
    amount: line.amount,
    shown: shown[index] ?? 0,
    lines: [line],
    children: () => [],
  }));
}

/** Kinds in the order in which they are always shown; everything else the largest first. */
function inOrder(nodes: CostNode[], by: CostView): CostNode[] {
  if (by !== "kind") return nodes.toSorted((a, b) => b.amount - a.amount);
  const place = ({ id }: CostNode): number => COST_KINDS.findIndex((kind) => kind === id);
  return nodes.toSorted((a, b) => place(a) - place(b));
}

function idOf(line: CostLine, by: CostView): string {
  if (by === "kind") return line.kind;
  if (by === "order") return line.orderId;
  return (by === "machine" ? line.machineId : line.feedstockId) ?? "";
}

function sumOf(lines: readonly CostLine[]): number {
  return lines.reduce((sum, { amount }) => sum + amount, 0);
}

function remembered<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** A node where it stands in the opened tree. */
export interface ShownNode {
  readonly node: CostNode;
  readonly level: number;
  readonly place: number;
  readonly siblings: number;
  readonly parent: number;
}

/** The rows of a tree as it is opened, from the top. */
export function openedRows(nodes: readonly CostNode[], isOpen: (key: string) => boolean): ShownNode[] {
  const rows: ShownNode[] = [];
  const walk = (siblings: readonly CostNode[], level: number, parent: number): void => {
    for (const [index, node] of siblings.entries()) {
      const row = rows.length;
      rows.push({ node, level, place: index + 1, siblings: siblings.length, parent });
      if (node.by !== "line" && isOpen(node.key)) walk(node.children(), level + 1, row);
    }
  };
  walk(nodes, 1, -1);
  return rows;
}
