import { describe, expect, test } from "vitest";
import { acceptQuote, declineQuote } from "../../../core/quote/decide-quote.ts";
import { applyChanges } from "../../../core/shop/change-many.ts";
import { checkShop } from "../../../core/shop/check-shop.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import { aQuote, aQuoteLine } from "../../fixtures/a-quote.ts";
import { anOrder, aShop } from "../../fixtures/a-route.ts";

const at = (instant: string): number => minuteOf(instant, "Europe/Berlin");
const NOW = at("2026-11-30T10:00");
const LINE = aQuoteLine({
  id: "Q-2026-0007-1",
  pricePerPiece: 3.23,
  promisedAt: "2026-12-03T16:00:00+01:00",
  allowLate: false,
});

function priced(overrides: Partial<Quote> = {}): Quote {
  return aQuote({ id: "Q-2026-0007", state: "sent", lines: [LINE], ...overrides });
}

function shopWith(quote: Quote) {
  return aShop({ quotes: [quote] });
}

describe("accepting", () => {
  test("makes an order of each line, due when promised and at the agreed price, and the quote knows them", () => {
    const second = { ...LINE, id: "Q-2026-0007-2", quantity: 4, machineId: "F1" };
    const quote = priced({ lines: [LINE, second] });
    const shop = shopWith(quote);
    const { changes, findings } = acceptQuote(shop, quote, { atMin: NOW });
    expect(findings).toEqual([]);
    const after = applyChanges(shop, changes).shop;
    expect(after.orders.slice(1)).toMatchObject([
      { id: "Q-2026-0007-1", customer: "Invented customer", partId: "clip", quantity: 10, allowLate: false },
      { id: "Q-2026-0007-2", quantity: 4, pinned: { machineId: "F1" }, pricePerPiece: 3.23 },
    ]);
    expect(after.orders[1]).toMatchObject({
      dueAt: "2026-12-03T16:00:00+01:00",
      releaseAt: "2026-11-30T10:00:00+01:00",
    });
    expect(after.quotes[0]).toMatchObject({ state: "accepted", decidedAt: "2026-11-30T10:00:00+01:00" });
    expect(after.quotes[0]!.lines.map(({ orderId }) => orderId)).toEqual(["Q-2026-0007-1", "Q-2026-0007-2"]);
    expect(checkShop(after).filter(({ severity }) => severity === "error")).toEqual([]);
  });

  test("is undone as one edit, back to the shop before", () => {
    const shop = shopWith(priced());
    const { shop: after, inverses } = applyChanges(shop, acceptQuote(shop, priced(), { atMin: NOW }).changes);
    expect(applyChanges(after, inverses).shop).toEqual(shop);
  });

  test("takes another id where the shop has an order of the line's id", () => {
    const shop = { ...shopWith(priced()), orders: [anOrder({ id: "Q-2026-0007-1" })] };
    const after = applyChanges(shop, acceptQuote(shop, priced(), { atMin: NOW }).changes).shop;
    expect(after.orders.map(({ id }) => id)).toEqual(["Q-2026-0007-1", "Q-2026-0007-1-2"]);
    expect(after.quotes[0]!.lines[0]!.orderId).toBe("Q-2026-0007-1-2");
  });

  test.each([true, false])("lets every date be late or hold as it is chosen: %s", (allowLate) => {
    const shop = shopWith(priced());
    const after = applyChanges(shop, acceptQuote(shop, priced(), { atMin: NOW, allowLate }).changes).shop;
    expect(after.orders.at(-1)!.allowLate).toBe(allowLate);
  });

  test("says in the order's note what is charged once", () => {
    const quote = priced({ lines: [{ ...LINE, oneOffPrice: 62.5 }] });
    const after = applyChanges(
      shopWith(quote),
      acceptQuote(shopWith(quote), quote, { atMin: NOW }).changes,
    ).shop;
    expect(after.orders.at(-1)!.note).toBe(
      "Quote Q-2026-0007; 62.50 EUR once for tool paths and first set-up",
    );
  });

  test.each([
    ["no price", { lines: [{ ...LINE, pricePerPiece: null }] }, "no-price"],
    ["no date", { lines: [{ ...LINE, promisedAt: null }] }, "no-date"],
    ["a date that has passed", { lines: [{ ...LINE, promisedAt: "2026-11-30T10:00" }] }, "date-past"],
    ["a part that is gone", { lines: [{ ...LINE, partId: "gone" }] }, "unknown-part"],
    ["been accepted", { state: "accepted" as const }, "decided"],
    ["been declined", { state: "declined" as const }, "decided"],
  ])("changes nothing where the quote has %s, and says so", (_what, change, code) => {
    const quote = priced(change);
    const { changes, findings } = acceptQuote(shopWith(quote), quote, { atMin: NOW });
    expect(changes).toEqual([]);
    expect(findings.map((finding) => [finding.code, finding.severity])).toEqual([[code, "error"]]);
    expect(findings[0]!.sentence).toMatch(/^Quote Q-2026-0007: .*;/);
  });

  test("warns a day after it was asked that its dates are old, and after its end that it is over", () => {
    const quote = priced({ lines: [{ ...LINE, promisedAt: "2027-02-01T08:00" }] });
    const codes = (instant: string): string[] =>
      acceptQuote(shopWith(quote), quote, { atMin: at(instant) }).findings.map(({ code }) => code);
    expect(codes("2026-12-01T08:00")).toEqual([]);
    expect(codes("2026-12-01T08:01")).toEqual(["old-dates"]);
    expect(codes("2026-12-30T08:00")).toEqual(["old-dates"]);
    expect(codes("2026-12-30T08:01")).toEqual(["not-valid"]);
  });
});

describe("declining", () => {
  test("keeps why and when, and makes no order", () => {
    const shop = shopWith(priced());
    const { changes } = declineQuote(shop, priced(), { atMin: NOW, reason: " price " });
    const after = applyChanges(shop, changes).shop;
    expect(after.quotes[0]).toMatchObject({
      state: "declined",
      reason: "price",
      decidedAt: "2026-11-30T10:00:00+01:00",
    });
    expect(after.orders).toEqual(shop.orders);
  });

  test("a quote that is decided stays decided", () => {
    const { changes, findings } = declineQuote(aShop(), priced({ state: "accepted" }), {
      atMin: NOW,
      reason: "",
    });
    expect(changes).toEqual([]);
    expect(findings[0]!.sentence).toContain("has been accepted already");
  });
});
