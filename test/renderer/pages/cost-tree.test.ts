import { describe, expect, test } from "vitest";
import {
  type CostNode,
  type CostView,
  costTree,
  openedRows,
} from "../../../renderer/pages/costs/cost-tree.ts";
import { aPlan } from "../../fixtures/a-plan.ts";

const PLAN = aPlan();
const VIEWS: readonly CostView[] = ["kind", "order", "machine", "feedstock"];
const IN_MINOR = 100;

function minorSum(nodes: readonly CostNode[]): number {
  return nodes.reduce((sum, { shown }) => sum + Math.round(shown * IN_MINOR), 0);
}

describe("a total opened", () => {
  test("shows parts that add up to the cent on every level of every view", () => {
    let checked = 0;
    const check = (node: CostNode): void => {
      const children = node.children();
      if (children.length === 0) return;
      checked += 1;
      expect(minorSum(children), node.key).toBe(Math.round(node.shown * IN_MINOR));
      for (const child of children) check(child);
    };
    for (const view of VIEWS) {
      const tree = costTree(PLAN, view);
      expect(minorSum(tree), view).toBe(Math.round(PLAN.cost.total * IN_MINOR));
      for (const node of tree) check(node);
    }
    expect(checked).toBeGreaterThan(100);
  });

  test("shows the same by order as the plan itself", () => {
    const shown = new Map(costTree(PLAN, "order").map(({ id, shown: amount }) => [id, amount]));
    for (const { id, total } of PLAN.cost.byOrder) expect(shown.get(id) ?? 0, id).toBeCloseTo(total, 6);
  });

  test("ends in lines with a formula and inputs, none lost and none twice", () => {
    const all = PLAN.builds.flatMap(({ costLines }) => costLines).length + PLAN.costLines.length;
    for (const view of VIEWS) {
      const leaves = costTree(PLAN, view).flatMap((node) =>
        node.children().flatMap((child) => child.children()),
      );
      expect(leaves.length, view).toBe(all);
      expect(leaves.every(({ lines }) => (lines[0]?.formula ?? "") !== "")).toBe(true);
    }
  });
});

test("rows of an opened tree know their level, place and parent", () => {
  const tree = costTree(PLAN, "kind");
  const first = tree[0]!;
  const rows = openedRows(tree, (key) => key === first.key);
  expect(rows.length).toBe(tree.length + first.children().length);
  expect(rows[1]).toMatchObject({ level: 2, place: 1, parent: 0, siblings: first.children().length });
  expect(rows.at(-1)).toMatchObject({ level: 1, place: tree.length, parent: -1 });
});
