import { z } from "zod";
import { id, instant, notNegative, percent } from "./fields.ts";

/** Copies of one part at one price, in steps of quantity. */
const priceBreak = z.strictObject({
  quantity: z.int().min(1, "must be at least 1").describe("from so many copies on"),
  pricePerPiece: notNegative.describe("price of one copy, currency"),
});

/** One part in one quantity, with what is asked for it and what is promised. */
export const quoteLineSchema = z.strictObject({
  id: id.describe("id, unique in the quote"),
  partId: id.describe("part"),
  quantity: z.int("must be a whole number").min(1, "must be at least 1").describe("copies asked for"),
  wantedAt: instant.nullable().describe("date that the customer wants, instant; null: none named"),
  allowLate: z.boolean().describe("false: once accepted, the promised date must hold"),
  machineId: id.optional().describe("only this machine"),
  feedstockId: id.optional().describe("only this feedstock"),
  pricePerPiece: notNegative.nullable().describe("price of one copy, currency; null: not priced yet"),
  oneOffPrice: notNegative.describe(
    "tool paths and first set-up, charged apart once, currency; 0: in the price of the copies",
  ),
  breaks: z.array(priceBreak).describe("price of one copy at other quantities"),
  promisedAt: instant.nullable().describe("date promised, instant; null: none yet"),
  likelihoodPct: percent.nullable().describe("how likely that date is kept, %; null: not simulated"),
  unitCost: notNegative.nullable().describe("what one copy costs to make, currency; null: not known"),
  orderId: id.optional().describe("order line that it became"),
});

/** A price and a date offered to a customer for one or several parts. */
export const quoteSchema = z.strictObject({
  id: id.describe("number of the quote as shown, unique in the list"),
  customer: z.string().describe("customer, as shown"),
  customerAddress: z.string().describe("address of the customer, lines as shown"),
  askedAt: instant.describe("asked for on, instant"),
  validUntil: instant.describe("price and dates hold until, instant"),
  state: z.enum(["draft", "sent", "accepted", "declined"]).describe("state"),
  decidedAt: instant.optional().describe("accepted or declined on, instant"),
  reason: z.string().describe("why it was declined; empty: not said"),
  note: z.string().describe("free text, printed"),
  minimumSurcharge: notNegative
    .optional()
    .describe("what is added to reach the smallest order, currency; left out: nothing"),
  lines: z.array(quoteLineSchema).min(1, "asks for nothing").describe("what is asked for"),
});

export type Quote = z.infer<typeof quoteSchema>;
export type QuoteLine = z.infer<typeof quoteLineSchema>;
