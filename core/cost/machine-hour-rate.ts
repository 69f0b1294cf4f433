import type { Costing } from "../shop/costing.ts";
import type { HourRateInputs, Machine } from "../shop/machine.ts";
import type { CostInput } from "./cost-line.ts";

/**
 * Machine-hour rate in the manner of VDI 3258 (from memory: Part 1, 1962; Part 2, 1964): what a machine costs in a year,
 * divided by the hours in use, and what each hour costs by itself. An operator's wage is never in it.
 */

/** One part of the rate. A fixed term is money per year, a variable one money per hour of use. */
export interface RateTerm {
  readonly name: string;
  readonly kind: "fixed" | "variable";
  /** per year (fixed) or per hour (variable), major units */
  readonly amount: number;
  readonly formula: string;
  readonly inputs: readonly CostInput[];
}

export interface MachineHourRate {
  readonly perH: number;
  readonly fixedPerYear: number;
  readonly variablePerH: number;
  /** hours in use per year that the fixed part is divided by; null where the rate was given as one number */
  readonly hoursPerYear: number | null;
  readonly terms: readonly RateTerm[];
}

/**
 * The rate of one machine: the number the shop gave, or the sum of depreciation, interest, floor and maintenance divided by
 * the planned hours, and energy. Example: bought 400 000, worth 200 000 after 5 years, 6 %, floor 2 500, maintenance 5 500,
 * 25 kW at 0.08, 2 000 h per year: 66 000 / 2 000 + 2 = 35 per h.
 */
export function machineHourRate(machine: Machine, costing: Costing): MachineHourRate {
  const { hourRate } = machine;
  if (typeof hourRate === "number") return addUp([givenTerm(hourRate)], null);
  return addUp(handbookTerms(hourRate, costing), hourRate.plannedHoursPerYear);
}

/**
 * Adds terms up to a rate: fixed / hours per year + variable. Example: fixed 182 000 per year, 10 kW at 0.50, 1 600 h:
 * 118.75 per h.
 */
export function addUp(terms: readonly RateTerm[], hoursPerYear: number | null): MachineHourRate {
  const fixedPerYear = sumOf(terms, "fixed");
  const variablePerH = sumOf(terms, "variable");
  if (hoursPerYear === null) {
    if (fixedPerYear !== 0) throw new RangeError("a fixed part needs the hours per year to be divided by");
    return { perH: variablePerH, fixedPerYear, variablePerH, hoursPerYear, terms };
  }
  if (!(hoursPerYear > 0)) throw new RangeError(`hours per year must be above 0, got ${hoursPerYear}`);
  return {
    perH: fixedPerYear / hoursPerYear + variablePerH,
    fixedPerYear,
    variablePerH,
    hoursPerYear,
    terms,
  };
}

/**
 * The same machine used for other hours per year: only the fixed part is divided anew; a rate given as one number stays.
 * Example: 118.75 per h at 1 600 h (5 of it energy) becomes 156.67 at 1 200 h.
 */
export function rateAtHours(rate: MachineHourRate, hoursPerYear: number): MachineHourRate {
  return rate.hoursPerYear === null ? rate : addUp(rate.terms, hoursPerYear);
}

/**
 * Cost per year of capacity that was planned and not used: fixed x (1 - used / planned), 0 from the planned hours on.
 * Example: fixed 182 000, planned 1 600 h, used 1 200 h: 45 500 per year.
 */
export function idleCostPerYear(rate: MachineHourRate, usedHoursPerYear: number): number {
  if (rate.hoursPerYear === null) return 0;
  return rate.fixedPerYear * Math.max(0, 1 - usedHoursPerYear / rate.hoursPerYear);
}

/**
 * Straight-line depreciation per year: (value - residual value) / life. A cost of scrapping is a negative residual value.
 * Example: (400 000 - 200 000) / 5 = 40 000.
 */
export function depreciationPerYear(value: number, residualValue: number, lifeYears: number): number {
  return (value - residualValue) / lifeYears;
}

/**
 * Imputed interest per year on the capital tied up, in the shop's variant: rate x (purchase + residual)/2, or
 * rate x purchase/2. Example: 8 % of 400 000 and 50 000: 18 000, or 16 000.
 */
export function interestPerYear(
  variant: Costing["interestOn"],
  ratePct: number,
  purchasePrice: number,
  residualValue: number,
): number {
  const counted = variant === "mean-capital" ? purchasePrice + residualValue : purchasePrice;
  return ((ratePct / 100) * counted) / 2;
}

function handbookTerms(inputs: HourRateInputs, costing: Costing): RateTerm[] {
  return [
    depreciationTerm(inputs),
    interestTerm(inputs, costing),
    productTerm("fixed", "floor", [
      { name: "floor area", value: inputs.floorM2, unit: "m2" },
      { name: "cost of floor", value: costing.floorPerM2Year, unit: "per m2 and year" },
    ]),
    productTerm("fixed", "maintenance", [
      { name: "purchase price", value: inputs.purchasePrice, unit: "currency" },
      { name: "maintenance", value: inputs.maintenancePctPerYear / 100, unit: "of purchase price per year" },
    ]),
    productTerm("variable", "energy", [
      { name: "mean power", value: inputs.powerKW, unit: "kW" },
      { name: "price of electricity", value: costing.energyPerKWh, unit: "per kWh" },
    ]),
  ];
}

function givenTerm(perH: number): RateTerm {
  const inputs = [{ name: "machine-hour rate", value: perH, unit: "per h" }];
  return { name: "given rate", kind: "variable", amount: perH, formula: "as given for the machine", inputs };
}

function depreciationTerm(inputs: HourRateInputs): RateTerm {
  const { purchasePrice, residualValue, lifeYears } = inputs;
  return {
    name: "depreciation",
    kind: "fixed",
    amount: depreciationPerYear(purchasePrice, residualValue, lifeYears),
    formula: "(purchase price - residual value) / life",
    inputs: [
      { name: "purchase price", value: purchasePrice, unit: "currency" },
      { name: "residual value", value: residualValue, unit: "currency" },
      { name: "life", value: lifeYears, unit: "years" },
    ],
  };
}

function interestTerm(inputs: HourRateInputs, costing: Costing): RateTerm {
  const { purchasePrice, residualValue } = inputs;
  const { interestOn, interestPctPerYear } = costing;
  const capital =
    interestOn === "mean-capital" ? "(purchase price + residual value) / 2" : "purchase price / 2";
  return {
    name: "interest",
    kind: "fixed",
    amount: interestPerYear(interestOn, interestPctPerYear, purchasePrice, residualValue),
    formula: `interest rate x ${capital}`,
    inputs: [
      { name: "interest rate", value: interestPctPerYear, unit: "% per year" },
      { name: "purchase price", value: purchasePrice, unit: "currency" },
      { name: "residual value", value: residualValue, unit: "currency" },
    ],
  };
}

function productTerm(kind: RateTerm["kind"], name: string, inputs: readonly CostInput[]): RateTerm {
  const amount = inputs.reduce((product, input) => product * input.value, 1);
  return { name, kind, amount, formula: inputs.map((input) => input.name).join(" x "), inputs };
}

function sumOf(terms: readonly RateTerm[], kind: RateTerm["kind"]): number {
  return terms.reduce((sum, term) => (term.kind === kind ? sum + term.amount : sum), 0);
}
