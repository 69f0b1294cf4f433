import type { PurchaseCase } from "../shop/purchase-case.ts";
import { listed } from "../shop/finding.ts";
import type { BreakEven } from "./break-even.ts";
import type { CaseAnswer } from "./case-answer.ts";

/** What a recommendation is made of. */
interface Recommended {
  /** names of the candidates, as shown */
  readonly names: readonly string[];
  readonly answer: CaseAnswer;
  /** by multiples of the demand; null: not worked out */
  readonly demand: BreakEven | null;
  /** true: no machine of it can make anything that is ordered */
  readonly makesNothing: boolean;
}

/**
 * The recommendation in one sentence with its condition. Money as the caller shows it. Example: "Take Large pellet machine: over
 * 8 years at 8 % it is worth 61 000 EUR more than it costs (10 000 to 110 000 EUR in the middle 8 of 10 scenarios), as long as
 * demand stays above 82 % of what is expected."
 */
export function recommendation(
  { names, answer, demand, makesNothing }: Recommended,
  { financing }: Pick<PurchaseCase, "financing">,
  money: (amount: number) => string,
): string {
  const name = listed(names);
  const value = answer.answer.netPresentValue;
  const time = `over ${answer.lifeYears} ${answer.lifeYears === 1 ? "year" : "years"} at ${financing.discountPctPerYear} %`;
  if (makesNothing)
    return `Leave ${name}: it can make nothing that is ordered, so ${time} it loses ${money(-value)}.`;
  const { p10, p90, lossChance, count } = answer.distribution;
  const range = count < 2 ? "" : ` (${money(p10)} to ${money(p90)} in the middle 8 of 10 scenarios)`;
  const condition = conditionOf(value >= 0, demand);
  if (value < 0)
    return `Leave ${name}: ${time} it would cost ${money(-value)} more than it is worth${range}${condition}.`;
  const verb = lossChance > DOUBTFUL_CHANCE ? "Think twice about" : "Take";
  const doubt =
    lossChance > DOUBTFUL_CHANCE ? `; it loses in ${Math.round(100 * lossChance)} of 100 scenarios` : "";
  return `${verb} ${name}: ${time} it is worth ${money(value)} more than it costs${range}${condition}${doubt}.`;
}

/** A loss in more than one scenario of four is no recommendation. */
const DOUBTFUL_CHANCE = 0.25;

function conditionOf(gains: boolean, demand: BreakEven | null): string {
  if (demand === null) return "";
  const [first = 1] = demand.crossings;
  const share = `${shareWords(first)} of what is expected`;
  const [lowest, highest] = [demand.points[0]?.factor ?? 1, demand.points.at(-1)?.factor ?? 1];
  const span = `from ${Math.round(100 * lowest)} to ${Math.round(100 * highest)} % of what is expected`;
  switch (demand.kind) {
    case "above":
      return gains ? `, as long as demand stays above ${share}` : `; it would pay from ${share} on`;
    case "below":
      return gains ? `, as long as demand stays below ${share}` : `; it would pay below ${share}`;
    case "always":
      return `, whatever demand is ${span}`;
    case "never":
      return `; it does not pay at any demand ${span}`;
    case "several":
      return `; it changes between gain and loss at ${listed(demand.crossings.map(shareWords))} of the demand expected`;
  }
}

/** A share in %, with a digit more where it would else read as all there is. Example: 0.9968 gives "99.7 %". */
function shareWords(share: number): string {
  const pct = 100 * share;
  return `${Math.abs(pct - 100) < CLOSE_PCT ? pct.toFixed(1) : Math.round(pct)} %`;
}

const CLOSE_PCT = 2;

/** What every case rests on, for the page and the sheet. */
export function assumptionsOf(purchaseCase: PurchaseCase): string[] {
  const { financing, growthPctPerYear, patienceWeeks, weeks, scenarios, seed, demand } = purchaseCase;
  const source = {
    orders: "whole weeks drawn from the shop's own orders by their due date",
    rows: "whole weeks drawn from a file of past orders by their due date",
    typed: "typed lines, each with a random number of orders in every week",
  }[demand.kind];
  return [
    `Demand: ${source}; ${scenarios} scenarios of ${weeks} weeks, seed ${seed}, growth ${growthPctPerYear} % per year.`,
    `An order that is more than ${patienceWeeks} ${patienceWeeks === 1 ? "week" : "weeks"} late is lost. One without an agreed price is valued at cost and margin.`,
    `Each week is planned by the weekly linear program, without and with the candidate, on the same orders.`,
    `Costs are cash: the price stands in the flow once and the discount rate of ${financing.discountPctPerYear} % is its interest, so depreciation and imputed interest are left out of every hour, and overhead too. Floor and maintenance of a machine count each year, energy by the hour in use.`,
    `Labour counts by the hour of work: an hour that is saved is taken to be of use elsewhere or not paid. An added shift is paid in full, less its share of other useful work.`,
    growthPctPerYear === 0
      ? "Every year after the weeks planned is like the last one planned."
      : "Years after the weeks planned follow growth along the demands that were worked out, and stay level beyond the largest.",
    financing.taxPct === 0
      ? "Before tax."
      : `Tax ${financing.taxPct} % on the change of the yearly gain; a loss saves tax, which needs other gains. ${financing.depreciation === "straight-line" ? "Depreciation is straight-line." : "No depreciation."}`,
    "A candidate with a shorter life than the longest of its bundle is replaced by its like at the same price.",
  ];
}

/** What no case looks at. */
export const NOT_CONSIDERED: readonly string[] = [
  "Learning and start-up time of a new machine, and orders that only come because it is there.",
  "Changes of prices and wages over the years, beyond a nominal discount rate.",
  "Work in progress and stocks, payment terms, grants, insurance, and depreciation still open on a machine that is sold.",
  "Whether the building, its power, ventilation and floor load take another machine, and whether it may run with nobody there: ask the maker, the insurer and qualified people, and follow local codes.",
];
