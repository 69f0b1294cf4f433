import type { Candidate } from "../shop/purchase-case.ts";
import type { CashQuestion } from "./cash-flow.ts";
import { valueAtDemand } from "./demand-value.ts";
import { valueOf } from "./most-to-pay.ts";
import { moneyOf, type OperatingRow } from "./operating-money.ts";
import type { DemandPoint } from "./over-life.ts";

/** Inputs that are moved one at a time. */
export type TornadoInput =
  | "price"
  | "demand"
  | "partPrices"
  | "feedstockPrices"
  | "labour"
  | "energy"
  | "boughtOutPrices"
  | "lateCosts"
  | "utilisation"
  | "life"
  | "residual"
  | "discountRate";

/** One input at its low and its high end, and what the case is then worth. */
export interface TornadoBar {
  readonly input: TornadoInput;
  /** value of the input, as `unit` says */
  readonly low: { readonly at: number; readonly value: number };
  readonly high: { readonly at: number; readonly value: number };
  /** times: a multiple of what the case says; years and pctPerYear: the input itself */
  readonly unit: "times" | "years" | "pctPerYear";
  /** from the lowest to the highest of both ends and the case as it is */
  readonly spread: number;
}

/**
 * What the value depends on: each input alone at a low and a high end, the widest bar first. Demand is read from the points
 * worked out at other demands, where there are any. All other inputs change the cash flow with the plans held as they are, so
 * a bar is a little too long where the works would plan otherwise. Utilisation is the share of the running gain that comes
 * about. Ends are common practice, no source. Example: a price of 1000 paid at once moves the value by 200 down and up.
 */
export function tornadoOf(
  question: CashQuestion,
  points: readonly DemandPoint[],
  growthPctPerYear: number,
): TornadoBar[] {
  const bars = [
    ...TIMES.map((own) =>
      barOf(question, own.input, "times", [own.low, own.high], (at) => own.change(question, at)),
    ),
    ...(points.length < 2 ? [] : [demandBar(question, points, growthPctPerYear)]),
    lifeBar(question),
    discountBar(question),
  ];
  return bars.filter(({ spread }) => spread > 0).toSorted((a, b) => b.spread - a.spread);
}

interface TimesInput {
  readonly input: TornadoInput;
  readonly low: number;
  readonly high: number;
  readonly change: (question: CashQuestion, times: number) => CashQuestion;
}

const TIMES: readonly TimesInput[] = [
  {
    input: "price",
    low: 0.8,
    high: 1.2,
    change: eachCandidate((own, times) => ({ ...own, price: own.price * times })),
  },
  {
    input: "residual",
    low: 0,
    high: 2,
    change: eachCandidate((own, times) => ({ ...own, residualValue: own.residualValue * times })),
  },
  { input: "partPrices", low: 0.9, high: 1.1, change: eachRow(["revenue"]) },
  { input: "feedstockPrices", low: 0.8, high: 1.2, change: eachRow(["feedstock"]) },
  {
    input: "labour",
    low: 0.9,
    high: 1.1,
    change: eachRow(["labour", "engineering", "finishing", "changeover"]),
  },
  { input: "energy", low: 0.7, high: 1.5, change: eachRow(["machine"]) },
  { input: "boughtOutPrices", low: 0.8, high: 1.2, change: eachRow(["buyOut"]) },
  { input: "lateCosts", low: 0.5, high: 1.5, change: eachRow(["late"]) },
  { input: "utilisation", low: 0.8, high: 1.1, change: eachRow(null) },
];

function eachCandidate(change: (own: Candidate, times: number) => Candidate): TimesInput["change"] {
  return (question, times) => ({
    ...question,
    candidates: question.candidates.map((own) => change(own, times)),
  });
}

/** The running money with some rows multiplied; null: all of them. */
function eachRow(rows: readonly OperatingRow[] | null): TimesInput["change"] {
  return (question, times) => ({
    ...question,
    yearly: question.yearly.map((money) =>
      moneyOf((row) => (rows === null || rows.includes(row) ? money[row] * times : money[row])),
    ),
  });
}

function barOf(
  question: CashQuestion,
  input: TornadoInput,
  unit: TornadoBar["unit"],
  ends: readonly [number, number],
  change: (at: number) => CashQuestion,
): TornadoBar {
  return barBetween(question, input, unit, ends, (at) => valueOf(change(at)));
}

function barBetween(
  question: CashQuestion,
  input: TornadoInput,
  unit: TornadoBar["unit"],
  [lowAt, highAt]: readonly [number, number],
  valueAt: (at: number) => number,
): TornadoBar {
  const low = { at: lowAt, value: valueAt(lowAt) };
  const high = { at: highAt, value: valueAt(highAt) };
  const values = [low.value, valueOf(question), high.value];
  return { input, low, high, unit, spread: Math.max(...values) - Math.min(...values) };
}

function demandBar(
  question: CashQuestion,
  points: readonly DemandPoint[],
  growthPctPerYear: number,
): TornadoBar {
  const at = (times: number): number => valueAtDemand(question, points, growthPctPerYear, times);
  return barBetween(question, "demand", "times", [0.9, 1.1], at);
}

/** A quarter shorter and longer, a year at least. */
function lifeBar(question: CashQuestion): TornadoBar {
  const longest = Math.max(...question.candidates.map(({ lifeYears }) => lifeYears));
  const step = Math.max(1, Math.round(longest / 4));
  return barOf(question, "life", "years", [Math.max(1, longest - step), longest + step], (years) => ({
    ...question,
    candidates: question.candidates.map((own) => ({
      ...own,
      lifeYears: Math.max(1, own.lifeYears + years - longest),
    })),
  }));
}

/** Three points lower and higher, where there is such a rate. */
function discountBar(question: CashQuestion): TornadoBar {
  const { discountPctPerYear } = question.financing;
  const low = Math.max(LOWEST_RATE_PCT, discountPctPerYear - RATE_STEP_PCT);
  return barOf(question, "discountRate", "pctPerYear", [low, discountPctPerYear + RATE_STEP_PCT], (rate) => ({
    ...question,
    financing: { ...question.financing, discountPctPerYear: rate },
  }));
}

const RATE_STEP_PCT = 3;
const LOWEST_RATE_PCT = -99;
