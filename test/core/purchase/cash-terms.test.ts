import { describe, expect, test } from "vitest";
import { cashShop, shiftWagesPerYear, standingCashPerYear } from "../../../core/purchase/cash-terms.ts";
import { machineHourRate } from "../../../core/cost/machine-hour-rate.ts";
import { aCosting, aMachine, aShop } from "../../fixtures/a-route.ts";

/** 25 kW at 0.08, floor 2 500, maintenance 5 500, depreciation 40 000 and interest 18 000 a year over 2 000 h. */
const shop = aShop({
  costing: aCosting({ interestPctPerYear: 6, energyPerKWh: 0.08, floorPerM2Year: 100, overheadPct: 12 }),
  machines: [
    aMachine({
      hourRate: {
        purchasePrice: 400_000,
        residualValue: 200_000,
        lifeYears: 5,
        floorM2: 25,
        powerKW: 25,
        maintenancePctPerYear: 1.375,
        plannedHoursPerYear: 2000,
      },
    }),
  ],
});

function perH(of: typeof shop): number {
  return machineHourRate(of.machines[0]!, of.costing).perH;
}

describe("cash of a machine", () => {
  test("by the hour is its energy alone: interest and depreciation are in the price and the discount rate", () => {
    expect(perH(shop)).toBeCloseTo(35, 9);
    expect(perH(cashShop(shop))).toBeCloseTo(2, 12);
  });

  test("by the year is floor and maintenance", () => {
    expect(standingCashPerYear(shop)).toBeCloseTo(8000, 9);
  });

  test("and what is left out make up the whole rate again", () => {
    const leftOut = 40_000 + 18_000;
    const year = perH(cashShop(shop)) * 2000 + standingCashPerYear(shop) + leftOut;
    expect(year).toBeCloseTo(perH(shop) * 2000, 6);
  });

  test("has no overhead, and nothing else of the shop changes", () => {
    const cash = cashShop(shop);
    expect(cash.costing).toEqual({ ...shop.costing, overheadPct: 0 });
    expect(cash.parts).toBe(shop.parts);
  });

  test("of a rate given as one number is the share that the case names, none unless it does", () => {
    const given = { ...shop, machines: [aMachine({ hourRate: 12 })] };
    expect(perH(cashShop(given))).toBe(0);
    expect(perH(cashShop(given, 25))).toBe(3);
    expect(standingCashPerYear(given)).toBe(0);
  });
});

describe("wages of an added shift", () => {
  const shift = { days: [1, 2, 3, 4, 5], start: "14:00", end: "22:00", operators: 2 };

  test("are 52 weeks of its hours, with premium, less other useful work", () => {
    expect(shiftWagesPerYear({ shift, premiumPct: 25, otherWorkPct: 25 }, 30)).toBeCloseTo(117_000, 6);
    expect(shiftWagesPerYear({ shift, premiumPct: 0, otherWorkPct: 100 }, 30)).toBe(0);
  });

  test("count a shift past midnight and one of a whole day in full", () => {
    const night = { ...shift, start: "22:00", end: "06:00" };
    const whole = { ...shift, start: "06:00", end: "06:00" };
    expect(shiftWagesPerYear({ shift: night, premiumPct: 0, otherWorkPct: 0 }, 1)).toBe(52 * 5 * 8 * 2);
    expect(shiftWagesPerYear({ shift: whole, premiumPct: 0, otherWorkPct: 0 }, 1)).toBe(52 * 5 * 24 * 2);
  });
});
