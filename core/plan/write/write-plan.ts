import { costViews } from "../../cost/cost-views.ts";
import { displayWords } from "../../shop/display-words.ts";
import type { Shop } from "../../shop/shop.ts";
import { minorUnitDigits } from "../../units/currency.ts";
import { roundMoney } from "../../units/money.ts";
import { nearlyEqual } from "../../units/tolerance.ts";
import type { Unplannable } from "../compile/compile-problem.ts";
import { feedstockNeeds } from "./feedstock-needs.ts";
import { fixedBuilds } from "./fixed-builds.ts";
import { documentPrices } from "./document-prices.ts";
import type { HourPrices } from "../bound/hour-prices.ts";
import { lineOutcomes } from "./line-outcomes.ts";
import { nearestFirst } from "./nearest-first.ts";
import { operatorTasks } from "./operator-tasks.ts";
import { orderOutcomes } from "./order-outcomes.ts";
import { planCostLines } from "./plan-cost-lines.ts";
import { movingLines, replanDocument, replanFacts } from "./replan-facts.ts";
import { PLAN_SCHEMA } from "../plan-document.ts";
import type { PlanDocument, PlannedBuild } from "../plan-document.ts";
import type { PlanProblem } from "../plan-problem.ts";
import { at } from "../at.ts";
import { openPlanSource } from "./plan-source.ts";
import type { PlanSource } from "./plan-source.ts";
import { plainLine, writeBuilds } from "./planned-builds.ts";
import { copiesLeftOut, type Schedule } from "../schedule.ts";
import { unplacedCopies } from "./unplanned-reasons.ts";

/** All that a plan document is made of. */
export interface WritePlanInput {
  readonly shop: Shop;
  readonly problem: PlanProblem;
  readonly schedule: Schedule;
  /** copies that no plan could hold, by compiling or because their entry cannot be used */
  readonly unplannable: readonly Unplannable[];
  readonly request: { readonly fromMin: number; readonly days: number; readonly seed: number };
  readonly bound: { readonly value: number; readonly from: string };
  readonly prices: HourPrices;
  /** the plan that leaves builds of an earlier one where they were; null or left out: there is none */
  readonly stay?: Schedule | null;
  /** what rules of thumb would have planned */
  readonly handRules: readonly { readonly name: string; readonly schedule: Schedule }[];
  readonly elapsed: PlanDocument["elapsed"];
  readonly status: PlanDocument["status"];
  /** the search ended early with at most so much left to gain, % */
  readonly enoughPct?: number;
}

/**
 * Turns a schedule into the document that people, reports and `check-plan` read: builds with their cost lines, every open
 * order with its lateness and why, one total in its views, feedstock to buy, the operators' tasks. The lines add up to the
 * schedule's own cost, or this throws: two sums of the same money that differ are a programmer's mistake.
 */
export function writePlan(input: WritePlanInput): PlanDocument {
  const { shop, problem, request } = input;
  const source = openPlanSource(shop, problem, input.schedule);
  const words = displayWords(shop);
  const replan = replanFacts(source);
  const planned = writeBuilds(source, replan.kept);
  const fixed = fixedBuilds(source);
  const builds = inTimeOrder(source, [...fixed, ...planned.map(({ document }) => document)]);
  const outcomes = lineOutcomes(source);
  const costLines = [...planCostLines(source, outcomes), ...movingLines(source, replan)];
  const lines = [...planned.flatMap((build) => build.lines), ...costLines];
  checkTotal(lines, input.schedule);
  const cost = costViews(lines, shop.currency);
  const replanned = replanDocument(source, replan, input.stay ?? null);
  const prices = documentPrices(source, input.prices);
  const unplanned = [...input.unplannable, ...unplacedCopies(source)].map((entry) => ({
    ...entry,
    reasons: nearestFirst(entry.reasons).map(({ code, sentence }) => ({ code, sentence: words(sentence) })),
  }));
  return {
    schema: PLAN_SCHEMA,
    shopName: shop.name,
    currency: shop.currency,
    timeZone: shop.timeZone,
    plannedFrom: source.instant(request.fromMin),
    horizonDays: request.days,
    seed: request.seed,
    status: input.status,
    ...(input.enoughPct === undefined ? {} : { enoughPct: input.enoughPct }),
    builds,
    boughtOut: boughtOut(source),
    unplanned,
    orders: orderOutcomes({
      source,
      lines: outcomes,
      fixed,
      unplanned,
      prices,
      costByOrder: cost.byOrder,
    }),
    costLines: costLines.map(plainLine),
    ...(replanned ? { replan: replanned } : {}),
    cost,
    bound: boundOf(input.bound, cost.total, shop.currency),
    prices,
    feedstockNeeds: feedstockNeeds(source, builds, request.fromMin),
    tasks: operatorTasks(source, builds, request.fromMin).map((task) => ({
      ...task,
      text: words(task.text),
    })),
    handRules: input.handRules.map((rule) => handRule(input, rule)),
    elapsed: input.elapsed,
  };
}

function inTimeOrder(source: PlanSource, builds: readonly PlannedBuild[]): PlannedBuild[] {
  const place = new Map(source.shop.machines.map((machine, index) => [machine.id, index]));
  return builds.toSorted(
    (a, b) =>
      source.minute(a.setUpStart) - source.minute(b.setUpStart) ||
      (place.get(a.machineId) ?? 0) - (place.get(b.machineId) ?? 0),
  );
}

function checkTotal(lines: readonly { readonly amount: number }[], schedule: Schedule): void {
  const total = lines.reduce((sum, { amount }) => sum + amount, 0);
  if (nearlyEqual(total, schedule.cost, TOTAL_TOLERANCE)) return;
  throw new Error(`the cost lines add up to ${total}, the schedule says ${schedule.cost}`);
}

/** Relative. */
const TOTAL_TOLERANCE = 1e-6;

function boughtOut({ problem, schedule, shop, instant }: PlanSource): PlanDocument["boughtOut"] {
  return schedule.boughtOut.map(({ lineIndex, copies }) => {
    const { orderId, buyOut } = at(problem.lines, lineIndex);
    if (!buyOut) throw new Error(`order ${orderId} cannot be bought out`);
    const cost = roundMoney(copies * buyOut.pricePerPiece, shop.currency);
    return { orderId, copies, arriveAt: instant(buyOut.arriveMin), cost };
  });
}

/** Rounded down, so that the rounded bound is one too; without a bound above 0 the whole cost counts as gap. */
function boundOf(bound: WritePlanInput["bound"], total: number, currency: string): PlanDocument["bound"] {
  const perMajor = 10 ** minorUnitDigits(currency);
  const value = Math.max(0, Math.floor(bound.value * perMajor) / perMajor);
  if (value > 0) return { value, gapPct: (total / value - 1) * 100, from: bound.from };
  return { value, gapPct: total > 0 ? WHOLE_PCT : 0, from: bound.from };
}

const WHOLE_PCT = 100;

function handRule(
  { shop, problem }: WritePlanInput,
  { name, schedule }: WritePlanInput["handRules"][number],
): PlanDocument["handRules"][number] {
  const late = lineOutcomes(openPlanSource(shop, problem, schedule)).filter(
    ({ lateness }) => lateness.lateMin > 0,
  );
  return {
    name,
    cost: roundMoney(schedule.cost, shop.currency),
    lateOrders: late.length,
    unplannedCopies: copiesLeftOut(schedule),
  };
}
