import { z } from "zod";
import { COST_KINDS } from "../cost/cost-line.ts";
import { buildSchema } from "../shop/build.ts";
import { id, instant, name, notNegative } from "../shop/fields.ts";

/** The number that a plan document of this version carries. */
export const PLAN_SCHEMA = 1;

const copies = z.int().min(1).describe("copies");

export const costLineSchema = z.strictObject({
  kind: z.enum(COST_KINDS).describe("kind of cost"),
  amount: z.number().describe("amount, currency"),
  formula: z.string().describe("how the amount is made, in words and symbols"),
  inputs: z
    .array(
      z.strictObject({
        name: z.string().describe("what the number is"),
        value: z.number().describe("the number"),
        unit: z.string().describe("its unit"),
      }),
    )
    .describe("the numbers in the formula"),
  orderId: id.describe("order it belongs to"),
  machineId: id.optional().describe("machine it belongs to"),
  feedstockId: id.optional().describe("feedstock it belongs to"),
  buildId: id.optional().describe("build it belongs to"),
});

const kindTotals = z.strictObject({
  feedstock: z.number().describe("feedstock, currency"),
  machine: z.number().describe("machine hours, currency"),
  labour: z.number().describe("operators, currency"),
  engineering: z.number().describe("tool paths of new parts, currency"),
  changeover: z.number().describe("changeovers and purge, currency"),
  finishing: z.number().describe("finishing, currency"),
  expectedFailure: z.number().describe("expected cost of failed builds, currency"),
  overhead: z.number().describe("overhead, currency"),
  buyOut: z.number().describe("bought out, currency"),
  late: z.number().describe("lateness, currency"),
  moving: z.number().default(0).describe("moving builds of an earlier plan, currency"),
});

const view = z.array(
  z.strictObject({
    id: z.string().describe("id of the order, machine or feedstock; empty: belongs to none"),
    total: z.number().describe("its share of the total, currency, rounded"),
  }),
);

export const planCostSchema = z.strictObject({
  byKind: kindTotals.describe("total by kind of cost, rounded to minor units, adding up to the total"),
  byOrder: view.describe("the same total by order"),
  byMachine: view.describe("the same total by machine"),
  byFeedstock: view.describe("the same total by feedstock"),
  total: z.number().describe("total, currency, rounded"),
});

const reason = z.strictObject({
  code: z.string().describe("code of the reason"),
  sentence: z.string().describe("the reason as a sentence"),
});

const hourPrice = z.strictObject({
  from: instant.describe("start of the staffed time, instant"),
  to: instant.describe("end of the staffed time, instant"),
  moreSavesPerH: notNegative.describe("what one more hour there would save, currency per h"),
  lessCostsPerH: notNegative.describe("what one hour less there would cost, currency per h"),
});

/** One planning run. Times carry the works' own offset. */
export const planSchema = z.strictObject({
  schema: z.literal(PLAN_SCHEMA).describe("version of this document"),
  shopName: name.describe("name of the works"),
  currency: z.string().describe("currency of every amount, ISO 4217"),
  timeZone: z.string().describe("IANA time zone of the works"),
  plannedFrom: instant.describe("start of the plan, instant"),
  horizonDays: z.int().min(1).describe("days planned"),
  seed: z.int().describe("seed of the search"),
  status: z.enum(["complete", "stopped"]).describe("stopped: somebody ended the search before its time"),
  enoughPct: notNegative
    .optional()
    .describe("the search ended early: at most so much was left to gain, as asked for, %"),
  builds: z
    .array(
      buildSchema.extend({
        changeoverMin: notNegative.describe("part of the set-up that is changeover, min"),
        massKg: notNegative.describe("feedstock it uses, without scrap, kg"),
        costLines: z.array(costLineSchema).describe("its cost lines"),
      }),
    )
    .describe("builds in order of set-up start; committed and running ones come through untouched"),
  boughtOut: z
    .array(
      z.strictObject({
        orderId: id.describe("order"),
        copies,
        arriveAt: instant.describe("delivery, instant"),
        cost: z.number().describe("price of the copies, currency"),
      }),
    )
    .describe("copies made elsewhere"),
  unplanned: z
    .array(
      z.strictObject({
        orderId: id.describe("order"),
        copies: z.int().min(0).describe("copies; 0: the order's quantity cannot be read"),
        reasons: z.array(reason).describe("why"),
      }),
    )
    .describe("copies that have no place in the plan; nothing is dropped silently"),
  orders: z
    .array(
      z.strictObject({
        orderId: id.describe("order"),
        finishedAt: instant
          .nullable()
          .describe("last planned copy off the machine or delivered; null: not planned"),
        dueAt: instant.describe("due date, instant"),
        lateMin: notNegative.describe("late by, min"),
        lateCost: notNegative.describe("cost of being late, currency"),
        cost: z.number().describe("all cost of the order, currency"),
        why: z.array(z.string()).describe("why it is late or unplanned, and what would help"),
      }),
    )
    .describe("every open order"),
  costLines: z
    .array(costLineSchema)
    .describe("cost lines that belong to no build: engineering, buying out, lateness, moving"),
  replan: z
    .strictObject({
      costPerBuild: notNegative.describe("cost of moving or dropping one build, currency"),
      earlierBuilds: z.int().min(0).describe("builds of the earlier plan that are still ahead and open"),
      keptBuilds: z
        .int()
        .min(0)
        .describe("of these: same machine, nozzle, feedstock and items, and about the same start"),
      movedIds: z.array(id).describe("ids of the others"),
      stayCost: z
        .number()
        .nullable()
        .describe(
          "what a plan costs that leaves all of them in place, currency; null: it plans fewer copies",
        ),
    })
    .optional()
    .describe("what became of the builds of an earlier plan; left out: there were none"),
  cost: planCostSchema.describe("one total in its views, equal to the cent"),
  bound: z
    .strictObject({
      value: z.number().describe("no plan can cost less, currency"),
      gapPct: z.number().describe("what the plan costs above it, %"),
      from: z.string().describe("how it was proven"),
    })
    .describe("proven lower bound on the total"),
  prices: z
    .strictObject({
      machineHour: z
        .array(hourPrice.extend({ machineIds: z.array(id).describe("the machines that are alike") }))
        .describe("price of a staffed machine hour"),
      operatorHour: z
        .array(hourPrice.extend({ calendarId: id.describe("calendar") }))
        .describe("price of an operator's hour"),
    })
    .describe("what one more hour would save and one less would cost, confirmed by solving again"),
  feedstockNeeds: z
    .array(
      z.strictObject({
        feedstockId: id.describe("feedstock"),
        needKg: notNegative.describe("needed, with purge, waste and expected scrap, kg"),
        stockKg: notNegative.describe("in stock, kg"),
        buyKg: notNegative.describe("to buy, whole packs, kg"),
        packs: z.int().min(0).describe("packs to buy"),
        orderBy: instant.nullable().describe("order by; null: stock is enough"),
        arriveAt: instant
          .optional()
          .describe("when it comes if ordered at the start of the plan; left out: nothing is to be bought"),
        tooEarly: z
          .array(id)
          .optional()
          .describe("builds that begin before that although the stock is used up; left out: none"),
        note: z.string().describe("what a buyer should know"),
      }),
    )
    .describe("what the plan needs and what to buy by when"),
  tasks: z
    .array(
      z.strictObject({
        at: instant.describe("start, instant"),
        endAt: instant.describe("end, instant"),
        kind: z.enum(["dry", "changeOver", "setUp", "unload", "finish"]).describe("kind of work"),
        machineId: id.nullable().describe("machine; null: none"),
        buildId: id.describe("build"),
        alsoFor: z.array(id).optional().describe("other builds that the same drying is for"),
        text: z.string().describe("what to do, in words"),
      }),
    )
    .describe("operators' tasks in time order"),
  handRules: z
    .array(
      z.strictObject({
        name: z.string().describe("the rule in words"),
        cost: z.number().describe("cost of the plan it makes, currency"),
        lateOrders: z.int().min(0).describe("orders late in it"),
        unplannedCopies: z.int().min(0).describe("copies it finds no place for; its cost is without them"),
      }),
    )
    .describe("what two rules of thumb would have cost"),
  elapsed: z
    .strictObject({
      firstPlanS: notNegative.describe("until the first valid plan, s"),
      totalS: notNegative.describe("in all, s"),
    })
    .describe("time taken"),
});

export type PlanDocument = z.infer<typeof planSchema>;
export type PlannedBuild = PlanDocument["builds"][number];
export type OperatorTask = PlanDocument["tasks"][number];
export type PlanCost = z.infer<typeof planCostSchema>;
export type UnplannedReason = z.infer<typeof reason>;
