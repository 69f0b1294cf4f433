import { expect, test } from "vitest";
import { atUtilisation } from "../../../core/cost/at-utilisation.ts";
import {
  addUp,
  idleCostPerYear,
  machineHourRate,
  rateAtHours,
} from "../../../core/cost/machine-hour-rate.ts";
import { aCosting, aMachine, aShop } from "../../fixtures/a-route.ts";

const inputs = {
  purchasePrice: 10_000,
  residualValue: 1000,
  lifeYears: 5,
  floorM2: 4,
  powerKW: 0.5,
  maintenancePctPerYear: 3,
  plannedHoursPerYear: 3000,
};
// Depreciation 1800, interest 330, floor 400, maintenance 300: fixed 2830; energy 0.15 per h.
const rate = machineHourRate(aMachine({ hourRate: inputs }), aCosting());

test("every term opens to a formula and the numbers in it", () => {
  expect(rate.terms.map((term) => [term.name, term.kind, Math.round(term.amount * 1e9) / 1e9])).toEqual([
    ["depreciation", "fixed", 1800],
    ["interest", "fixed", 330],
    ["floor", "fixed", 400],
    ["maintenance", "fixed", 300],
    ["energy", "variable", 0.15],
  ]);
  expect(rate.terms.every((term) => term.formula.length > 0 && term.inputs.length > 0)).toBe(true);
  expect(rate.perH).toBeCloseTo(2830 / 3000 + 0.15, 12);
});

test("the interest variant is the shop's choice", () => {
  const half = machineHourRate(aMachine({ hourRate: inputs }), aCosting({ interestOn: "half-purchase" }));
  expect(half.terms.find((term) => term.name === "interest")?.amount).toBeCloseTo(300, 12);
  expect(half.fixedPerYear).toBeCloseTo(2800, 9);
});

test("a rate given as one number is one term and does not depend on hours", () => {
  const given = machineHourRate(aMachine({ hourRate: 6 }), aCosting());
  expect(given).toMatchObject({ perH: 6, fixedPerYear: 0, variablePerH: 6, hoursPerYear: null });
  expect(rateAtHours(given, 10).perH).toBe(6);
  expect(idleCostPerYear(given, 0)).toBe(0);
});

test("at other hours only the fixed part is divided anew", () => {
  expect(rateAtHours(rate, 1500).perH).toBeCloseTo((rate.perH - 0.15) * 2 + 0.15, 12);
  expect(rateAtHours(rate, 3000).perH).toBe(rate.perH);
});

test("idle cost is all of the fixed part at no use, and nothing at or above the planned hours", () => {
  expect(idleCostPerYear(rate, 0)).toBeCloseTo(2830, 9);
  expect(idleCostPerYear(rate, 2999)).toBeGreaterThan(0);
  expect(idleCostPerYear(rate, 3000)).toBe(0);
  expect(idleCostPerYear(rate, 4000)).toBe(0);
});

test("hours of 0 and fixed terms without hours are a programmer's mistake", () => {
  expect(() => rateAtHours(rate, 0)).toThrow("above 0");
  expect(() => rateAtHours(rate, Number.NaN)).toThrow("above 0");
  expect(() => addUp(rate.terms, null)).toThrow("needs the hours");
});

test("a shop at another utilisation changes planned hours of computed rates only", () => {
  const shop = aShop({ machines: [aMachine({ hourRate: inputs }), aMachine({ id: "F2", hourRate: 6 })] });
  const [computed, given] = atUtilisation(shop, 0.5).machines;
  expect(computed && machineHourRate(computed, shop.costing).perH).toBeCloseTo(
    rateAtHours(rate, 1500).perH,
    12,
  );
  expect(given).toBe(shop.machines[1]);
  expect(() => atUtilisation(shop, 0)).toThrow("above 0");
});
