import type { BoundAnswer } from "./bound.ts";
import type { BoundModel } from "./bound-model.ts";
import { bucketOf, type ClassFrame } from "./class-frame.ts";
import type { LpEngine } from "../linear-program.ts";
import type { PlanProblem, Stretch } from "../plan-problem.ts";
import { type BoundLimits, sift } from "./sifting.ts";
import { RowList } from "../engines/sparse-columns.ts";

/** What an hour at the end of one staffed window is worth. */
export interface HourPrice {
  readonly fromMin: number;
  readonly toMin: number;
  /** what one more hour there would save; 0 or more */
  readonly moreSavesPerH: number;
  /** what one hour less there would cost; 0 or more */
  readonly lessCostsPerH: number;
}

/** Prices of staffed machine hours by class and of operator hours by calendar, dearest first; hours to spare are left out. */
export interface HourPrices {
  readonly machineHour: readonly (HourPrice & { readonly classIndex: number })[];
  readonly operatorHour: readonly (HourPrice & { readonly calendarIndex: number })[];
}

export const NO_HOUR_PRICES: HourPrices = { machineHour: [], operatorHour: [] };

/** Windows that are priced, at most; each takes two solutions. */
const MOST_PRICED = 16;
/** Hours cheaper than this share of the whole cost are to spare. */
const WORTH_SHARE = 1e-6;

/**
 * Prices of hours in the relaxation, for the windows whose row prices are largest. Row prices alone may hold in one direction
 * only, so each is confirmed by solving with one hour more and one hour less; what time does not allow is left out.
 * They are prices of an hour on any machine of the class, for the relaxed problem: a guide, not a quote.
 */
export function hourPrices(
  problem: PlanProblem,
  bound: BoundAnswer,
  engine: LpEngine,
  limits: BoundLimits,
): HourPrices {
  const { model, sifted } = bound;
  if (!model || !sifted.isComplete) return NO_HOUR_PRICES;
  const solved = { model, sifted };
  const machineHour: (HourPrice & { classIndex: number })[] = [];
  const operatorHour: (HourPrice & { calendarIndex: number })[] = [];
  for (const candidate of candidates(problem, solved)) {
    const price = confirmed(solved, candidate, engine, limits);
    if (!price) break;
    if (price.moreSavesPerH === 0 && price.lessCostsPerH === 0) continue;
    if (candidate.kind === "machine") machineHour.push({ ...price, classIndex: candidate.index });
    else operatorHour.push({ ...price, calendarIndex: candidate.index });
  }
  return { machineHour: dearestFirst(machineHour), operatorHour: dearestFirst(operatorHour) };
}

/** A relaxation with its last answer. */
type Solved = { readonly model: BoundModel } & Pick<BoundAnswer, "sifted">;

/** A window and the row that its last hour counts in. */
interface Candidate {
  readonly kind: "machine" | "operator";
  readonly index: number;
  readonly window: Stretch;
  readonly row: number;
  readonly worthPerH: number;
}

function candidates(problem: PlanProblem, { model, sifted }: Solved): Candidate[] {
  const prices = sifted.answer?.rowPrices ?? new Float64Array(model.rows.lower.length);
  const least = WORTH_SHARE * Math.max(1, sifted.bound);
  // Classes that share a calendar share its operator rows.
  const byRow = new Map<number, Candidate>();
  for (const frame of model.frames) {
    for (const window of windowsInHorizon(problem, frame.calendarIndex)) {
      for (const candidate of windowCandidates(model, frame, window, prices))
        byRow.set(candidate.row, candidate);
    }
  }
  const worthwhile = [...byRow.values()].filter(({ worthPerH }) => worthPerH > least);
  return worthwhile.toSorted((a, b) => b.worthPerH - a.worthPerH).slice(0, MOST_PRICED);
}

function windowCandidates(
  model: BoundModel,
  frame: ClassFrame,
  window: Stretch,
  prices: Float64Array,
): Candidate[] {
  const bucket = bucketOf(frame.points, window.endMin);
  if (bucket >= frame.points.length) return [];
  const machineRow = model.staffed[frame.classIndex]! + bucket;
  const operatorRow = model.operators[frame.calendarIndex]! + bucket;
  return [
    { kind: "machine", index: frame.classIndex, window, row: machineRow, worthPerH: -prices[machineRow]! },
    {
      kind: "operator",
      index: frame.calendarIndex,
      window,
      row: operatorRow,
      worthPerH: -prices[operatorRow]!,
    },
  ];
}

function windowsInHorizon(problem: PlanProblem, calendarIndex: number): Stretch[] {
  const windows = problem.calendars[calendarIndex]?.windows ?? [];
  return windows.filter(
    ({ startMin, endMin }) => endMin > problem.startMin && startMin < problem.horizonEndMin,
  );
}

/** Both prices by solving again; null where time ran out. */
function confirmed(
  bound: Solved,
  { row, window }: Candidate,
  engine: LpEngine,
  limits: BoundLimits,
): HourPrice | null {
  const base = bound.sifted.answer?.objective;
  // A window shorter than an hour can lose no more than it has.
  const fewerH = Math.min(1, bound.model.rows.upper[row]!);
  const more = costWith(bound, row, 1, engine, limits);
  const less = costWith(bound, row, -fewerH, engine, limits);
  if (base === undefined || more === null || less === null) return null;
  const noise = WORTH_SHARE * Math.max(1, base);
  const orZero = (difference: number): number => (difference > noise ? difference : 0);
  return {
    fromMin: window.startMin,
    toMin: window.endMin,
    moreSavesPerH: orZero(base - more),
    lessCostsPerH: fewerH > 0 ? orZero(less - base) / fewerH : 0,
  };
}

/** Optimum of the relaxation with so many hours more in one row; null where time ran out. */
function costWith(
  { model, sifted }: Solved,
  row: number,
  hours: number,
  engine: LpEngine,
  limits: BoundLimits,
): number | null {
  const changed = sift(withSupply(model, row, hours), engine, limits, sifted.chosen);
  return changed.isComplete && changed.answer ? changed.answer.objective : null;
}

function withSupply(model: BoundModel, row: number, hours: number): BoundModel {
  const rows = new RowList();
  model.rows.lower.forEach((lower, at) => {
    const more = at === row ? hours : 0;
    rows.add(lower + more, model.rows.upper[at]! + more);
  });
  return { ...model, rows };
}

function dearestFirst<Price extends HourPrice>(prices: readonly Price[]): Price[] {
  return prices.toSorted((a, b) => b.moreSavesPerH - a.moreSavesPerH || b.lessCostsPerH - a.lessCostsPerH);
}
