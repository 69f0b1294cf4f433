import { z } from "zod";
import { notNegative } from "./fields.ts";

/** The shop's money rules. Amounts are in major units of the shop's currency. */
export const costingSchema = z.strictObject({
  labourPerH: notNegative.describe("cost of one hour of an operator, wage and on-costs, per h"),
  engineeringPerH: notNegative.describe("cost of one hour of preparing tool paths, per h"),
  engineeringFilamentH: notNegative.describe(
    "hours to prepare tool paths once for a new part on a filament machine, h",
  ),
  engineeringPelletH: notNegative.describe(
    "hours to prepare tool paths once for a new part on a pellet machine, h",
  ),
  energyPerKWh: notNegative.describe("price of electricity, per kWh"),
  floorPerM2Year: notNegative.describe("cost of floor area, per square metre and year"),
  interestPctPerYear: notNegative.describe("imputed interest on tied-up capital, % per year"),
  interestOn: z
    .enum(["mean-capital", "half-purchase"])
    .describe(
      "variant of imputed interest: mean-capital is rate x (purchase + residual)/2, half-purchase is rate x purchase/2",
    ),
  overheadPct: notNegative.describe(
    "overhead as % of all costs of making (not of buying out, not of lateness)",
  ),
  marginPct: notNegative.describe("margin of quotes, %, of what `marginOn` says"),
  marginOn: z
    .enum(["price", "cost"])
    .optional()
    .describe("what the margin is a share of: price (margin) or cost (mark-up); left out: price"),
  minimumOrder: notNegative
    .optional()
    .describe("least that one quote comes to, currency; left out: no minimum"),
  defaultLateCostPerDay: notNegative.describe(
    "cost of one order being late by one day, when the order names none, per day",
  ),
  moveCostPerBuild: notNegative
    .optional()
    .describe(
      "cost of moving or dropping one build that an earlier plan has put in place and nobody has committed, per build; left out: 0",
    ),
});

export type Costing = z.infer<typeof costingSchema>;
