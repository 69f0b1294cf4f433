import type { Candidate, Financing } from "../shop/purchase-case.ts";
import type { PurchaseChange } from "../shop/purchase-change.ts";
import { OPERATING_ROWS, type OperatingMoney, totalOf } from "./operating-money.ts";

/** Rows of the table of cash, as shown: first what is paid and had at the start and the end, then what changes each year. */
export const CASH_ROWS = [
  "price",
  "installation",
  "training",
  "sale",
  "residual",
  "valueGivenUp",
  ...OPERATING_ROWS,
  "standing",
  "wages",
  "yearlyCost",
  "tax",
] as const;

export type CashRowName = (typeof CASH_ROWS)[number];

/** Cash by year, currency, in is positive: place 0 is the start, place t the end of year t. */
export interface CashRow {
  readonly name: CashRowName;
  readonly byYear: readonly number[];
}

/** The table: its rows add up to the total, year by year. */
export interface CashFlow {
  readonly rows: readonly CashRow[];
  readonly total: readonly number[];
}

/** What the cash flow of one candidate, or of several taken together, follows from. */
export interface CashQuestion {
  readonly candidates: readonly Candidate[];
  readonly financing: Financing;
  /** change of running money, with less without, year by year; the last holds for later years */
  readonly yearly: readonly OperatingMoney[];
  /** change of floor and maintenance, currency per year: negative where more stands there */
  readonly standingPerYear: number;
  /** change of wages of added shifts, currency per year: negative where they are paid */
  readonly wagesPerYear: number;
}

/**
 * Cash by year over the longest life among the candidates. One of a shorter life is replaced by its like; at the end each
 * brings its residual value, one in the middle of a life what is left of its price by straight line. Tax is paid on the year's
 * change of running money, less depreciation where that is straight-line ((price + installation - residual) / life); training
 * lowers the tax of year 1, and a loss saves tax, since the works is taken to have other gains. Selling at the end is at book
 * value, so untaxed. CF_t = (revenue - costs)(1 - tax) + tax x depreciation. Example: price 1000, residual 0, 4 years, 400 a
 * year, 25 % tax, straight-line: -1000, then 400 x 0.75 + 0.25 x 250 = 362.5 each year.
 */
export function cashFlow(question: CashQuestion): CashFlow {
  const years = lifeOf(question.candidates);
  const flat = (amount: number): number[] => yearList(years, (year) => (year === 0 ? 0 : amount));
  const paid = (pay: (candidate: Candidate, year: number) => number): number[] =>
    yearList(years, (year) => sumOf(question.candidates, (candidate) => pay(candidate, year)));
  const first = (amount: (candidate: Candidate) => number): number[] =>
    paid((candidate, year) => (year === 0 ? amount(candidate) : 0));
  const untaxed: CashRow[] = [
    { name: "price", byYear: paid((candidate, year) => -bought(candidate, year, years) * candidate.price) },
    {
      name: "installation",
      byYear: paid((candidate, year) => -bought(candidate, year, years) * candidate.installation),
    },
    { name: "training", byYear: first(({ training }) => -training) },
    { name: "sale", byYear: first(({ changes }) => sumOf(changes, proceedsOf)) },
    { name: "residual", byYear: paid((candidate, year) => endValue(candidate, year, years)) },
    {
      name: "valueGivenUp",
      byYear: paid(({ changes }, year) => (year === years ? -sumOf(changes, laterValueOf) : 0)),
    },
    ...OPERATING_ROWS.map((name) => ({
      name,
      byYear: yearList(years, (year) => (year === 0 ? 0 : moneyIn(question, year)[name])),
    })),
    { name: "standing", byYear: flat(question.standingPerYear) },
    { name: "wages", byYear: flat(question.wagesPerYear) },
    { name: "yearlyCost", byYear: paid(({ yearlyCost }, year) => (year === 0 ? 0 : -yearlyCost)) },
  ];
  const rows = [
    ...untaxed,
    { name: "tax" as const, byYear: yearList(years, (year) => -taxIn(question, year)) },
  ];
  return { rows, total: yearList(years, (year) => sumOf(rows, ({ byYear }) => byYear[year] ?? 0)) };
}

/** The longest life among candidates, years. Example: lives of 6 and 8 years give 8. */
export function lifeOf(candidates: readonly Candidate[]): number {
  return Math.max(1, ...candidates.map(({ lifeYears }) => lifeYears));
}

function yearList(years: number, amount: (year: number) => number): number[] {
  // No minus zero: it would be shown with its sign.
  return Array.from({ length: years + 1 }, (_, year) => amount(year) + 0);
}

function sumOf<Item>(items: readonly Item[], amount: (item: Item) => number): number {
  return items.reduce((sum, item) => sum + amount(item), 0);
}

/** 1 where it is bought or replaced at the end of a year: at the start and at the end of each life before the last year. */
function bought({ lifeYears }: Candidate, year: number, years: number): number {
  return year % lifeYears === 0 && year < years ? 1 : 0;
}

function endValue(candidate: Candidate, year: number, years: number): number {
  const { lifeYears, residualValue } = candidate;
  if (year === 0) return 0;
  if (year % lifeYears === 0) return residualValue;
  if (year < years) return 0;
  return candidate.price + candidate.installation - depreciationOf(candidate) * (year % lifeYears);
}

function depreciationOf({ price, installation, residualValue, lifeYears }: Candidate): number {
  return (price + installation - residualValue) / lifeYears;
}

function proceedsOf(change: PurchaseChange): number {
  return change.kind === "sell-machine" ? change.proceeds : 0;
}

function laterValueOf(change: PurchaseChange): number {
  return change.kind === "sell-machine" ? (change.laterValue ?? 0) : 0;
}

function gainOnSale(change: PurchaseChange): number {
  return change.kind === "sell-machine" ? change.proceeds - (change.bookValue ?? change.proceeds) : 0;
}

function moneyIn({ yearly }: CashQuestion, year: number): OperatingMoney {
  const money = yearly[Math.min(year, yearly.length) - 1];
  if (money === undefined) throw new RangeError("the running money of no year is given");
  return money;
}

function taxIn(question: CashQuestion, year: number): number {
  const { candidates, financing } = question;
  const rate = financing.taxPct / 100;
  if (rate === 0) return 0;
  if (year === 0) return rate * sumOf(candidates, ({ changes }) => sumOf(changes, gainOnSale));
  const depreciation = financing.depreciation === "straight-line" ? sumOf(candidates, depreciationOf) : 0;
  const running = totalOf(moneyIn(question, year)) + question.standingPerYear + question.wagesPerYear;
  const own = sumOf(candidates, ({ yearlyCost, training }) => yearlyCost + (year === 1 ? training : 0));
  return rate * (running - own - depreciation);
}
