import { describe, expect, test } from "vitest";
import {
  type PriceRule,
  priceBreaks,
  priceLine,
  priceOf,
  priceRule,
  quoteTotal,
} from "../../../core/quote/price.ts";
import { COSTING } from "../../../assets/demo/works.ts";
import { seededRandom } from "../../../core/units/random.ts";

const RULE: PriceRule = { marginPct: 25, marginOn: "price", minimumOrder: 0, currency: "EUR" };

describe("price of a cost", () => {
  test("a margin of 25 % on price makes 75 to 100, a mark-up of 25 % on cost to 93.75", () => {
    expect(priceOf(75, RULE)).toBeCloseTo(100, 12);
    expect(priceOf(75, { ...RULE, marginOn: "cost" })).toBeCloseTo(93.75, 12);
  });

  test("worked build cost of 95.2753 at 30 % on price: 136.1075 (own worked example)", () => {
    expect(priceOf(95.2753, { ...RULE, marginPct: 30 })).toBeCloseTo(136.1075, 3);
  });

  test("a mark-up m is a margin of m / (1 + m)", () => {
    const markUp = priceOf(80, { ...RULE, marginPct: 50, marginOn: "cost" });
    expect(priceOf(80, { ...RULE, marginPct: 100 / 3 })).toBeCloseTo(markUp, 9);
  });

  test("a margin of the whole price gives no price, 99 % still does, a mark-up of 100 % too", () => {
    const line = { quantity: 1, copiesCost: 10, oneOffCost: 0 };
    expect(priceLine(line, { ...RULE, marginPct: 100 })).toBeNull();
    expect(priceLine(line, { ...RULE, marginPct: 99 })?.total).toBe(1000);
    expect(priceLine(line, { ...RULE, marginPct: 100, marginOn: "cost" })?.total).toBe(20);
  });

  test("where the shop says nothing the margin is on price and there is no smallest order", () => {
    const { marginOn: _marginOn, minimumOrder: _minimumOrder, ...costing } = COSTING;
    expect(priceRule({ costing, currency: "EUR" })).toEqual({ ...RULE, marginPct: COSTING.marginPct });
  });
});

describe("totals", () => {
  test("3 copies that cost 10 are 4.44 each and 13.32 in all, as the customer adds up", () => {
    expect(priceLine({ quantity: 3, copiesCost: 10, oneOffCost: 0 }, RULE)).toEqual({
      quantity: 3,
      pricePerPiece: 4.44,
      oneOffPrice: 0,
      total: 13.32,
    });
  });

  test("what is charged once is priced by the same rule beside the copies", () => {
    const price = priceLine({ quantity: 2, copiesCost: 15, oneOffCost: 30 }, RULE);
    expect(price).toEqual({ quantity: 2, pricePerPiece: 10, oneOffPrice: 40, total: 60 });
  });

  test("below the smallest order the rest is added, at and above it nothing", () => {
    const rule = { ...RULE, minimumOrder: 60 };
    expect(quoteTotal([30, 12.5], rule)).toEqual({ lines: 42.5, minimumSurcharge: 17.5, total: 60 });
    expect(quoteTotal([60], rule).minimumSurcharge).toBe(0);
    expect(quoteTotal([60.01], rule)).toEqual({ lines: 60.01, minimumSurcharge: 0, total: 60.01 });
    expect(quoteTotal([], rule).total).toBe(0);
  });

  test("in whole minor units of each currency every total is quantity x price + once, for 500 random lines", () => {
    const random = seededRandom(3);
    for (const [currency, digits] of [
      ["EUR", 2],
      ["JPY", 0],
      ["KWD", 3],
    ] as const) {
      for (let round = 0; round < 500; round++) {
        const quantity = 1 + Math.floor(random() * 300);
        const line = { quantity, copiesCost: random() * 5000, oneOffCost: random() * 200 };
        const price = priceLine(line, { ...RULE, currency })!;
        const minor = (amount: number): number => Math.round(amount * 10 ** digits);
        expect(minor(price.total)).toBe(quantity * minor(price.pricePerPiece) + minor(price.oneOffPrice));
        expect(Number.isInteger(+(price.pricePerPiece * 10 ** digits).toFixed(6))).toBe(true);
      }
    }
  });
});

describe("price breaks", () => {
  test("more copies never have a higher price each, and none is below its own", () => {
    const costs = [
      { quantity: 20, costPerCopy: 7 },
      { quantity: 1, costPerCopy: 10 },
      { quantity: 10, costPerCopy: 6 },
    ];
    expect(priceBreaks(costs, { ...RULE, marginPct: 0 })).toEqual([
      { quantity: 1, pricePerPiece: 10 },
      { quantity: 10, pricePerPiece: 7 },
      { quantity: 20, pricePerPiece: 7 },
    ]);
  });
});
