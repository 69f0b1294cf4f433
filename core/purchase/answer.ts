import type { CashFlow, CashRowName } from "./cash-flow.ts";
import type { Financing } from "../shop/purchase-case.ts";
import { equivalentAnnual } from "./equivalent-annual.ts";
import { paybackYears } from "./payback.ts";
import { netPresentValue } from "./present-value.ts";
import { modifiedRateOfReturn, ratesOfReturn } from "./rate-of-return.ts";

/** The internal rate as a share per year: one, several (then none of them says anything), or none. */
export type RateAnswer =
  | { readonly kind: "unique"; readonly rate: number }
  | { readonly kind: "not-unique"; readonly rates: readonly number[] }
  | { readonly kind: "none" };

/** The figures by which a cash flow is judged. */
export interface PurchaseAnswer {
  /** what is paid at the start, less what sold machines bring, currency */
  readonly outlay: number;
  readonly netPresentValue: number;
  readonly rate: RateAnswer;
  /** modified rate of return, a share per year; null: money only goes out or only comes in */
  readonly modifiedRate: number | null;
  /** years until the money is back; Infinity: never */
  readonly paybackYears: number;
  readonly discountedPaybackYears: number;
  /** the net present value as the same amount each year, by which unequal lives compare, currency per year */
  readonly equivalentAnnualValue: number;
  /** what having it costs as the same amount each year, before what it saves or earns and before tax, currency per year */
  readonly equivalentAnnualCost: number;
}

/**
 * Judges a table of cash at the discount rate: all that present-value.ts, rate-of-return.ts, payback.ts and
 * equivalent-annual.ts say of its total. Example: -1000, 500, 400, 300, 100 at 10 %: value 78.82, rate 14.49 %, modified
 * 12.11 %, back after 2.33 years, discounted 2.95.
 */
export function answerOf(flow: CashFlow, financing: Financing): PurchaseAnswer {
  const rate = financing.discountPctPerYear / 100;
  const reinvestRate = (financing.reinvestPctPerYear ?? financing.discountPctPerYear) / 100;
  const { total } = flow;
  return {
    outlay: -sumAtStart(flow),
    netPresentValue: netPresentValue(total, rate),
    rate: rateAnswer(total),
    modifiedRate: modifiedRateOfReturn(total, rate, reinvestRate),
    paybackYears: paybackYears(total),
    discountedPaybackYears: paybackYears(total, rate),
    equivalentAnnualValue: equivalentAnnual(total, rate),
    equivalentAnnualCost: -equivalentAnnual(costOfHaving(flow), rate),
  };
}

/** The internal rate of a cash flow in words that cannot mislead. Example: -1600, 10000, -10000 is not unique: 25 and 400 %. */
function rateAnswer(flows: readonly number[]): RateAnswer {
  const rates = ratesOfReturn(flows);
  const [rate] = rates;
  if (rate === undefined) return { kind: "none" };
  return rates.length === 1 ? { kind: "unique", rate } : { kind: "not-unique", rates };
}

const START_ROWS: ReadonlySet<CashRowName> = new Set(["price", "installation", "training", "sale"]);
const HAVING_ROWS: ReadonlySet<CashRowName> = new Set([
  ...START_ROWS,
  "residual",
  "valueGivenUp",
  "standing",
  "wages",
  "yearlyCost",
]);

function sumAtStart({ rows }: CashFlow): number {
  return rows.reduce((sum, { name, byYear }) => sum + (START_ROWS.has(name) ? (byYear[0] ?? 0) : 0), 0);
}

function costOfHaving({ rows, total }: CashFlow): number[] {
  const own = rows.filter(({ name }) => HAVING_ROWS.has(name));
  return total.map((_, year) => own.reduce((sum, { byYear }) => sum + (byYear[year] ?? 0), 0));
}
