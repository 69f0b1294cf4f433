import { expect, test } from "vitest";
import {
  addUp,
  depreciationPerYear,
  idleCostPerYear,
  interestPerYear,
  machineHourRate,
  rateAtHours,
} from "../../core/cost/machine-hour-rate.ts";
import type { RateTerm } from "../../core/cost/machine-hour-rate.ts";
import { aCosting, aMachine } from "../fixtures/a-route.ts";

/**
 * Published worked examples of machine-hour rates. The method is that of VDI 3258 (Part 1, 1962; Part 2, 1964; titles and
 * dates from memory), its structure as in technikdoku.com "Maschinenstundensatz".
 */
function fixed(name: string, amount: number): RateTerm {
  return { name, kind: "fixed", amount, formula: "", inputs: [] };
}

function variable(name: string, amount: number): RateTerm {
  return { name, kind: "variable", amount, formula: "", inputs: [] };
}

function amountOf(terms: readonly RateTerm[], name: string): number {
  return terms.find((term) => term.name === name)?.amount ?? Number.NaN;
}

test("exam exercise, TIB AV-Portal video 17936 (2013): 35.00 per h (inputs, depreciation and interest published)", () => {
  const machine = aMachine({
    hourRate: {
      purchasePrice: 400_000,
      residualValue: 200_000,
      lifeYears: 5,
      floorM2: 25,
      powerKW: 25,
      maintenancePctPerYear: 1.375,
      plannedHoursPerYear: 2000,
    },
  });
  const costing = aCosting({ interestPctPerYear: 6, energyPerKWh: 0.08, floorPerM2Year: 100 });
  const rate = machineHourRate(machine, costing);
  expect(amountOf(rate.terms, "depreciation")).toBe(40_000);
  expect(amountOf(rate.terms, "interest")).toBe(18_000);
  expect(amountOf(rate.terms, "floor")).toBe(2500);
  expect(amountOf(rate.terms, "maintenance")).toBeCloseTo(5500, 9);
  expect(amountOf(rate.terms, "energy") * 2000).toBeCloseTo(4000, 9);
  expect(rate.fixedPerYear + rate.variablePerH * 2000).toBeCloseTo(70_000, 8);
  expect(rate.perH).toBeCloseTo(35, 10);
});

test("abwl-camp.de exercise 4.4.D: 70.81 per h, published term by term (its 15 % of interest inferred from 16.67)", () => {
  const hours = 250 * 2 * 8 * 0.9;
  const replacementValue = (800_000 * 143) / 110;
  const terms = [
    fixed("depreciation", depreciationPerYear(replacementValue, -10_000, 10)),
    fixed("interest", interestPerYear("half-purchase", 15, 800_000, 0)),
    fixed("maintenance", 90_000 / 10),
    fixed("floor", 20 * 8),
    variable("energy", 14 * 0.35),
    variable("tool", 2630 / 150),
  ];
  expect(hours).toBe(3600);
  expect(replacementValue).toBeCloseTo(1_040_000, 6);
  const perHour = terms.map((term) => (term.kind === "fixed" ? term.amount / hours : term.amount));
  const published = [29.17, 16.67, 2.5, 0.04, 4.9, 17.53];
  for (const [index, value] of published.entries())
    expect(Math.abs((perHour[index] ?? 0) - value)).toBeLessThan(0.0051);
  expect(Math.abs(addUp(terms, hours).perH - 70.81)).toBeLessThan(0.01);
});

test("OEKL machine reference value 2022: 16.39 per h (its interest of 1.25 % on A + R is 2.5 % on the mean capital)", () => {
  const machine = aMachine({
    hourRate: {
      purchasePrice: 16_700,
      residualValue: 1670,
      lifeYears: 10,
      floorM2: 12,
      powerKW: 0,
      maintenancePctPerYear: 1,
      plannedHoursPerYear: 200,
    },
  });
  const rate = machineHourRate(machine, aCosting({ interestPctPerYear: 2.5, floorPerM2Year: 18.87 }));
  expect(amountOf(rate.terms, "depreciation")).toBeCloseTo(1503, 9);
  expect(Math.abs(amountOf(rate.terms, "interest") - 229.63)).toBeLessThan(0.01);
  expect(amountOf(rate.terms, "floor")).toBeCloseTo(226.44, 9);
  expect(Math.abs(rate.fixedPerYear - 2126.07)).toBeLessThan(0.01);
  const withRepairs = addUp([...rate.terms, variable("repairs", 1152.3 / 200)], 200);
  expect(Math.abs(withRepairs.perH - 16.39)).toBeLessThan(0.01);
});

test("cost-accounting exercise, svtuition.org: 268.33 fixed per month (published), 2.104 per h (recomputed)", () => {
  const monthly = 300 / 4 + (80 * 2) / 10 + 960 / 6 + 9 + 10_000 / 100 / 12;
  expect(Math.abs(monthly - 268.33)).toBeLessThan(0.01);
  const terms = [
    fixed("standing charges", monthly * 12),
    fixed("depreciation", depreciationPerYear(10_000, 900, 10)),
    fixed("repairs", 18_000 / 10),
    variable("energy", 15 * 0.05),
  ];
  const perHour = terms.map((term) => (term.kind === "fixed" ? term.amount / 4380 : term.amount));
  for (const [index, value] of [0.7352, 0.2078, 0.411, 0.75].entries())
    expect(perHour[index]).toBeCloseTo(value, 4);
  expect(Math.abs(addUp(terms, 4380).perH - 2.104)).toBeLessThan(1e-3);
});

test("study-board exercise: 118.75 per h at 1600 h and 156.67 at 1200 h (published); 45 500 of idle cost (recomputed)", () => {
  const rate = addUp([fixed("fixed", 182_000), variable("energy", 10 * 0.5)], 1600);
  expect(rate.perH).toBeCloseTo(118.75, 10);
  expect(Math.abs(rateAtHours(rate, 1200).perH - 156.67)).toBeLessThan(0.01);
  expect(idleCostPerYear(rate, 1200)).toBeCloseTo(45_500, 8);
});

test("both conventions of imputed interest: 16 000 on half the purchase, 18 000 on the mean capital (accounting-exam forum)", () => {
  expect(interestPerYear("half-purchase", 8, 400_000, 50_000)).toBeCloseTo(16_000, 9);
  expect(interestPerYear("mean-capital", 8, 400_000, 50_000)).toBeCloseTo(18_000, 9);
});
