import { z } from "zod";
import { day, id, notNegative, positive } from "./fields.ts";

const wholeCopies = z.int("must be a whole number").min(1, "must be at least 1");

/** One order line of the past, such as a row of a CSV file. */
const demandRowSchema = z.strictObject({
  dueOn: day.describe("due date, local date"),
  partId: id.describe("part"),
  quantity: wholeCopies.describe("copies ordered"),
  pricePerPiece: notNegative.optional().describe("agreed price of one copy, currency"),
  lateCostPerDay: notNegative
    .optional()
    .describe("cost of the whole line being late by one day, currency per day; left out: the shop's"),
  allowLate: z.boolean().optional().describe("false: a promise that must hold; left out: true"),
});

/** Orders of one part as somebody expects them. */
const typedDemandSchema = z.strictObject({
  partId: id.describe("part"),
  ordersPerWeek: positive.describe("mean number of order lines per week; each week draws its own number"),
  quantity: wholeCopies.describe("copies per order line"),
  pricePerPiece: notNegative.optional().describe("price of one copy, currency"),
  lateCostPerDay: notNegative
    .optional()
    .describe("cost of a line being late by one day, currency per day; left out: the shop's"),
  allowLate: z.boolean().optional().describe("false: a promise that must hold; left out: true"),
});

/** Where the weekly demand comes from. */
export const demandSourceSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("orders"),
    from: day.optional().describe("first due date that counts, local date; left out: the first there is"),
    to: day.optional().describe("last due date that counts, included; left out: the last there is"),
  }),
  z.strictObject({
    kind: z.literal("rows"),
    rows: z.array(demandRowSchema).describe("order lines of the past"),
  }),
  z.strictObject({
    kind: z.literal("typed"),
    lines: z.array(typedDemandSchema).describe("what is expected in a mean week"),
  }),
]);

export type DemandRow = z.infer<typeof demandRowSchema>;
export type DemandSource = z.infer<typeof demandSourceSchema>;
export type TypedDemand = z.infer<typeof typedDemandSchema>;
