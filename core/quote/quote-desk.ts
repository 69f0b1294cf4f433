import { makeBuildCosting } from "../cost/build-cost.ts";
import { type BoundAnswer, proveBound } from "../plan/bound/bound.ts";
import { NO_HOUR_PRICES } from "../plan/bound/hour-prices.ts";
import { checkPlan } from "../plan/check/check-plan.ts";
import { compileProblem, type Unplannable } from "../plan/compile/compile-problem.ts";
import { withoutUnplaced } from "../plan/compile/without-unplaced.ts";
import { chooseEngine, type EngineLoaders } from "../plan/engines/choose-engine.ts";
import type { LpEngine } from "../plan/linear-program.ts";
import type { PlanDocument } from "../plan/plan-document.ts";
import type { PlanProblem } from "../plan/plan-problem.ts";
import { withEarlierPlan } from "../plan/replan/with-earlier-plan.ts";
import type { Schedule } from "../plan/schedule.ts";
import { takeOutBroken } from "../plan/search/promises.ts";
import { ALWAYS } from "../plan/search/recreate.ts";
import { toSchedule } from "../plan/search/saved-plan.ts";
import { SearchData } from "../plan/search/search-data.ts";
import { searchSchedule } from "../plan/search/search.ts";
import { ANYWHERE, emptyPlan, placeAll } from "../plan/search/start-plans.ts";
import { stayPlan } from "../plan/search/stay-plan.ts";
import { writePlan } from "../plan/write/write-plan.ts";
import { inIdOrder } from "../shop/in-id-order.ts";
import type { Shop } from "../shop/shop.ts";
import { earlierSchedule, freeze } from "./frozen-plan.ts";
import type { OpenProblem } from "./more-lines.ts";

/** From when, for how many days and with which seed quotes are planned. */
export interface QuoteDeskRequest {
  readonly fromMin: number;
  readonly days: number;
  readonly seed: number;
}

/** What the outside lends: a clock, ms, and the engines. */
export interface QuoteDeskTools {
  readonly now: () => number;
  readonly engines: EngineLoaders;
}

/** The work in the shop as it stands, kept ready so that a quote is answered at once. Nothing here is changed by a question. */
export interface QuoteDesk extends OpenProblem {
  readonly request: QuoteDeskRequest;
  readonly unplannable: readonly Unplannable[];
  /** every build where the plan has it; what the plan does not hold has been put around that */
  readonly standing: Schedule;
  /** the same as a checked document */
  readonly standingPlan: PlanDocument;
  /** the relaxation of the standing copies, with its prices */
  readonly bound: BoundAnswer;
  readonly engine: LpEngine;
  readonly now: () => number;
}

/** The relaxation may take this long, ms. */
const BOUND_MS = 10_000;
/** With no plan given one is searched for in so many steps. */
const SEARCH_STEPS = 20_000;

/**
 * Opens a desk for quotes: compiles the shop, puts the builds of its plan where they are and prices the work by the linear
 * program, once; questions then start from there. Without a plan a quick one is made first. `shop` must have passed
 * `check-shop`. Example: 500 lines and 623 planned builds take about three seconds, a question afterwards a tenth of one.
 */
export async function openQuoteDesk(
  shop: Shop,
  plan: PlanDocument | null,
  request: QuoteDeskRequest,
  tools: QuoteDeskTools,
): Promise<QuoteDesk> {
  const planned = inIdOrder(plan ? withEarlierPlan(shop, plan) : shop);
  const { problem, unplannable } = compileProblem(planned, request);
  const engine = await chooseEngine(problem, tools.engines);
  const limits = { now: tools.now, untilMs: tools.now() + BOUND_MS };
  const open = { shop: planned, request, problem, unplannable };
  if (problem.replan === undefined) {
    const bound = proveBound(problem, engine, limits);
    const standing = quickPlan(problem, bound, request.seed);
    const isWhole = standing.unplaced.length === 0;
    const judged = isWhole ? bound : proveBound(withoutUnplaced(problem, standing), engine, limits);
    return desk(open, standing, documentOf(open, standing, judged), judged, engine, tools);
  }
  const { standing, standingPlan } = standingWork(open, plan);
  const bound = proveBound(withoutUnplaced(problem, standing), engine, limits);
  return desk(open, standing, standingPlan, bound, engine, tools);
}

type Open = Pick<QuoteDesk, "shop" | "request" | "problem" | "unplannable">;

function desk(
  open: Open,
  standing: Schedule,
  standingPlan: PlanDocument,
  bound: BoundAnswer,
  engine: LpEngine,
  { now }: QuoteDeskTools,
): QuoteDesk {
  return { ...open, costing: makeBuildCosting(open.shop), standing, standingPlan, bound, engine, now };
}

function quickPlan(problem: PlanProblem, { shares, boughtOut }: BoundAnswer, seed: number): Schedule {
  const control = { seed, now: () => 0, untilMs: 1, iterations: SEARCH_STEPS };
  return searchSchedule(problem, { shares, boughtOut }, control);
}

/** The plan's builds to the minute where that passes every check, otherwise as near to it as can be. */
function standingWork(open: Open, plan: PlanDocument | null): Pick<QuoteDesk, "standing" | "standingPlan"> {
  const exact = frozenSchedule(open, plan);
  const document = documentOf(open, exact, null);
  if (!checkPlan(open.shop, document).some(isError)) return { standing: exact, standingPlan: document };
  const standing = stayPlan(open.problem);
  return { standing, standingPlan: documentOf(open, standing, null) };
}

/**
 * The builds of a compiled problem's earlier plan to the minute where they are, and everything else put around them, each line at
 * the best of all places. Example: 623 builds and one new order: 623 where they were and 2 more.
 */
export function frozenSchedule({ problem, shop }: Open, plan: PlanDocument | null): Schedule {
  const trial = emptyPlan(new SearchData(problem));
  freeze(trial, { builds: earlierSchedule(problem, shop), boughtOut: boughtOutOf(problem, plan) });
  placeAll(trial, ANYWHERE, ALWAYS);
  takeOutBroken(trial);
  return toSchedule(trial.state);
}

/** Copies that the plan buys, of lines that can still be bought. */
function boughtOutOf({ lines }: PlanProblem, plan: PlanDocument | null): Schedule["boughtOut"] {
  return (plan?.boughtOut ?? []).flatMap(({ orderId, copies }) => {
    const line = lines.find((candidate) => candidate.orderId === orderId && candidate.buyOut);
    return line ? [{ lineIndex: line.index, copies: Math.min(copies, line.quantity) }] : [];
  });
}

function documentOf(open: Open, schedule: Schedule, bound: BoundAnswer | null): PlanDocument {
  return writePlan({
    ...open,
    schedule,
    bound: bound ?? { value: 0, from: "Not proven here." },
    prices: NO_HOUR_PRICES,
    handRules: [],
    elapsed: { firstPlanS: 0, totalS: 0 },
    status: "complete",
  });
}

function isError({ severity }: { readonly severity: string }): boolean {
  return severity === "error";
}
