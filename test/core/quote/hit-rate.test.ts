import { describe, expect, test } from "vitest";
import { quoteRecord } from "../../../core/quote/hit-rate.ts";
import { quoteValue } from "../../../core/quote/quote-value.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import { aQuote, aQuoteLine } from "../../fixtures/a-quote.ts";

function worth(total: number, state: Quote["state"], reason = ""): Quote {
  return aQuote({ state, reason, lines: [aQuoteLine({ quantity: 1, pricePerPiece: total })] });
}

describe("what a quote comes to", () => {
  test("is what its customer adds up: copies, what is charged once, and what the smallest order adds", () => {
    const lines = [
      aQuoteLine({ quantity: 6, pricePerPiece: 3.23, oneOffPrice: 30 }),
      aQuoteLine({ quantity: 40, pricePerPiece: 1.88 }),
    ];
    expect(quoteValue(aQuote({ lines }), "EUR")).toEqual({
      lines: [49.38, 75.2],
      minimumSurcharge: 0,
      total: 124.58,
    });
    expect(quoteValue(aQuote({ lines, minimumSurcharge: 25.42 }), "EUR").total).toBe(150);
  });

  test("is nothing that can be added up where a line has no price", () => {
    const lines = [aQuoteLine({ pricePerPiece: 1 }), aQuoteLine({ pricePerPiece: null })];
    expect(quoteValue(aQuote({ lines }), "EUR")).toMatchObject({ lines: [10, null], total: null });
  });
});

describe("hit rate", () => {
  const quotes = [
    worth(99.99, "accepted"),
    worth(100, "accepted"),
    worth(500, "accepted"),
    worth(999, "declined", "price"),
    worth(800, "sent"),
    worth(1000, "declined", "price"),
    worth(3000, "declined", "date"),
    worth(20, "draft"),
    aQuote({ state: "declined" }),
  ];
  const record = quoteRecord(quotes, "EUR");

  test("is the share of those decided that were accepted, by number and by value", () => {
    expect(record.counts).toEqual({ draft: 1, sent: 1, accepted: 3, declined: 4 });
    expect(record.hitRate).toBeCloseTo(3 / 7, 12);
    expect(record.hitRateByValue).toBeCloseTo(699.99 / (699.99 + 4999), 12);
  });

  test("is told by powers of ten of the value, the lower end within", () => {
    expect(record.sizes).toEqual([
      { from: 10, to: 100, accepted: 1, declined: 0, open: 1, hitRate: 1 },
      { from: 100, to: 1000, accepted: 2, declined: 1, open: 1, hitRate: 2 / 3 },
      { from: 1000, to: 10_000, accepted: 0, declined: 2, open: 0, hitRate: 0 },
    ]);
  });

  test("counts why quotes were declined, the most frequent first, the unsaid among them", () => {
    expect(record.reasons).toEqual([
      { reason: "price", count: 2, value: 1999 },
      { reason: "", count: 1, value: 0 },
      { reason: "date", count: 1, value: 3000 },
    ]);
  });

  test("is unknown where nothing is decided", () => {
    expect(quoteRecord([worth(5, "sent")], "EUR")).toMatchObject({ hitRate: null, hitRateByValue: null });
    expect(quoteRecord([], "EUR").sizes).toEqual([]);
  });
});
