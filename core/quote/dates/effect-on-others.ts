import { sampleQuantile } from "../sample-quantile.ts";
import { finishesOf } from "./likelihood.ts";
import type { SimulatedDates } from "./simulate.ts";

/** What one more line does to an order that was there before. */
export interface DateEffect {
  readonly orderId: string;
  /** mean change of its finish over runs that finish it both times, min; above 0: later */
  readonly laterMin: number;
  /** standard error of that mean, min */
  readonly errorMin: number;
  /** date kept with 80 % without and with the line, epoch minute; null: not whole in so many runs */
  readonly wasByMin: number | null;
  readonly isByMin: number | null;
  /** likelihood of its due date without and with the line, 0 to 1; null: the shop has no such order */
  readonly wasInTime: number | null;
  readonly isInTime: number | null;
}

/** The likelihood of the dates that are compared. */
const COMPARED_SHARE = 0.8;

/**
 * What a line does to the dates of the other orders: the same plan simulated with it and without it, run by run against the
 * same luck, so that small effects show. Orders that are in one of the two only are left out. Those whose due date suffers
 * most come first. Both simulations need one seed; of unequal numbers of runs the first that both have are compared.
 * Example: later by 10 min in every run gives `laterMin` 10 and `errorMin` 0.
 */
export function effectOnOthers(withLine: SimulatedDates, without: SimulatedDates): DateEffect[] {
  if (withLine.seed !== without.seed)
    throw new RangeError(`dates of seeds ${withLine.seed} and ${without.seed} cannot be compared run by run`);
  const runs = Math.min(withLine.runs, without.runs);
  if (runs === 0) return [];
  const before = new Set(without.orders.map(({ orderId }) => orderId));
  const effects = withLine.orders
    .filter(({ orderId }) => before.has(orderId))
    .map(({ orderId, dueMin }) => {
      const dueAtMin = dueMin === null ? null : withLine.startMin + dueMin;
      const is = epochFinishes(withLine, orderId, runs);
      const was = epochFinishes(without, orderId, runs);
      return effectOf(orderId, dueAtMin, was, is);
    });
  return effects.toSorted((a, b) => lossOf(b) - lossOf(a) || b.laterMin - a.laterMin);
}

function lossOf({ wasInTime, isInTime }: DateEffect): number {
  return (wasInTime ?? 0) - (isInTime ?? 0);
}

function epochFinishes(dates: SimulatedDates, orderId: string, runs: number): Float64Array {
  return finishesOf(dates, orderId)
    .subarray(0, runs)
    .map((finishedMin) => finishedMin + dates.startMin);
}

function effectOf(orderId: string, dueAtMin: number | null, was: Float64Array, is: Float64Array): DateEffect {
  const changes = is.map((finishedMin, run) => finishedMin - was[run]!).filter(Number.isFinite);
  const { mean, error } = meanOf(changes);
  return {
    orderId,
    laterMin: mean,
    errorMin: error,
    wasByMin: keptBy(was),
    isByMin: keptBy(is),
    wasInTime: shareBy(was, dueAtMin),
    isInTime: shareBy(is, dueAtMin),
  };
}

/** Mean and its standard error s / sqrt(n); 0 of nothing. */
function meanOf(values: Float64Array): { mean: number; error: number } {
  const count = values.length;
  if (count === 0) return { mean: 0, error: 0 };
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, error: count > 1 ? Math.sqrt(squares / (count - 1) / count) : 0 };
}

function keptBy(finishes: Float64Array): number | null {
  const ascending = finishes.toSorted();
  if (ascending[Math.ceil((ascending.length - 1) * COMPARED_SHARE)] === Infinity) return null;
  return Math.ceil(sampleQuantile(ascending, COMPARED_SHARE) - DUST_MIN);
}

/** Minutes are whole: this much above one is that one. */
const DUST_MIN = 1e-6;

function shareBy(finishes: Float64Array, dueAtMin: number | null): number | null {
  if (dueAtMin === null) return null;
  return finishes.reduce((sum, atMin) => sum + (atMin <= dueAtMin + DUST_MIN ? 1 : 0), 0) / finishes.length;
}
