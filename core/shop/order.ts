import { z } from "zod";
import { id, instant, notNegative } from "./fields.ts";

/** One line: a quantity of one part for one date. */
export const orderSchema = z.strictObject({
  id: id.describe("id, unique in the list"),
  customer: z.string().describe("customer, as shown"),
  partId: id.describe("part"),
  quantity: z.int("must be a whole number").min(1, "must be at least 1").describe("copies ordered"),
  releaseAt: instant.describe("nothing may start before, instant"),
  dueAt: instant.describe("due date, instant"),
  lateCostPerDay: notNegative
    .optional()
    .describe("cost of the whole line being late by one day, currency per day"),
  pricePerPiece: notNegative.optional().describe("agreed price of one copy, currency"),
  allowLate: z.boolean().describe("false: a promise that must hold"),
  perPiece: z
    .boolean()
    .describe("true: each copy counts when it is finished; false: the line counts when all are"),
  pinned: z
    .strictObject({
      machineId: id.optional().describe("only this machine"),
      feedstockId: id.optional().describe("only this feedstock"),
    })
    .optional()
    .describe("what the planner has fixed"),
  note: z.string().describe("free text"),
});

export type Order = z.infer<typeof orderSchema>;
