import { nextFullHour } from "../shop/local-time.ts";
import {
  jointLikelihood,
  type KeptDate,
  type Likelihood,
  orderDates,
  type WantedDate,
} from "./dates/likelihood.ts";
import type { SimulatedDates } from "./dates/simulate.ts";
import type { DatePromise } from "./quote-answer.ts";
import type { QuoteLineRequest } from "./quote-order.ts";

/** What a simulation says of one line. */
export interface LineDates {
  readonly kept: readonly KeptDate[];
  readonly wanted: Likelihood | null;
  readonly promise: DatePromise | null;
}

/** How a date is promised. */
export interface PromiseRule {
  readonly timeZone: string;
  readonly fromMin: number;
  /** likelihood with which a promised date is kept, % */
  readonly promisePct: number;
}

/**
 * Dates of a line from the simulation, and the one to promise: the date wanted where that is kept with the likelihood asked for,
 * else the first full hour of the works' clocks that is. Example: 80 % by Tuesday 06:54, nothing wanted: Tuesday 07:00.
 */
export function lineDates(dates: SimulatedDates, line: QuoteLineRequest, rule: PromiseRule): LineDates {
  const told = orderDates(dates, line.id);
  const kept = told.status === "dated" ? told.kept : [];
  const wantedMin = realWanted(line, rule.fromMin);
  const wanted = wantedMin === null ? null : jointLikelihood(dates, [{ orderId: line.id, byMin: wantedMin }]);
  return { kept, wanted, promise: promiseOf(dates, line, rule) };
}

function promiseOf(dates: SimulatedDates, line: QuoteLineRequest, rule: PromiseRule): DatePromise | null {
  const told = orderDates(dates, line.id, [rule.promisePct]);
  const keptMin = told.status === "dated" ? (told.kept[0]?.byMin ?? null) : null;
  if (keptMin === null) return null;
  const byMin = promisedMin(keptMin, line, rule);
  const likelihood = jointLikelihood(dates, [{ orderId: line.id, byMin }]);
  const isKnown = likelihood.status === "known";
  return {
    byMin,
    likelihoodPct: isKnown ? likelihood.likelihood * 100 : null,
    errorPct: isKnown ? likelihood.standardError * 100 : null,
  };
}

/** A promise before anything is simulated: by the plan alone. Example: planned for 06:19, nothing wanted: 07:00. */
export function roughPromise(
  plannedMin: number | null,
  line: QuoteLineRequest,
  rule: PromiseRule,
): DatePromise | null {
  if (plannedMin === null) return null;
  return { byMin: promisedMin(plannedMin, line, rule), likelihoodPct: null, errorPct: null };
}

function promisedMin(keptMin: number, line: QuoteLineRequest, rule: PromiseRule): number {
  const wantedMin = realWanted(line, rule.fromMin);
  return wantedMin !== null && wantedMin >= keptMin ? wantedMin : nextFullHour(keptMin, rule.timeZone);
}

/** A date that has passed is no date that anybody can keep. */
function realWanted({ wantedMin }: QuoteLineRequest, fromMin: number): number | null {
  return wantedMin !== null && wantedMin > fromMin ? wantedMin : null;
}

/**
 * Likelihood that all wanted dates, and all promised ones, are kept together; null where there are none.
 * Example: two lines kept with 90 % each on the same machine: 88 % together, not 81 %.
 */
export function togetherLikelihood(
  dates: SimulatedDates,
  lines: readonly { readonly asked: QuoteLineRequest; readonly promise: DatePromise | null }[],
  fromMin: number,
): { wanted: Likelihood | null; promised: Likelihood | null } {
  const wanted = lines.flatMap(({ asked }): WantedDate[] => {
    const byMin = realWanted(asked, fromMin);
    return byMin === null ? [] : [{ orderId: asked.id, byMin }];
  });
  const promised = lines.flatMap(({ asked, promise }): WantedDate[] =>
    promise ? [{ orderId: asked.id, byMin: promise.byMin }] : [],
  );
  const isAllPromised = promised.length === lines.length && lines.length > 0;
  return {
    wanted: wanted.length > 0 ? jointLikelihood(dates, wanted) : null,
    promised: isAllPromised ? jointLikelihood(dates, promised) : null,
  };
}
