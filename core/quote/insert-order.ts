import { checkPlan } from "../plan/check/check-plan.ts";
import type { Unplannable } from "../plan/compile/compile-problem.ts";
import { NO_HOUR_PRICES } from "../plan/bound/hour-prices.ts";
import type { PlanDocument } from "../plan/plan-document.ts";
import type { PlanProblem } from "../plan/plan-problem.ts";
import type { Schedule } from "../plan/schedule.ts";
import { scheduleCost } from "../plan/search/schedule-cost.ts";
import { writePlan } from "../plan/write/write-plan.ts";
import { instantOf } from "../shop/instants.ts";
import type { Shop } from "../shop/shop.ts";
import { MONEY_TOLERANCE } from "../units/tolerance.ts";
import type { Finding } from "../units/finding.ts";
import { type Answered, answerLines, type Effort } from "./answer-lines.ts";
import { lineEnds } from "./line-ends.ts";
import type { QuoteDesk } from "./quote-desk.ts";
import { orderOf, type QuoteLineRequest } from "./quote-order.ts";

/** How long somebody waits for a plan with the lines. */
export interface InsertLimits {
  /** first: a few ways of putting the lines in; left out: all */
  readonly effort?: Effort;
  /** true: leave out writing and checking the plan's document */
  readonly withoutDocument?: boolean;
}

/** A line asked for, in the plan. */
export interface InsertedLine {
  readonly id: string;
  /** last copy off the machine or delivered, epoch minute; null: it found no place */
  readonly finishedAtMin: number | null;
  /** after the date wanted, min; 0 where none was wanted */
  readonly lateMin: number;
}

/** An order of the standing plan that is finished at another time because of the lines. */
export interface MovedOrder {
  readonly orderId: string;
  readonly wasMin: number;
  readonly isMin: number;
  /** cost of its lateness over what it was; below 0: less */
  readonly extraLateCost: number;
}

/** The standing plan with lines put into it. */
export interface Inserted {
  /** checked; null where it was not asked for */
  readonly plan: PlanDocument | null;
  /** the shop with an order for each line; the plan belongs to it */
  readonly shop: Shop;
  readonly problem: PlanProblem;
  readonly schedule: Schedule;
  /** cost over the standing plan's, without the lines' own lateness */
  readonly extraCost: number;
  readonly lines: readonly InsertedLine[];
  readonly others: readonly MovedOrder[];
  /** true: every line that must not be late is in time */
  readonly isHeld: boolean;
  /** copies of the shop's orders and of the lines that no plan could hold */
  readonly unplannable: readonly Unplannable[];
  readonly findings: readonly Finding[];
}

/**
 * Puts lines into the standing plan at the least cost for their dates: committed and running builds stay untouched, planned
 * builds keep their machine and order, and those that are pushed back are charged with the lateness and the moving that they
 * bring. Lines that cannot be put in come back without a date and with findings that say why. The desk is not changed.
 * Example: a line of 4 copies for Thursday: done on Thursday 11:20, 83.40 more, one other order 20 min later but in time.
 */
export function insertLines(
  desk: QuoteDesk,
  lines: readonly QuoteLineRequest[],
  { effort = "all", withoutDocument = false }: InsertLimits = {},
): Inserted {
  const answered = answerLines(desk, lines, effort);
  const { schedule: found, findings, isHeld } = answered;
  const problem = withDates(desk, answered);
  const schedule = { ...found, cost: scheduleCost(problem, found) };
  const shop = withOrders(desk, answered);
  const plan = withoutDocument ? null : documentOf(desk, { answered, problem, schedule, shop });
  return {
    plan,
    shop,
    problem,
    schedule,
    extraCost: answered.extraCost,
    lines: answered.lines.map(({ line, finishMin }) => ({
      id: line.id,
      finishedAtMin: finishMin,
      lateMin: line.wantedMin === null || finishMin === null ? 0 : Math.max(0, finishMin - line.wantedMin),
    })),
    others: movedOrders(desk, problem, schedule),
    isHeld,
    unplannable: [...desk.unplannable, ...answered.unplannable],
    findings,
  };
}

/** The problem with lines that want no date due when they are finished. */
function withDates({ problem: { lines: standing } }: QuoteDesk, { problem, lines }: Answered): PlanProblem {
  return {
    ...problem,
    lines: problem.lines.map((line) => {
      const asked = lines.find(({ line: { id } }) => id === line.orderId);
      const isFree = line.index >= standing.length && asked?.line.wantedMin === null;
      return isFree ? { ...line, dueMin: asked.finishMin ?? problem.horizonEndMin } : line;
    }),
  };
}

function dueMinOf({ problem }: QuoteDesk, { line, finishMin }: Answered["lines"][number]): number {
  return Math.floor(line.wantedMin ?? finishMin ?? problem.horizonEndMin);
}

function withOrders(desk: QuoteDesk, { lines }: Answered): Shop {
  const { timeZone } = desk.shop;
  const at = (epochMin: number): string => instantOf(epochMin, timeZone);
  const orders = lines
    .filter(({ isAsked }) => isAsked)
    .map((asked) => orderOf(asked.line, at(desk.request.fromMin), at(dueMinOf(desk, asked))));
  return { ...desk.shop, orders: [...desk.shop.orders, ...orders] };
}

function documentOf(
  desk: QuoteDesk,
  made: {
    readonly answered: Answered;
    readonly problem: PlanProblem;
    readonly schedule: Schedule;
    readonly shop: Shop;
  },
): PlanDocument {
  const { answered, problem, schedule, shop } = made;
  const unplannable: Unplannable[] = [...desk.unplannable, ...answered.unplannable];
  const plan = writePlan({
    shop,
    problem,
    schedule,
    unplannable,
    request: desk.request,
    bound: { value: Math.min(desk.bound.value, schedule.cost), from: desk.bound.from },
    prices: NO_HOUR_PRICES,
    handRules: [],
    elapsed: { firstPlanS: 0, totalS: 0 },
    status: "complete",
  });
  const errors = checkPlan(shop, plan).filter(({ severity }) => severity === "error");
  if (errors.length === 0) return plan;
  const sentences = errors.slice(0, 3).map(({ sentence }) => sentence);
  throw new Error(`the plan with the lines failed its check (${errors.length}): ${sentences.join(" ")}`);
}

/** Orders of the standing plan whose finish or lateness is another one now, the dearest first. */
function movedOrders(desk: QuoteDesk, problem: PlanProblem, schedule: Schedule): MovedOrder[] {
  const before = lineEnds(desk.problem, desk.standing);
  const after = lineEnds(problem, schedule);
  return desk.problem.lines
    .flatMap((line): MovedOrder[] => {
      const was = before[line.index];
      const is = after[line.index];
      if (!was || !is || was.finishedMin === null || is.finishedMin === null) return [];
      const extraLateCost = (is.chargedMin - was.chargedMin) * line.lateCostPerMin;
      const isSame = was.finishedMin === is.finishedMin && Math.abs(extraLateCost) < MONEY_TOLERANCE;
      if (isSame) return [];
      return [{ orderId: line.orderId, wasMin: was.finishedMin, isMin: is.finishedMin, extraLateCost }];
    })
    .toSorted((a, b) => b.extraLateCost - a.extraLateCost);
}
