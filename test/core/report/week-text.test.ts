import { describe, expect, it } from "vitest";
import { weekText } from "../../../core/report/week-text.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { hostileWorks } from "../../fixtures/hostile-names.ts";

const shop = aWorks();
const plan = aPlan(shop);
const text = weekText(shop, plan).replaceAll("\u202f", " ");

describe("the week as text", () => {
  it("starts with the answer: cost, bound in words, what is late", () => {
    expect(text.split("\n").slice(0, 7)).toEqual([
      "Quillbank Works (invented)",
      "Week 49 of 2026: Monday 30 November 2026 to Sunday 6 December 2026",
      "",
      "This plan costs 10 066.52 EUR.",
      "Cost and bound are for the copies that have a place. No plan of these can cost less than",
      "9 645.03 EUR; this one is within 4.4 % of that.",
      "1 order is late; 2 copies of 1 order have no place in the plan.",
    ]);
  });

  it("puts late and unplanned orders before the week", () => {
    const places = [
      "Late orders",
      "Without a place",
      "The week by machine",
      "Operators' tasks",
      "Cost by kind",
    ];
    const found = places.map((place) => text.indexOf(place));
    expect(found).toEqual(found.toSorted((a, b) => a - b));
    expect(found[0]).toBeGreaterThan(0);
  });

  it("is at most 100 characters wide, whatever the names", () => {
    const hostile = hostileWorks();
    for (const output of [text, weekText(hostile, aPlan(hostile))])
      for (const line of output.split("\n")) expect([...line].length).toBeLessThanOrEqual(100);
  });

  it("lets no name steer the terminal", () => {
    const hostile = hostileWorks();
    expect(weekText(hostile, aPlan(hostile)).replaceAll("\n", "")).not.toMatch(
      /[\p{Cc}\u202a-\u202e\u2066-\u2069]/u,
    );
  });

  it("names every build and task day, and marks what is not planned but committed", () => {
    for (const build of plan.builds) expect(text).toContain(build.id);
    expect(text).toContain("O-103 × 6 (committed)");
    expect(text).toContain("Saturday 5 December 2026");
  });

  it("says so when nothing is late, nothing is to buy and the search was stopped", () => {
    const calm = {
      ...plan,
      status: "stopped" as const,
      unplanned: [],
      orders: plan.orders.map((order) => ({ ...order, lateMin: 0 })),
      feedstockNeeds: [],
    };
    const output = weekText(shop, calm);
    expect(output).toContain("Every order is planned and in time.");
    expect(output).toContain("The search was stopped before its time");
    expect(output).toContain("nothing: the stock is enough");
    expect(output).not.toContain("Late orders");
  });

  it("lists what is bought out", () => {
    expect(text).toContain("320 copies for 608.00 EUR, here Fri 4 Dec 12:00");
  });

  it("counts an order once, however many entries its copies without a place have", () => {
    const [entry] = plan.unplanned;
    if (!entry) throw new Error("the plan places everything");
    const split = {
      ...plan,
      unplanned: [
        { ...entry, copies: 1 },
        { ...entry, copies: 1 },
      ],
    };
    expect(weekText(shop, split)).toContain("2 copies of 1 order have no place in the plan.");
  });

  it("claims no more than was proven", () => {
    const whole = { ...plan, unplanned: [] };
    const proven = weekText(shop, { ...whole, bound: { ...plan.bound, value: plan.cost.total, gapPct: 0 } });
    expect(proven).toContain("No plan can cost less: this one is proven to be the cheapest.");
    const unproven = weekText(shop, { ...whole, bound: { ...plan.bound, value: 0, gapPct: 0 } });
    expect(unproven).toContain("No lower bound on the cost has been proven yet.");
    const close = weekText(shop, {
      ...whole,
      bound: { ...plan.bound, value: plan.cost.total - 0.004, gapPct: 0.00004 },
    });
    expect(close.replaceAll("\u202f", " ")).toContain(
      "No plan can cost less than 10 066.51 EUR; this one is within 0.1 % of that.",
    );
  });

  it("calls no plan the cheapest that leaves copies out: cost and bound are those of the others", () => {
    const bound = { ...plan.bound, value: plan.cost.total, gapPct: 0 };
    const some = weekText(shop, { ...plan, bound });
    expect(some).toContain(
      "Cost and bound are for the copies that have a place. No plan of these can cost less.",
    );
    expect(some).not.toContain("cheapest.");
    const none = weekText(shop, { ...plan, bound, builds: [], boughtOut: [] });
    expect(none).toContain("No copy that was to be planned has a place, so there is no cost to judge.");
  });

  it("says no reason of copies without a place twice", () => {
    const [entry] = plan.unplanned;
    const sentence = entry?.reasons[0]?.sentence ?? "";
    const orders = plan.orders.map((order) =>
      order.orderId === entry?.orderId ? { ...order, why: [sentence, "Would help: more time."] } : order,
    );
    const lines = weekText(shop, { ...plan, orders }).split("\n");
    expect(lines.filter((line) => line.includes(sentence.slice(0, 40)))).toHaveLength(1);
    expect(lines).toContain("    - Would help: more time.");
  });

  it("never says that something is safe", () => {
    expect(text).not.toMatch(/\bsafe(ly)?\b/i);
    expect(text).toContain("ask a qualified person");
  });
});
