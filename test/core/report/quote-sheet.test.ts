import { createHash } from "node:crypto";
import { beforeAll, describe, expect, test } from "vitest";
import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { quoteFromAnswer } from "../../../core/quote/quote-from-answer.ts";
import { answerQuote } from "../../../core/quote/quote-job.ts";
import { boxMesh } from "../../../core/report/coarse-mesh.ts";
import { quoteContext } from "../../../core/report/quote-facts.ts";
import { quoteSheet } from "../../../core/report/quote-sheet.ts";
import { quoteText } from "../../../core/report/quote-text.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { aLine, aQuoteDesk } from "../../fixtures/a-quote-desk.ts";
import { aMachine, aPart, aShop } from "../../fixtures/a-route.ts";
import { HOSTILE_NAMES } from "../../fixtures/hostile-names.ts";

const FROM = minuteOf("2026-11-30T06:00", "Europe/Berlin");
const seller = {
  name: "Invented seller",
  address: "1 Invented Street\nNowhere",
  contact: "desk@seller.invalid",
  taxNumber: "X-0",
  terms: "Payment within 30 days.",
  validDays: 30,
};

interface Made {
  readonly shop: Shop;
  readonly answer: QuoteAnswer;
  readonly quote: Quote;
}

async function made(shop: Shop): Promise<Made> {
  const desk = await aQuoteDesk({ shop, request: { fromMin: FROM, days: 7 } });
  const lines = [
    { ...aLine(desk, "clip", 60, 0.3), allowLate: true },
    { ...aLine(desk, "odd", 3, null), id: "Q-2" },
  ];
  const answer = await answerQuote(desk, { lines, runs: 50 });
  const head = {
    id: "Q-2026-0001",
    customer: "Invented buyer",
    customerAddress: "2 Road",
    note: "",
    askedMin: FROM,
  };
  return { shop, answer, quote: quoteFromAnswer(shop, answer, head) };
}

const SHOP = aShop({
  seller,
  machines: [aMachine({ failuresPer1000H: 5 })],
  parts: [
    aPart(),
    aPart({
      id: "odd",
      name: "Odd",
      smallestFeatureMm: 0.01,
      buyOut: { pricePerPiece: 20, leadTimeDays: 2 },
    }),
  ],
});

let usual: Made;
let customer: string;
let inside: string;
beforeAll(async () => {
  usual = await made(SHOP);
  const context = quoteContext(usual.shop, usual.quote, usual.answer);
  customer = quoteSheet(context, "customer", new Map([["clip", boxMesh({ x: 40, y: 30, z: 20 })]]));
  inside = quoteSheet(context, "inside");
});

/** Tags that are opened and not closed in order. */
function unbalanced(document: string): string[] {
  const open: string[] = [];
  for (const [, slash, name = "", rest = ""] of document.matchAll(
    /<(\/?)([a-zA-Z][\w-]*)((?:"[^"]*"|[^>"])*)>/g,
  )) {
    if (name === "meta" || rest.endsWith("/")) continue;
    if (slash === "") open.push(name);
    else if (open.pop() !== name) return [`</${name}>`];
  }
  return open;
}

function textOf(document: string): string {
  return document
    .replace(/<style>[\s\S]*<\/style>/, "")
    .replace(/<[^>]*>/g, " ")
    .replace(/\s+/g, " ");
}

describe("the sheet as a document", () => {
  test("closes every tag, needs nothing from outside, and admits its own style by hash only", () => {
    for (const sheet of [customer, inside]) {
      expect(unbalanced(sheet)).toEqual([]);
      expect(sheet).not.toMatch(/<script|<link|\b(src|href|action|style|on\w+)=|@import|https?:/);
      const style = /<style>([\s\S]*)<\/style>/.exec(sheet)?.[1] ?? "";
      expect(sheet).toContain(createHash("sha256").update(style).digest("base64"));
    }
  });

  test("prints on whatever paper the printer holds, after the week's own landscape rule", () => {
    expect([...customer.matchAll(/@page \{ size: ([^;]+);/g)].at(-1)![1]).toBe("auto");
  });

  test("shows hostile names of everything as text", () => {
    for (const hostile of HOSTILE_NAMES) {
      const shop: Shop = {
        ...usual.shop,
        name: hostile,
        seller: {
          ...seller,
          name: hostile,
          address: hostile,
          contact: hostile,
          taxNumber: hostile,
          terms: hostile,
        },
        parts: usual.shop.parts.map((part) => ({ ...part, name: hostile, families: [hostile] })),
        feedstocks: usual.shop.feedstocks.map((feedstock) => ({ ...feedstock, name: hostile })),
      };
      const quote = { ...usual.quote, customer: hostile, customerAddress: hostile, note: hostile };
      const sheet = quoteSheet(quoteContext(shop, quote, usual.answer), "inside");
      expect(unbalanced(sheet)).toEqual([]);
      expect(sheet).not.toMatch(/<script|<img|\u202e|(?![\n\t])\p{Cc}/u);
      expect(quoteText(quoteContext(shop, quote, usual.answer))).not.toMatch(/\u202e|(?!\n)\p{Cc}/u);
    }
  });
});

describe("the customer's sheet", () => {
  test("has number, both parties, prices by quantity, date, validity, terms, assumptions and cautions", () => {
    const text = textOf(customer);
    for (const said of [
      "Quote Q-2026-0001",
      "Invented seller",
      "Tax number X-0",
      "Invented buyer",
      "Holds until Wednesday 30 December 2026",
      "Copies from",
      "Ready by",
      "Payment within 30 days.",
      "(ISO 4217)",
      "have a qualified person check it",
    ]) {
      expect(text).toContain(said);
    }
  });

  test("has totals that add up", () => {
    const rows = [
      .../<table class="total">([\s\S]*?)<\/table>/.exec(customer)![1]!.matchAll(/<td class="num">([^<]*)/g),
    ];
    const amounts = rows.map(([, text = ""]) => Number(text.replaceAll("\u202f", "")));
    const total = amounts.pop()!;
    expect(amounts).toHaveLength(2);
    expect(amounts.reduce((sum, amount) => sum + amount, 0)).toBeCloseTo(total, 9);
  });

  test("says nothing of cost, margin, floor, likelihood or other orders, which the inside version says", () => {
    const words = /cost|margin|floor|kept with|likelihood|displace|standard error|O-1\b/i;
    expect(textOf(customer)).not.toMatch(words);
    for (const said of [
      "margin of 30",
      "The floor",
      "kept with",
      "Ways to make it",
      "moves the price",
      "Nothing that was tried would hold",
      "O-1",
    ]) {
      expect(textOf(inside)).toContain(said);
    }
  });

  test("draws a part from its mesh, and one without as its box, said so", () => {
    expect(customer.match(/<svg class="body"/g)).toHaveLength(2);
    expect(customer.match(/drawn as its box/g)).toHaveLength(1);
    expect(inside.match(/drawn as its box/g)).toHaveLength(2);
  });

  test("writes amounts with the digits of their currency", () => {
    const yen = { ...usual.shop, currency: "JPY" };
    const line = { ...usual.quote.lines[0]!, quantity: 3, pricePerPiece: 1250, breaks: [] };
    const sheet = textOf(quoteSheet(quoteContext(yen, { ...usual.quote, lines: [line] }, null), "customer"));
    expect(sheet).toContain("1\u202f250\u202fJPY".replace(/\u202f/g, "\u202f").replace(/\s/g, " "));
    expect(sheet).toContain("3 750");
    expect(sheet).not.toContain("250.00");
  });

  test("says where a line has no price or date, and no total then", () => {
    const line = { ...usual.quote.lines[0]!, pricePerPiece: null, promisedAt: null };
    const sheet = textOf(
      quoteSheet(quoteContext(usual.shop, { ...usual.quote, lines: [line] }, null), "customer"),
    );
    expect(sheet).toContain("no price for all lines");
    expect(sheet).toContain("no date");
  });

  test("names what is charged once and what the smallest order adds", () => {
    const line = { ...usual.quote.lines[0]!, quantity: 2, pricePerPiece: 10, oneOffPrice: 30 };
    const quote = { ...usual.quote, lines: [line], minimumSurcharge: 50 };
    const sheet = textOf(quoteSheet(quoteContext(usual.shop, quote, null), "customer"));
    expect(sheet).toContain("2 copies × 10.00 and 30.00 once");
    expect(sheet).toContain("Added to reach the smallest order");
    expect(sheet).toMatch(/Total, EUR 100\.00/);
  });
});

describe("the quote as text", () => {
  test("is at most 100 characters wide and says price, date, likelihood, floor and ways", () => {
    const text = quoteText(quoteContext(usual.shop, usual.quote, usual.answer));
    for (const line of text.split("\n")) expect([...line].length).toBeLessThanOrEqual(100);
    for (const said of [
      "Quote Q-2026-0001 for Invented buyer",
      "Date to promise",
      "Ways to make it",
      "Floor of the price",
      "Nothing that was tried would hold",
    ]) {
      expect(text).toContain(said);
    }
    expect(text).toMatch(/bought, 2 d +20\.00/);
  });
});
