import { irr, mirr, npv } from "financial";
import { describe, expect, test } from "vitest";
import { capitalRecovery, equivalentAnnual } from "../../core/purchase/equivalent-annual.ts";
import { paybackYears } from "../../core/purchase/payback.ts";
import { datedPresentValue, netPresentValue } from "../../core/purchase/present-value.ts";
import {
  datedRatesOfReturn,
  modifiedRateOfReturn,
  ratesOfReturn,
} from "../../core/purchase/rate-of-return.ts";
import { seededRandom } from "../../core/units/random.ts";

/** Days since 1970. */
const day = (text: string): number => Date.parse(`${text}T00:00:00Z`) / 86_400_000;
const S = [-1000, 500, 400, 300, 100];
const L = [-1000, 100, 300, 400, 675];

describe("Brigham and Ehrhardt's pair of projects (from memory, reproduced)", () => {
  test.each([
    ["S", S, 78.8198, 14.4888, 2.3333, 2.9533, 12.1063],
    ["L", L, 100.403, 13.5492, 3.2963, 3.7822, 12.6628],
  ])("project %s", (_, flows, value, ratePct, plain, discounted, modifiedPct) => {
    expect(netPresentValue(flows, 0.1)).toBeCloseTo(value, 4);
    expect(ratesOfReturn(flows)).toHaveLength(1);
    expect(100 * ratesOfReturn(flows)[0]!).toBeCloseTo(ratePct, 4);
    expect(paybackYears(flows)).toBeCloseTo(plain, 4);
    expect(paybackYears(flows, 0.1)).toBeCloseTo(discounted, 4);
    expect(100 * modifiedRateOfReturn(flows, 0.1, 0.1)!).toBeCloseTo(modifiedPct, 4);
  });

  test("cross at 11.9748 %: below it L is worth more although S has the higher rate", () => {
    const difference = L.map((flow, year) => flow - S[year]!);
    const [rate] = ratesOfReturn(difference);
    expect(rate).toBeCloseTo(0.119748, 6);
    expect(netPresentValue(L, 0.11)).toBeGreaterThan(netPresentValue(S, 0.11));
    expect(netPresentValue(L, 0.13)).toBeLessThan(netPresentValue(S, 0.13));
  });
});

describe("examples of a spreadsheet's help (from memory, reproduced)", () => {
  test("-10000, 3000, 4200, 6800, all one period later, are worth 1188.44 at 10 %", () => {
    expect(netPresentValue([0, -10000, 3000, 4200, 6800], 0.1)).toBeCloseTo(1188.44, 2);
  });

  test("-70000, 12000, 15000, 18000, 21000 and 26000 return 8.6631 %, without the last year -2.1245 %", () => {
    const flows = [-70000, 12000, 15000, 18000, 21000, 26000];
    expect(ratesOfReturn(flows)[0]).toBeCloseTo(0.086631, 6);
    expect(ratesOfReturn(flows.slice(0, -1))[0]).toBeCloseTo(-0.021245, 6);
  });

  test("-120000, 39000, 30000, 21000, 37000, 46000 have a modified rate of 12.6094 % at 10 and 12 %", () => {
    const rate = modifiedRateOfReturn([-120000, 39000, 30000, 21000, 37000, 46000], 0.1, 0.12);
    expect(rate).toBeCloseTo(0.126094, 6);
  });

  test("flows on days are worth 2086.6476 at 9 % and return 37.3363 %", () => {
    const flows = [
      { day: day("2008-01-01"), amount: -10000 },
      { day: day("2008-03-01"), amount: 2750 },
      { day: day("2008-10-30"), amount: 4250 },
      { day: day("2009-02-15"), amount: 3250 },
      { day: day("2009-04-01"), amount: 2750 },
    ];
    expect(datedPresentValue(flows, 0.09)).toBeCloseTo(2086.6476, 3);
    expect(datedRatesOfReturn(flows)[0]).toBeCloseTo(0.373363, 6);
  });
});

describe("rates of return", () => {
  test("are 0.5672303344358536 for the example of numpy-financial's documentation (published)", () => {
    const flows = [-250000, 100000, 150000, 200000, 250000, 300000];
    expect(ratesOfReturn(flows)[0]).toBeCloseTo(0.5672303344358536, 10);
  });

  test("are two for the oil pump, 25 and 400 %, and at 10 % it loses 773.5537 (Lorie and Savage, from memory)", () => {
    const [low, high, ...more] = ratesOfReturn([-1600, 10000, -10000]);
    expect(low).toBeCloseTo(0.25, 9);
    expect(high).toBeCloseTo(4, 9);
    expect(more).toEqual([]);
    expect(netPresentValue([-1600, 10000, -10000], 0.1)).toBeCloseTo(-773.5537, 4);
  });

  test("do not exist where money only goes out, or only comes in", () => {
    expect(ratesOfReturn([-100, -10])).toEqual([]);
    expect(ratesOfReturn([100, 10])).toEqual([]);
    expect(modifiedRateOfReturn([-100, -10], 0.1, 0.1)).toBeNull();
    expect(modifiedRateOfReturn([100, 10], 0.1, 0.1)).toBeNull();
  });

  test("of -100 % and less are refused as a rate to discount at", () => {
    expect(() => netPresentValue(S, -1)).toThrow(RangeError);
    expect(() => netPresentValue(S, Number.NaN)).toThrow(RangeError);
  });
});

describe("equivalent annual amounts", () => {
  test("15, 5, 5, 5 against 10, 6, 6 at 6 %: worth 28.37 and 21.00, 10.61 and 11.45 a year (Brealey, Myers and Allen, from memory)", () => {
    expect(netPresentValue([15, 5, 5, 5], 0.06)).toBeCloseTo(28.37, 2);
    expect(netPresentValue([10, 6, 6], 0.06)).toBeCloseTo(21.0, 2);
    expect(Math.abs(equivalentAnnual([15, 5, 5, 5], 0.06) - 10.61)).toBeLessThan(5e-3);
    expect(Math.abs(equivalentAnnual([10, 6, 6], 0.06) - 11.45)).toBeLessThan(5e-3);
  });

  test.each([
    [0.05, 5, 0.230975],
    [0.1, 10, 0.162745],
    [0.12, 20, 0.133879],
    [0, 4, 0.25],
  ])("capital recovery at %d over %d years is %d (interest tables, from memory)", (rate, years, factor) => {
    expect(capitalRecovery(rate, years)).toBeCloseTo(factor, 6);
  });
});

describe("payback", () => {
  test("is Infinity where the money never comes back, and counts the last return where it is lost again", () => {
    expect(paybackYears([-100, 10, 10])).toBe(Number.POSITIVE_INFINITY);
    expect(paybackYears([-100, 150, -100, 100])).toBeCloseTo(2.5, 12);
    expect(paybackYears([-100, 150, -100])).toBe(Number.POSITIVE_INFINITY);
    expect(paybackYears([0, 5])).toBe(0);
  });
});

test("agrees with the package financial on 300 random cash flows with one change of sign", () => {
  const random = seededRandom(11);
  let compared = 0;
  for (let round = 0; round < 300; round++) {
    const years = 2 + Math.floor(random() * 10);
    const flows = [-1000 - 5000 * random(), ...Array.from({ length: years }, () => 2500 * random())];
    const rate = 0.3 * random();
    expect(netPresentValue(flows, rate)).toBeCloseTo(npv(rate, flows), 6);
    expect(modifiedRateOfReturn(flows, rate, rate / 2)).toBeCloseTo(mirr(flows, rate, rate / 2), 9);
    const [own] = ratesOfReturn(flows);
    if (own === undefined) continue;
    expect(netPresentValue(flows, own) / 1000).toBeCloseTo(0, 6);
    const theirs = irr(flows);
    if (!(theirs > -1 && theirs < 1e6)) continue; // its iteration ran away
    expect(own).toBeCloseTo(theirs, 5);
    compared += 1;
  }
  expect(compared).toBeGreaterThan(200);
});
