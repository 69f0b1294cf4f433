import { z } from "zod";
import { day, id, name, notNegative, percent, positive } from "./fields.ts";
import { purchaseChangeSchema } from "./purchase-change.ts";
import { demandSourceSchema } from "./purchase-demand.ts";

/** The number that a case document (`*.case.json`) of this version carries. */
export const CASE_SCHEMA = 1;

const ratePct = z
  .number()
  .gt(-100, "must be above -100 %: at -100 % money is worth nothing a year later")
  .lt(100, "must be below 100 % per year: 8 means 8 %");

/** One thing that could be bought or done: a machine, a sale, a shift, an approval, buying out, or several of them as one. */
export const candidateSchema = z.strictObject({
  id: id.describe("id, unique in the case"),
  name: name.describe("name, as shown"),
  changes: z.array(purchaseChangeSchema).min(1, "changes nothing").describe("what it changes in the works"),
  price: notNegative.describe("price paid at the start, currency"),
  installation: notNegative.describe("installation paid at the start, currency"),
  training: notNegative.describe("training paid at the start, currency"),
  yearlyCost: notNegative.describe(
    "cash each year beside the machines' own floor, maintenance and energy and the shifts' wages, currency per year",
  ),
  lifeYears: z
    .int("must be a whole number of years")
    .min(1, "must be at least 1 year")
    .max(50, "must be at most 50 years")
    .describe("useful life, years"),
  residualValue: notNegative.describe("what it brings at the end of its life, currency"),
});

const financingSchema = z.strictObject({
  discountPctPerYear: ratePct.describe(
    "discount rate, % per year, nominal; it is the cost of the money tied up",
  ),
  reinvestPctPerYear: ratePct
    .optional()
    .describe(
      "rate at which returns are invested again, for the modified rate, % per year; left out: the discount rate",
    ),
  taxPct: z
    .number()
    .min(0, "must not be negative")
    .lt(100, "must be below 100 %")
    .describe("tax on the yearly gain, %; 0: before tax"),
  depreciation: z
    .enum(["none", "straight-line"])
    .describe(
      "what lowers the taxed gain: straight-line spreads price less residual value evenly over the life",
    ),
});

/** A question about money: is one of the candidates worth it, against a demand and in this shop. */
export const purchaseCaseSchema = z.strictObject({
  id: id.describe("id, unique in the list"),
  name: name.describe("name, as shown"),
  note: z.string().describe("free text"),
  startsOn: day.describe("first day of the time looked at, local date; its ISO week is the first week"),
  demand: demandSourceSchema.describe("where the weekly demand comes from"),
  growthPctPerYear: z
    .number()
    .gt(-100, "must be above -100 %: at -100 % nobody orders any more")
    .max(1000, "must be at most 1000 % per year")
    .describe("growth of the number of orders, % per year"),
  seasonByMonth: z
    .array(z.number().min(0, "must not be negative").max(100, "must be at most 100"))
    .length(12, "needs one factor for each of the 12 months")
    .optional()
    .describe("orders of each month over those of a mean month, January first; left out: no season"),
  patienceWeeks: z
    .int("must be a whole number of weeks")
    .min(0, "must not be negative")
    .max(520, "must be at most 520 weeks")
    .describe("an order is lost when it is later than this, weeks"),
  assumedMarginPct: percent
    .optional()
    .describe(
      "margin on price by which an order without an agreed price is valued, %; left out: the shop's margin",
    ),
  givenRateCashPct: percent
    .optional()
    .describe(
      "share of a machine-hour rate given as one number that is cash for each hour in use (energy, wear), %; left out: 0",
    ),
  candidates: z.array(candidateSchema).describe("what could be bought or done"),
  financing: financingSchema.describe("rates"),
  weeks: z
    .int("must be a whole number of weeks")
    .min(1, "must be at least 1")
    .max(520, "must be at most 520")
    .describe("weeks planned in each scenario"),
  scenarios: z
    .int("must be a whole number")
    .min(1, "must be at least 1")
    .max(1000, "must be at most 1000")
    .describe("scenarios of demand"),
  seed: z
    .int("must be a whole number")
    .min(0, "must not be negative")
    .describe("seed of the scenarios: the same seed gives the same weeks"),
  budget: positive
    .nullable()
    .describe("most that may be paid at the start for everything together, currency; null: no limit"),
});

/** A case as a file of its own. */
export const caseFileSchema = purchaseCaseSchema.extend({
  schema: z.literal(CASE_SCHEMA).describe("version of this document"),
});

export type PurchaseCase = z.infer<typeof purchaseCaseSchema>;
export type Candidate = z.infer<typeof candidateSchema>;
export type Financing = z.infer<typeof financingSchema>;
