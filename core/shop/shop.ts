import { z } from "zod";
import { buildSchema } from "./build.ts";
import { calendarSchema } from "./calendar.ts";
import { costingSchema } from "./costing.ts";
import { feedstockSchema } from "./feedstock.ts";
import { name } from "./fields.ts";
import { machineSchema } from "./machine.ts";
import { orderSchema } from "./order.ts";
import { partSchema } from "./part.ts";
import { purchaseCaseSchema } from "./purchase-case.ts";
import { quoteSchema } from "./quote.ts";
import { sellerSchema } from "./seller.ts";

/** The number that a shop document of this version carries. */
export const SHOP_SCHEMA = 1;

/** One workshop: everything a plan needs. This schema is the single definition; types are inferred from it. */
export const shopSchema = z.strictObject({
  schema: z.literal(SHOP_SCHEMA).describe("version of this document"),
  name: name.describe("name of the works"),
  timeZone: z.string().describe("IANA time zone of the works, such as Europe/Berlin"),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, "must be three capital letters by ISO 4217")
    .describe("currency of every amount, ISO 4217"),
  display: z
    .strictObject({
      length: z.enum(["mm", "in"]).describe("unit of length on screen and paper"),
      mass: z.enum(["kg", "lb"]).describe("unit of mass on screen and paper"),
    })
    .describe("units shown"),
  costing: costingSchema.describe("money rules"),
  seller: sellerSchema.optional().describe("who offers, printed on quotes; left out: not entered yet"),
  calendars: z.array(calendarSchema).describe("when people are there"),
  machines: z.array(machineSchema).describe("machines"),
  feedstocks: z.array(feedstockSchema).describe("feedstocks"),
  parts: z.array(partSchema).describe("parts"),
  orders: z.array(orderSchema).describe("order lines"),
  builds: z.array(buildSchema).describe("committed, running and finished builds"),
  quotes: z.array(quoteSchema).default([]).describe("quotes, open and decided"),
  cases: z.array(purchaseCaseSchema).default([]).describe("purchases that are being judged"),
});

export type Shop = z.infer<typeof shopSchema>;
