import { z } from "zod";
import { shiftSchema } from "./calendar.ts";
import { id, name, notNegative, percent, positive } from "./fields.ts";
import { machineSchema } from "./machine.ts";

const rise = z.number().min(0, "must not be negative").max(1000, "must be at most 1000 %");

/** One thing that a candidate changes in the works. A candidate may change several at once. */
export const purchaseChangeSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("add-machine"),
    machine: machineSchema.describe("the machine, with an id that no other has"),
  }),
  z.strictObject({
    kind: z.literal("add-alike"),
    alike: id.describe("machine of the shop that the new one is like"),
    id: id.describe("id of the new machine"),
    name: name.describe("name of the new machine"),
    calendarId: id.optional().describe("calendar of the people who serve it; left out: as the other's"),
  }),
  z.strictObject({
    kind: z.literal("sell-machine"),
    machineId: id.describe("machine that is sold"),
    proceeds: notNegative.describe("what it brings today, currency"),
    bookValue: notNegative
      .optional()
      .describe("value in the books today, currency; only for tax; left out: the proceeds"),
    laterValue: notNegative
      .optional()
      .describe("what it would have brought at the end of the candidate's life, currency; left out: 0"),
  }),
  z.strictObject({
    kind: z.literal("add-shift"),
    calendarId: id.describe("calendar that gets the shift"),
    shift: shiftSchema.describe("the added shift: a second one, or overtime"),
    premiumPct: rise.describe("premium on the hourly cost of labour in that shift, %"),
    otherWorkPct: percent.describe(
      "share of the shift's paid time that nothing needs to pay for: it is other useful work of the works, %",
    ),
  }),
  z.strictObject({
    kind: z.literal("approve-unattended"),
    machineId: id.describe("machine that the person responsible approves to run with nobody there"),
    mostH: positive.optional().describe("longest stretch with nobody there that is approved, h; none: any"),
  }),
  z.strictObject({
    kind: z.literal("buy-out"),
    partId: id.describe("part that may be had from elsewhere"),
    pricePerPiece: notNegative.describe("price of one copy made elsewhere, currency"),
    leadTimeDays: notNegative.describe("days from order to delivery"),
  }),
]);

export type PurchaseChange = z.infer<typeof purchaseChangeSchema>;
