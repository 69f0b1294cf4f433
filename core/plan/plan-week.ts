import type { Shop } from "../shop/shop.ts";
import type { SetAside } from "../shop/usable-shop.ts";
import { type BoundAnswer, proveBound } from "./bound/bound.ts";
import { checkPlan } from "./check/check-plan.ts";
import { chooseEngine, type EngineLoaders } from "./engines/choose-engine.ts";
import { compileProblem, type PlanRequest, type Unplannable } from "./compile/compile-problem.ts";
import { earliestDueCheapest, earliestDueFirstFit } from "./search/hand-rules.ts";
import { hourPrices, type HourPrices, NO_HOUR_PRICES } from "./bound/hour-prices.ts";
import type { LpEngine } from "./linear-program.ts";
import type { PlanDocument } from "./plan-document.ts";
import type { PlanProblem } from "./plan-problem.ts";
import { copiesLeftOut, type Schedule } from "./schedule.ts";
import { searchSchedule, type SearchStart } from "./search/search.ts";
import { stayPlan } from "./search/stay-plan.ts";
import { withoutUnplaced } from "./compile/without-unplaced.ts";
import { writePlan } from "./write/write-plan.ts";

/** What to plan and how long to search. */
export interface WeekRequest extends PlanRequest {
  readonly seed: number;
  /** time for the plan, s, counted from the start of the run; nearly all of it goes to the search */
  readonly seconds: number;
  /** a plan of which at most this much could be saved is good enough, %; none given: search to the end of the time */
  readonly gapPct?: number;
}

/** What is happening, for a progress line. */
export interface PlanProgress {
  readonly stage: string;
  /** cost of the best plan so far, null before the first */
  readonly cost: number | null;
  /** most of it that a better plan could save, %; null before the bound is proven or while copies have no place */
  readonly toGainPct: number | null;
  readonly elapsedS: number;
}

/** One search: where it starts, when it ends, and where better plans are told. */
export interface SearchTask {
  readonly start: SearchStart | null;
  readonly seed: number;
  readonly untilMs: number;
  /** a cost that is good enough to stop at */
  readonly goodEnough: number;
  readonly onBetter: (schedule: Schedule) => void;
  readonly better: (a: Schedule, b: Schedule) => boolean;
}

/** What the outside lends: a clock, the engines, and threads to search on where it has them. */
export interface PlanTools {
  /** a clock, ms */
  readonly now: () => number;
  /** reading of that clock when the run began */
  readonly startedMs: number;
  readonly engines: EngineLoaders;
  /** entries of the shop file that were set aside as unusable */
  readonly setAside?: readonly SetAside[];
  /** told once the first plan is made: from now on threads may take the processors */
  readonly warmUp?: () => void;
  /** searches elsewhere; without it the search runs right here */
  readonly search?: (task: SearchTask) => Promise<Schedule>;
  readonly onProgress?: (progress: PlanProgress) => void;
  readonly stopped?: () => boolean;
}

/** The bound may take this share of the search time. */
const BOUND_SHARE = 0.5;
/** The search has at least this share of the time. */
const SEARCH_SHARE = 0.5;
const LEAST_BOUND_MS = 1000;
/** With the first plan later than asked for the bound still has so long. */
const SHORTEST_BOUND_MS = 300;
/** A bound that time cut short, or that copies without a place made wrong, is proven again for at most this long. */
const SECOND_BOUND_MS = 4000;
const SECOND_BOUND_SHARE = 0.8;
/** Prices of hours are confirmed by re-solving for at most this long. */
const PRICES_MS = 400;
/** The search leaves this share of the time asked for, at most so long, for pricing and checking. */
const END_SHARE = 0.1;
const MOST_END_MS = 500;

/**
 * Plans a shop: first valid plan, proven bound, search on the exact calendar, prices of hours, hand rules for comparison,
 * and the check that no plan escapes. Pure but for the tools: the same request with the same number of search steps gives
 * the same plan. Throws only when the plan fails its own check, which is a programmer's mistake.
 */
export async function planWeek(shop: Shop, request: WeekRequest, tools: PlanTools): Promise<PlanDocument> {
  const run = new WeekRun(request, tools);
  run.tell("reading the shop");
  const { problem, unplannable } = compileProblem(shop, request);
  run.take(firstSchedule(problem, request, tools));
  const firstPlanS = run.elapsedS();
  tools.warmUp?.();
  const stay = problem.replan ? stayPlan(problem) : null;
  if (stay) run.take(stay);
  run.tell("first plan made, proving the bound");
  const engine = await chooseEngine(problem, tools.engines);
  // With no copies to make there is nothing to solve.
  const untilMs = problem.lines.length === 0 ? tools.now() : run.boundUntilMs();
  const firstBound = proveBound(problem, engine, { now: () => run.boundNow(), untilMs });
  run.bound = firstBound.value;
  run.tell("searching");
  run.take(await run.search(problem, firstBound));
  const rules = handRules(problem);
  for (const { schedule } of rules) run.take(schedule);
  const isEnough = run.isEnough();
  run.tell(isEnough ? "good enough as asked, pricing hours and checking" : "pricing hours and checking");
  const schedule = run.best;
  if (!schedule) throw new Error("the search gave no schedule");
  const { bound, prices } = judge(problem, schedule, firstBound, engine, tools, run.secondBoundUntilMs());
  const plan = writePlan({
    shop,
    problem,
    schedule,
    unplannable: [...unplannable, ...setAsideOrders(tools.setAside ?? [])],
    request,
    bound,
    prices,
    stay,
    handRules: rules,
    elapsed: { firstPlanS, totalS: run.elapsedS() },
    status: tools.stopped?.() ? "stopped" : "complete",
    ...(isEnough ? { enoughPct: request.gapPct ?? 0 } : {}),
  });
  return checked(shop, plan);
}

/** State of one run: the best schedule so far and what the progress line shows. */
class WeekRun {
  best: Schedule | null = null;
  bound: number | null = null;
  private readonly request: WeekRequest;
  private readonly tools: PlanTools;

  constructor(request: WeekRequest, tools: PlanTools) {
    this.request = request;
    this.tools = tools;
  }

  elapsedS(): number {
    return (this.tools.now() - this.tools.startedMs) / 1000;
  }

  /**
   * End of the search: the time asked for less what pricing and checking take, but never less for it than its share, however
   * long the bound took.
   */
  untilMs(): number {
    const { now, startedMs } = this.tools;
    const askedMs = this.request.seconds * 1000;
    const endMs = Math.min(MOST_END_MS, askedMs * END_SHARE);
    return Math.max(startedMs + askedMs - endMs, now() + askedMs * SEARCH_SHARE);
  }

  /** The clock of a bound: its time is up as soon as somebody stops. */
  boundNow(): number {
    return this.tools.stopped?.() ? Infinity : this.tools.now();
  }

  /** Time for a bound: its share of the time asked for, or a least one that shrinks as the run falls behind. */
  private boundMs(share: number): number {
    const askedMs = this.request.seconds * 1000;
    const behindMs = Math.max(0, this.elapsedS() * 1000 - askedMs);
    return Math.max(SHORTEST_BOUND_MS, LEAST_BOUND_MS - behindMs, askedMs * share);
  }

  secondBoundUntilMs(): number {
    return this.tools.now() + Math.min(SECOND_BOUND_MS, this.boundMs(SECOND_BOUND_SHARE));
  }

  boundUntilMs(): number {
    return this.tools.now() + this.boundMs(BOUND_SHARE);
  }

  take(schedule: Schedule): void {
    if (this.best === null || isBetter(schedule, this.best)) this.best = schedule;
  }

  tell(stage: string): void {
    const cost = this.best?.cost ?? null;
    const toGainPct = this.best === null || this.bound === null ? null : mostToGainPct(this.best, this.bound);
    this.tools.onProgress?.({ stage, cost, toGainPct, elapsedS: this.elapsedS() });
  }

  /** True where somebody asked for no better plan than the best there is. */
  isEnough(): boolean {
    const { gapPct } = this.request;
    if (gapPct === undefined || this.best === null || this.bound === null) return false;
    return (mostToGainPct(this.best, this.bound) ?? Infinity) <= gapPct + DUST_PCT;
  }

  async search(problem: PlanProblem, bound: BoundAnswer): Promise<Schedule> {
    const task: SearchTask = {
      start: { shares: bound.shares, boughtOut: bound.boughtOut },
      seed: this.request.seed,
      untilMs: this.untilMs(),
      goodEnough: bound.value / (1 - (this.request.gapPct ?? 0) / 100),
      better: isBetter,
      onBetter: (schedule) => {
        this.take(schedule);
        this.tell("searching");
      },
    };
    return this.tools.search ? this.tools.search(task) : searchHere(problem, task, this.tools);
  }
}

/** A gap is a quotient of sums of floating-point numbers. */
const DUST_PCT = 1e-6;

/** Fewer copies without a place beat any money; then the cheaper plan is better. */
export function isBetter(a: Schedule, b: Schedule): boolean {
  const difference = copiesLeftOut(a) - copiesLeftOut(b);
  return difference === 0 ? a.cost < b.cost : difference < 0;
}

/** Share of the cost above the bound. A bound for all copies says nothing about a plan that leaves some out. */
function mostToGainPct(schedule: Schedule, bound: number): number | null {
  if (schedule.unplaced.length > 0 || schedule.cost <= 0) return null;
  return Math.max(0, (1 - bound / schedule.cost) * 100);
}

function firstSchedule(problem: PlanProblem, request: WeekRequest, tools: PlanTools): Schedule {
  return searchSchedule(problem, null, { seed: request.seed, now: tools.now, untilMs: tools.now() });
}

function searchHere(problem: PlanProblem, task: SearchTask, tools: PlanTools): Schedule {
  return searchSchedule(problem, task.start, {
    seed: task.seed,
    now: tools.now,
    untilMs: task.untilMs,
    goodEnough: task.goodEnough,
    onBetter: task.onBetter,
    ...(tools.stopped ? { stopped: tools.stopped } : {}),
  });
}

/** The bound for exactly the copies that the plan holds, and the prices of hours. */
function judge(
  problem: PlanProblem,
  schedule: Schedule,
  firstBound: BoundAnswer,
  engine: LpEngine,
  tools: PlanTools,
  untilMs: number,
): { bound: BoundAnswer; prices: HourPrices } {
  const isStopped = tools.stopped?.() ?? false;
  const isProven = firstBound.sifted.isComplete || isStopped || problem.lines.length === 0;
  const isFinal = isProven && schedule.unplaced.length === 0;
  const limits = { now: tools.now, untilMs };
  const bound = isFinal ? firstBound : proveBound(withoutUnplaced(problem, schedule), engine, limits);
  if (isStopped) return { bound, prices: NO_HOUR_PRICES };
  return {
    bound,
    prices: hourPrices(problem, bound, engine, { now: tools.now, untilMs: tools.now() + PRICES_MS }),
  };
}

function handRules(problem: PlanProblem): { name: string; schedule: Schedule }[] {
  return [
    {
      name: "earliest due date first, to the first machine that fits",
      schedule: earliestDueFirstFit(problem),
    },
    { name: "earliest due date first, to the cheapest machine", schedule: earliestDueCheapest(problem) },
  ];
}

/** Copies that nobody can count are counted as none. */
const UNREADABLE = {
  code: "quantity-unreadable",
  sentence: "Its quantity cannot be read, so nobody knows how many copies are missing here: correct it.",
};

function setAsideOrders(setAside: readonly SetAside[]): Unplannable[] {
  return setAside
    .filter((entry) => entry.list === "orders" && entry.copies !== 0)
    .map(({ id, copies, sentence }) => ({
      orderId: id,
      copies: copies ?? 0,
      reasons: [{ code: "set-aside", sentence }, ...(copies === null ? [UNREADABLE] : [])],
    }));
}

function checked(shop: Shop, plan: PlanDocument): PlanDocument {
  const errors = checkPlan(shop, plan).filter((finding) => finding.severity === "error");
  if (errors.length === 0) return plan;
  const sentences = errors.slice(0, 5).map((finding) => finding.sentence);
  throw new Error(`the plan failed its own check (${errors.length} findings): ${sentences.join(" ")}`);
}
