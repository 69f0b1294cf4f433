import type { PlanDocument } from "../plan/plan-document.ts";
import { minorUnitDigits } from "../units/currency.ts";
import { countText, type Display, percentAtMost } from "./display.ts";
import { daysBetween, isoWeek, localDays, weekdayOf } from "../shop/local-time.ts";
import { capital, lateOrders, unplannedCopies, withoutPlace } from "./week-facts.ts";

/** The answer of a plan in sentences, the same in every report. */
interface Headline {
  /** "Week 49 of 2026", or the days where the plan is no calendar week */
  readonly period: string;
  /** "Monday 30 November 2026 to Sunday 6 December 2026" */
  readonly days: string;
  readonly cost: string;
  /** "No plan can cost less than 17 650.10 EUR; this one is within 4.5 % of that." Says so where copies have no place. */
  readonly proof: string;
  /** what is late or has no place, or that nothing is */
  readonly attention: string;
  readonly allWell: boolean;
  /** why the search ended before its time; null: it did not */
  readonly ending: string | null;
}

/** The headline of a plan. The bound is shown rounded down and the gap rounded up: what is claimed is never too much. */
export function headlineOf(plan: PlanDocument, display: Display): Headline {
  const late = lateOrders(plan).length;
  const unplanned = withoutPlace(plan).length;
  const feedstock = feedstockText(plan);
  return {
    ...periodOf(plan, display),
    cost: display.money(plan.cost.total),
    proof: proofText(plan, display),
    attention: [attentionText(plan, late, unplanned), feedstock].filter(Boolean).join(" "),
    allWell: late === 0 && unplanned === 0 && feedstock === "",
    ending: endText(plan),
  };
}

function periodOf(plan: PlanDocument, display: Display): { period: string; days: string } {
  const days = localDays(display.minute(plan.plannedFrom), plan.horizonDays, plan.timeZone);
  const first = days[0]?.date ?? "";
  const last = days.at(-1)?.date ?? first;
  const { week, year } = isoWeek(first);
  const isWeek = weekdayOf(first) === 1 && daysBetween(first, last) === 6;
  return {
    period: isWeek ? `Week ${week} of ${year}` : countText(plan.horizonDays, "day"),
    days: first === last ? display.day(first) : `${display.day(first)} to ${display.day(last)}`,
  };
}

function proofText(plan: PlanDocument, display: Display): string {
  const perMajor = 10 ** minorUnitDigits(plan.currency);
  const bound = Math.floor(plan.bound.value * perMajor + DUST) / perMajor;
  const within = `less than ${display.money(bound)}; this one is within ${percentAtMost(plan.bound.gapPct, 1)} of that.`;
  if (plan.unplanned.length > 0) return proofOfSome(plan, bound, within);
  if (bound >= plan.cost.total) return "No plan can cost less: this one is proven to be the cheapest.";
  if (bound <= 0) return "No lower bound on the cost has been proven yet.";
  return `No plan can cost ${within}`;
}

/** Where copies have no place, cost and bound are those of the others: nothing is said of the cheapest plan of all. */
function proofOfSome(plan: PlanDocument, bound: number, within: string): string {
  const isEmpty = plan.boughtOut.length === 0 && plan.builds.every(({ state }) => state !== "planned");
  if (isEmpty) return "No copy that was to be planned has a place, so there is no cost to judge.";
  const lead = "Cost and bound are for the copies that have a place.";
  if (bound >= plan.cost.total) return `${lead} No plan of these can cost less.`;
  if (bound <= 0) return `${lead} No lower bound has been proven yet.`;
  return `${lead} No plan of these can cost ${within}`;
}

function attentionText(plan: PlanDocument, late: number, unplanned: number): string {
  if (late === 0 && unplanned === 0) return "Every order is planned and in time.";
  const lateText = `${countText(late, "order")} ${late === 1 ? "is" : "are"} late`;
  const copies = unplannedCopies(plan);
  const counted = copies > 0 ? countText(copies, "copy", "copies") : "copies that cannot be counted";
  const unplannedText = `${counted} of ${countText(unplanned, "order")} ${copies === 1 ? "has" : "have"} no place in the plan`;
  if (unplanned === 0) return `${lateText}.`;
  return late === 0 ? `${capital(unplannedText)}.` : `${lateText}; ${unplannedText}.`;
}

/** Builds whose feedstock cannot be there in time; nothing where there are none. */
function feedstockText({ feedstockNeeds }: PlanDocument): string {
  const builds = feedstockNeeds.reduce((sum, { tooEarly }) => sum + (tooEarly?.length ?? 0), 0);
  if (builds === 0) return "";
  const begin = builds === 1 ? "begins" : "begin";
  return `${countText(builds, "build")} ${begin} before the feedstock to be bought can be there.`;
}

function endText({ status, enoughPct }: PlanDocument): string | null {
  if (status === "stopped") return "The search was stopped before its time; this is the best plan it had.";
  if (enoughPct === undefined) return null;
  return `The search ended as soon as at most ${enoughPct} % was left to gain, as asked for.`;
}

/** A sum of floating-point numbers may lie a hair under a whole minor unit. */
const DUST = 1e-6;
