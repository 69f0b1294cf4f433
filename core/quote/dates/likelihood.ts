import { likelihoodError, sampleQuantile } from "../sample-quantile.ts";
import type { SimulatedDates } from "./simulate.ts";

/** The likelihoods with which dates are told, %. */
const TOLD_PCT = [50, 80, 95] as const;

/** A date that is kept with a likelihood. */
export interface KeptDate {
  readonly likelihoodPct: number;
  /** epoch minute, rounded up; null: the order is not whole in so many of the runs */
  readonly byMin: number | null;
  /** standard error of that date, min; null where there is none */
  readonly errorMin: number | null;
}

/** What a simulation says of one order, or why it says nothing. */
export type OrderDates =
  | { readonly status: "dated"; readonly orderId: string; readonly kept: readonly KeptDate[] }
  | { readonly status: "undated"; readonly orderId: string; readonly reasons: readonly string[] };

/**
 * Dates that an order keeps with 50, 80 and 95 % likelihood: quantiles of its simulated finishes by type 7. The standard
 * error of a date is half the way between the quantiles one standard error sqrt(p (1 - p) / n) of the likelihood below and
 * above. Example: 2000 runs of a lognormal print of mean 20 h and variation 0.3 keep 24.5 h with 80 %.
 */
export function orderDates(
  dates: SimulatedDates,
  orderId: string,
  likelihoodsPct: readonly number[] = TOLD_PCT,
): OrderDates {
  const reasons = whyUndated(dates, orderId);
  if (reasons.length > 0) return { status: "undated", orderId, reasons };
  const ascending = finishesOf(dates, orderId).toSorted();
  return {
    status: "dated",
    orderId,
    kept: likelihoodsPct.map((likelihoodPct) => keptDate(dates, ascending, likelihoodPct)),
  };
}

function keptDate(dates: SimulatedDates, ascending: Float64Array, likelihoodPct: number): KeptDate {
  const share = Math.min(1, Math.max(0, likelihoodPct / 100));
  const error = likelihoodError(share, dates.runs);
  const atMin = finiteQuantile(ascending, share);
  const lowMin = finiteQuantile(ascending, Math.max(0, share - error));
  const highMin = finiteQuantile(ascending, Math.min(1, share + error));
  return {
    likelihoodPct,
    byMin: atMin === null ? null : dates.startMin + Math.ceil(atMin - DUST_MIN),
    errorMin: lowMin === null || highMin === null ? null : (highMin - lowMin) / 2,
  };
}

/** Minutes are whole: this much above one is that one. */
const DUST_MIN = 1e-6;

/** A quantile, or null where it falls among runs in which the order is never whole. */
function finiteQuantile(ascending: Float64Array, share: number): number | null {
  if (ascending[Math.ceil((ascending.length - 1) * share)] === Infinity) return null;
  return sampleQuantile(ascending, share);
}

/** One order and the date by which it should be whole, epoch minute. */
export interface WantedDate {
  readonly orderId: string;
  readonly byMin: number;
}

/** How likely something is, or why nobody can say. */
export type Likelihood =
  | {
      readonly status: "known";
      /** share of the runs in which every date is kept, 0 to 1 */
      readonly likelihood: number;
      readonly standardError: number;
    }
  | { readonly status: "unknown"; readonly reasons: readonly string[] };

/**
 * Likelihood that all of these orders keep their dates together, counted over the runs: orders that share machines and people
 * are late together, so it is not the product of their own. For one order it is the likelihood of that date. An order with
 * copies that the plan leaves out never keeps a date: the likelihood is 0, and `orderDates` says why.
 * Example: kept in 1800 of 2000 runs: 0.9 with a standard error of 0.0067.
 */
export function jointLikelihood(dates: SimulatedDates, wanted: readonly WantedDate[]): Likelihood {
  const unknown = wanted.filter(({ orderId }) => !dates.orders.some((order) => order.orderId === orderId));
  const reasons = unknown.flatMap(({ orderId }) => whyUndated(dates, orderId));
  if (wanted.length === 0) reasons.push("No order is named: name the orders whose dates matter.");
  if (dates.runs === 0) reasons.push(NO_RUNS);
  if (reasons.length > 0) return { status: "unknown", reasons: [...new Set(reasons)] };
  const kept = new Uint8Array(dates.runs).fill(1);
  for (const { orderId, byMin } of wanted) {
    const limitMin = byMin - dates.startMin + DUST_MIN;
    finishesOf(dates, orderId).forEach((atMin, run) => {
      if (atMin > limitMin) kept[run] = 0;
    });
  }
  const likelihood = kept.reduce((sum, one) => sum + one, 0) / dates.runs;
  return { status: "known", likelihood, standardError: likelihoodError(likelihood, dates.runs) };
}

/** Why a simulation has no date for an order, in sentences; empty where it has. */
function whyUndated(dates: SimulatedDates, orderId: string): string[] {
  if (dates.runs === 0) return [NO_RUNS];
  const order = dates.orders.find((candidate) => candidate.orderId === orderId);
  if (!order)
    return [
      `Order ${orderId} is not in the plan: plan again with it, then ask for its date.`,
      ...dates.notes,
    ];
  if (order.missingCopies === 0) return [];
  const copies = order.missingCopies === 1 ? "1 copy" : `${order.missingCopies} copies`;
  return [
    `${copies} of order ${orderId} ${order.missingCopies === 1 ? "has" : "have"} no place in the plan, so the order is never whole in it: allow a later date, another machine or feedstock, or a longer plan.`,
    ...dates.notes,
  ];
}

const NO_RUNS = "The simulation made no run, so it knows no date: ask for at least one, 2000 are usual.";

/** When an order was whole in each run, min from the start of the plan; nothing where the plan does not have it. */
export function finishesOf(dates: SimulatedDates, orderId: string): Float64Array {
  const index = dates.orders.findIndex((order) => order.orderId === orderId);
  return dates.finishedMin[index] ?? new Float64Array(0);
}
