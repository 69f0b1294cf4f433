import { z } from "zod";
import { name } from "./fields.ts";

/** Who offers: printed at the head of a quote. */
export const sellerSchema = z.strictObject({
  name: name.describe("name of the seller"),
  address: z.string().describe("address, lines as shown"),
  contact: z.string().describe("person, telephone, mail, as shown"),
  taxNumber: z.string().describe("number for tax, as shown; empty: none"),
  terms: z.string().describe("terms of payment and delivery, as shown"),
  validDays: z
    .int("must be a whole number")
    .min(1, "must be at least 1")
    .describe("days for which a new quote holds"),
});

export type Seller = z.infer<typeof sellerSchema>;
