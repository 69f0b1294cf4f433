import type { CostLine } from "./cost-line.ts";
import { overheadCost } from "./overhead-cost.ts";
import type { PriceBook } from "./price-book.ts";

/** To what a line belongs. */
export type LineOwner = Pick<CostLine, "orderId" | "machineId" | "feedstockId" | "buildId">;

/**
 * The overhead on some lines of making that belong to one order, as a line of its own; none where there is no overhead.
 * Example: 10 % on lines of 0.84, 14.9, 9 and 7.2 gives one line of 3.194.
 */
export function overheadLine(book: PriceBook, making: readonly CostLine[], owner: LineOwner): CostLine[] {
  const base = making.reduce((sum, line) => sum + line.amount, 0);
  const amount = overheadCost(base, book.costing);
  if (amount === 0) return [];
  return [
    {
      kind: "overhead",
      amount,
      formula: "cost of making x overhead",
      inputs: [
        { name: "cost of making", value: base, unit: book.currency },
        { name: "overhead", value: book.costing.overheadPct, unit: "%" },
      ],
      ...owner,
    },
  ];
}
