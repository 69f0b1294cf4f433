import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { demoCase } from "../../assets/demo/purchase-case.ts";
import { checkShop } from "../../core/shop/check-shop.ts";
import { readShop } from "../../core/shop/read-shop.ts";

const { shop, findings } = readShop(
  readFileSync(new URL("../../assets/demo.shop.json", import.meta.url), "utf8"),
);

describe("quotes and cases of the demo shop", () => {
  test("are read whole, and nothing is wrong with them", () => {
    expect(findings).toEqual([]);
    const about = shop ? checkShop(shop).map(({ where }) => where) : ["no shop"];
    expect(about.filter((where) => /^(quotes|cases)/.test(where))).toEqual([]);
  });

  test("quotes stand in different states, a declined one says why and when", () => {
    const quotes = shop?.quotes ?? [];
    expect(new Set(quotes.map(({ state }) => state)).size).toBe(quotes.length);
    expect(quotes.length).toBeGreaterThan(1);
    for (const { state, reason, decidedAt } of quotes) {
      expect(reason !== "").toBe(state === "declined");
      expect(decidedAt !== undefined).toBe(state === "declined" || state === "accepted");
    }
  });

  test("every customer is marked as invented", () => {
    for (const { customer } of shop?.quotes ?? []) expect(customer).toContain("(invented)");
  });

  test("the purchase case of the shop is the one that stands in a file of its own", () => {
    if (!shop) throw new Error("the demo shop cannot be read");
    const { schema: _, ...purchaseCase } = demoCase(shop);
    expect(shop.cases).toEqual([purchaseCase]);
  });
});
