import { describe, expect, it } from "vitest";
import { checkShop } from "../../../core/shop/check-shop.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import { readShop } from "../../../core/shop/read-shop.ts";
import { aQuote, aQuoteLine } from "../../fixtures/a-quote.ts";
import { aCosting, aShop } from "../../fixtures/a-route.ts";

function said(quotes: Quote[]): [string, string][] {
  return checkShop(aShop({ quotes }))
    .filter(({ where }) => where.startsWith("quotes/"))
    .map(({ where, severity }) => [where, severity]);
}

describe("findings about quotes", () => {
  it("a quote whose references and dates hold has none", () => {
    expect(said([aQuote()])).toEqual([]);
  });

  it.each([
    ["part", aQuoteLine({ partId: "gone" }), "quotes/Q-1/lines/0/partId"],
    ["machine", aQuoteLine({ machineId: "gone" }), "quotes/Q-1/lines/0/machineId"],
    ["feedstock", aQuoteLine({ feedstockId: "gone" }), "quotes/Q-1/lines/0/feedstockId"],
    [
      "break",
      aQuoteLine({
        breaks: [
          { quantity: 5, pricePerPiece: 4 },
          { quantity: 5, pricePerPiece: 3 },
        ],
      }),
      "quotes/Q-1/lines/0/breaks",
    ],
  ])(
    "an unknown or doubled %s is a warning at its field: the week can still be planned",
    (_what, line, where) => {
      expect(said([aQuote({ lines: [line] })])).toEqual([[where, "warning"]]);
    },
  );

  it("a date that does not exist is an error of the quote alone", () => {
    expect(said([aQuote({ lines: [aQuoteLine({ wantedAt: "2026-02-30T08:00:00Z" })] })])).toEqual([
      ["quotes/Q-1/lines/0/wantedAt", "error"],
    ]);
  });

  it("validity before the day of asking is said; the same instant is not", () => {
    expect(said([aQuote({ validUntil: "2026-11-30T07:59:00+01:00" })])).toEqual([
      ["quotes/Q-1/validUntil", "warning"],
    ]);
    expect(said([aQuote({ validUntil: "2026-11-30T08:00:00+01:00" })])).toEqual([]);
  });

  it("two lines of one id are an error", () => {
    expect(said([aQuote({ lines: [aQuoteLine(), aQuoteLine()] })])).toEqual([["quotes/Q-1/lines", "error"]]);
  });
});

describe("a shop file", () => {
  it("without a list of quotes reads as one with none", () => {
    const { quotes: _none, ...older } = aShop();
    const { shop, findings } = readShop(JSON.stringify(older));
    expect(findings).toEqual([]);
    expect(shop?.quotes).toEqual([]);
  });

  it("keeps its good quotes where one cannot be read, and names that one", () => {
    const text = JSON.stringify({ ...aShop(), quotes: [aQuote(), { ...aQuote({ id: "Q-2" }), lines: [] }] });
    const { shop, findings } = readShop(text);
    expect(shop?.quotes.map(({ id }) => id)).toEqual(["Q-1"]);
    expect(findings.map(({ sentence }) => sentence)).toEqual(["Quote Q-2: lines asks for nothing."]);
  });
});

function codes(marginPct: number, marginOn: "price" | "cost"): string[] {
  return checkShop(aShop({ costing: aCosting({ marginPct, marginOn }) }))
    .filter(({ where }) => where === "costing/marginPct")
    .map(({ code }) => code);
}

describe("the margin", () => {
  it.each([
    [94.9, "price", []],
    [95, "price", ["unusual"]],
    [99.9, "price", ["unusual"]],
    [100, "price", ["margin-of-all"]],
    [150, "cost", []],
    [400, "cost", []],
    [400.1, "cost", ["unusual"]],
  ] as const)("of %s %% on %s gives %j", (pct, on, expected) => {
    expect(codes(pct, on)).toEqual(expected);
  });
});
