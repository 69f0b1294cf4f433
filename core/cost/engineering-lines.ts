import type { Process } from "../shop/machine.ts";
import type { CostLine } from "./cost-line.ts";
import { engineeringCost, engineeringH } from "./engineering-cost.ts";
import { overheadLine } from "./overhead-line.ts";
import type { PriceBook } from "./price-book.ts";

/** An order that uses tool paths, and for how many copies. */
export interface EngineeringUser {
  readonly orderId: string;
  readonly copies: number;
}

/**
 * Cost lines of one new part's tool paths for one process: paid once, shared by copies among the orders that use them,
 * each with its overhead. Hard paths take `factor` times the hours. Example: 120 for orders of 3 and 1 copies gives 90 and 30.
 */
export function engineeringLines(
  book: PriceBook,
  users: readonly EngineeringUser[],
  process: Process,
  factor: number,
): CostLine[] {
  const cost = engineeringCost(process, book.costing, factor);
  const copies = users.reduce((sum, user) => sum + user.copies, 0);
  if (!(copies > 0)) throw new RangeError("tool paths that no copy uses belong to no order");
  if (cost === 0) return [];
  const isHard = factor !== 1;
  return users.flatMap((user) => {
    const line: CostLine = {
      kind: "engineering",
      amount: (cost * user.copies) / copies,
      formula: `copies / all copies x hours of preparing tool paths x ${isHard ? "factor of hard paths x " : ""}engineering rate`,
      inputs: [
        { name: "copies", value: user.copies, unit: "copies" },
        { name: "all copies", value: copies, unit: "copies" },
        { name: "hours of preparing tool paths", value: engineeringH(process, book.costing, 1), unit: "h" },
        ...(isHard ? [{ name: "factor of hard paths", value: factor, unit: "" }] : []),
        { name: "engineering rate", value: book.costing.engineeringPerH, unit: `${book.currency}/h` },
      ],
      orderId: user.orderId,
    };
    return [line, ...overheadLine(book, [line], { orderId: user.orderId })];
  });
}
