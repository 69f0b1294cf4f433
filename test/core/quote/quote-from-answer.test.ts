import { beforeAll, describe, expect, test } from "vitest";
import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { quoteFromAnswer } from "../../../core/quote/quote-from-answer.ts";
import { answerQuote } from "../../../core/quote/quote-job.ts";
import { quoteValue } from "../../../core/quote/quote-value.ts";
import { checkShop } from "../../../core/shop/check-shop.ts";
import { instantOf, minuteOf } from "../../../core/shop/instants.ts";
import { type Quote, quoteSchema } from "../../../core/shop/quote.ts";
import { aLine, aQuoteDesk } from "../../fixtures/a-quote-desk.ts";
import { aShop } from "../../fixtures/a-route.ts";

const FROM = minuteOf("2026-11-30T06:00", "Europe/Berlin");
const seller = { name: "Invented", address: "", contact: "", taxNumber: "", terms: "", validDays: 14 };
const shop = aShop({ seller, costing: { ...aShop().costing, minimumOrder: 500 } });
const HEAD = { id: "Q-2026-0001", customer: "Somebody", customerAddress: "Here", note: "", askedMin: FROM };

let answer: QuoteAnswer;
let quote: Quote;
beforeAll(async () => {
  const desk = await aQuoteDesk({ shop, request: { fromMin: FROM, days: 7 } });
  const lines = [
    { ...aLine(desk, "clip", 6, 3), machineId: "F1" },
    { ...aLine(desk, "clip", 2, null), id: "Q-2" },
  ];
  answer = await answerQuote(desk, { lines, runs: 100, charging: "apart" });
  quote = quoteFromAnswer(shop, answer, HEAD);
});

describe("a quote from an answer", () => {
  test("is a draft by the schema, and finds nothing wrong in its shop", () => {
    expect(quoteSchema.parse(quote)).toEqual(quote);
    expect(quote.state).toBe("draft");
    expect(checkShop({ ...shop, quotes: [quote] })).toEqual([]);
  });

  test("holds as many days as the seller says", () => {
    expect(quote.askedAt).toBe("2026-11-30T06:00:00+01:00");
    expect(quote.validUntil).toBe("2026-12-14T06:00:00+01:00");
    expect(quoteFromAnswer(aShop(), answer, HEAD).validUntil).toBe("2026-12-30T06:00:00+01:00");
  });

  test("has the prices, dates and likelihoods of the answer", () => {
    quote.lines.forEach((line, at) => {
      const { price, promise, asked } = answer.lines[at]!;
      expect(line).toMatchObject({ pricePerPiece: price!.pricePerPiece, oneOffPrice: price!.oneOffPrice });
      expect(line.promisedAt).toBe(instantOf(promise!.byMin, shop.timeZone));
      expect(line.likelihoodPct).toBe(promise!.likelihoodPct);
      expect(line.wantedAt === null).toBe(asked.wantedMin === null);
    });
    expect(quote.lines.map(({ machineId }) => machineId)).toEqual(["F1", undefined]);
  });

  test("charges tool paths and first set-up apart where that was asked for", () => {
    expect(quote.lines[0]!.oneOffPrice).toBeGreaterThan(0);
  });

  test("comes to the total of the answer, the smallest order added", () => {
    expect(quoteValue(quote, "EUR").total).toBe(answer.total!.total);
    expect(answer.total!.total).toBe(500);
  });
});
