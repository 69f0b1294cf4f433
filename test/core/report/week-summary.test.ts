import { describe, expect, it } from "vitest";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { weekSummary } from "../../../core/report/week-summary.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { hostileWorks } from "../../fixtures/hostile-names.ts";

const shop = aWorks();
const plan = aPlan(shop);
const text = summary(plan);

describe("the week in a screen or two", () => {
  it("starts with the answer, then what to decide, then the week and the money", () => {
    expect(text.split("\n").slice(3, 7)).toEqual([
      "This plan costs 10 066.52 EUR.",
      "Cost and bound are for the copies that have a place. No plan of these can cost less than",
      "9 645.03 EUR; this one is within 4.4 % of that.",
      "1 order is late; 2 copies of 1 order have no place in the plan.",
    ]);
    const places = [
      "Late orders",
      "Without a place",
      "The week by machine",
      "Cost by kind",
      "Feedstock to buy",
      "What a rule of thumb",
      "Price of an hour",
      "Cautions",
    ].map((place) => text.indexOf(place));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
  });

  it("explains the five dearest late orders in two sentences each and counts the others", () => {
    const late = manyLate(8);
    const section = sectionOf(summary(late), "Late orders");
    expect(section.filter((line) => line.startsWith("! "))).toHaveLength(5);
    expect(section.filter((line) => line.startsWith("    - "))).toHaveLength(10);
    expect(section.at(-1)).toBe("    3 more in week.html (written with --out)");
    expect(section[2]).toContain("late by 1 d 2 h, costs 108.00 EUR");
    expect(section[3]).toBe("    - Would help: somebody there earlier.");
    expect(section[4]).toBe("    - The machine was taken.");
  });

  it("counts nothing more where everything is shown", () => {
    expect(sectionOf(summary(manyLate(5)), "Late orders").join("\n")).not.toContain("more in week.html");
  });

  it("shows no more than a dozen builds of one machine, and how many there are", () => {
    const [build] = plan.builds;
    if (!build) throw new Error("the plan has a build");
    const many = (count: number) => {
      const builds = Array.from({ length: count }, (_, index) => ({ ...build, id: `B-${index}` }));
      const machines = shop.machines.filter(({ id }) => id === build.machineId);
      return sectionOf(weekSummary({ ...shop, machines }, { ...plan, builds }), "The week by machine");
    };
    expect(many(12)).toHaveLength(2 + 12);
    expect(many(20)).toHaveLength(2 + 12 + 1);
    expect(many(20).at(-1)).toContain("\u2026 8 more, the last off at");
  });

  it("keeps every machine in sight", () => {
    for (const { id } of shop.machines)
      expect(sectionOf(text, "The week by machine").some((line) => line.startsWith(`${id} `))).toBe(true);
  });

  it("says of how many copies those without a place are, where they are not all", () => {
    const [entry] = plan.unplanned;
    if (!entry) throw new Error("the plan places everything");
    const line = (copies: number, quantity: number) => {
      const orders = shop.orders.map((order) =>
        order.id === entry.orderId ? { ...order, quantity } : order,
      );
      const document = { ...plan, unplanned: [{ ...entry, copies }] };
      const output = weekSummary({ ...shop, orders }, document);
      return output.split("\n").find((entryLine) => entryLine.startsWith(`x ${entry.orderId}`));
    };
    expect(line(1, 1)).toMatch(/ 1 copy$/);
    expect(line(3, 3)).toMatch(/ 3 copies$/);
    expect(line(1, 3)).toMatch(/ 1 of 3 copies$/);
  });

  it("counts copies without a place that are not shown", () => {
    const [entry] = plan.unplanned;
    if (!entry) throw new Error("the plan places everything");
    const unplanned = Array.from({ length: 7 }, (_, index) => ({
      ...entry,
      orderId: `O-9${index}`,
      copies: 3,
    }));
    const section = sectionOf(summary({ ...plan, unplanned }), "Without a place in the plan");
    expect(section.at(-1)).toBe("    2 more, 6 copies, in week.html (written with --out)");
  });

  it("shows three prices of an hour at most, the one that saves most first", () => {
    const lines = sectionOf(text, "Price of an hour").slice(2);
    const saves = lines.flatMap((line) => /one more saves ([\d.]+)/.exec(line)?.[1] ?? []).map(Number);
    expect(saves.length).toBeGreaterThan(0);
    expect(saves.length).toBeLessThanOrEqual(3);
    expect(saves).toEqual(saves.toSorted((a, b) => b - a));
  });

  it("says when a date to order by is past", () => {
    const feedstockNeeds = plan.feedstockNeeds.map((need) =>
      need.orderBy ? { ...need, orderBy: "2026-11-27T02:18:00+01:00" } : need,
    );
    expect(summary({ ...plan, feedstockNeeds })).toContain("order by Fri 27 Nov 02:18, which is past");
    expect(text).not.toContain("which is past");
  });

  it("is at most 100 characters wide, whatever the names, and lets none steer the terminal", () => {
    const hostile = hostileWorks();
    for (const output of [text, weekSummary(hostile, aPlan(hostile))]) {
      for (const line of output.split("\n")) expect([...line].length).toBeLessThanOrEqual(100);
      expect(output.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
    }
  });

  it("never says that something is safe", () => {
    expect(text).not.toMatch(/\bsafe(ly)?\b/i);
    expect(text).toContain("qualified people decide");
  });
});

function summary(document: PlanDocument): string {
  return weekSummary(shop, document).replaceAll("\u202f", " ");
}

/** The lines of one section, its heading included. */
function sectionOf(output: string, heading: string): string[] {
  const lines = output.trimEnd().split("\n");
  const first = lines.indexOf(heading);
  if (first < 0) throw new Error(`no section ${heading}`);
  const rest = lines.slice(first);
  const end = rest.indexOf("");
  return end < 0 ? rest : rest.slice(0, end);
}

function manyLate(count: number): PlanDocument {
  const [order] = plan.orders;
  if (!order) throw new Error("the plan has an order");
  const why = ["It comes off late.", "The machine was taken.", "Would help: somebody there earlier."];
  const orders = Array.from({ length: count }, (_, index) => ({
    ...order,
    orderId: `O-${index + 1}`,
    lateMin: 26 * 60,
    lateCost: 100 + index + 1,
    why,
  }));
  return { ...plan, orders };
}
