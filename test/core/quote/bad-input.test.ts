import { expect, test } from "vitest";
import { checkPlan } from "../../../core/plan/check/check-plan.ts";
import { firstAnswer, warmUp } from "../../../core/quote/first-answer.ts";
import { floorOf } from "../../../core/quote/floor.ts";
import { insertLines } from "../../../core/quote/insert-order.ts";
import { rushOptions } from "../../../core/quote/rush.ts";
import { waysToMake } from "../../../core/quote/ways-to-make.ts";
import { priceDrivers } from "../../../core/quote/price-drivers.ts";
import type { Part } from "../../../core/shop/part.ts";
import { makeShop, type ShopCase } from "../../bench/make-shop.ts";
import { aLine, aQuoteDesk } from "../../fixtures/a-quote-desk.ts";

const made = makeShop("S", { seed: 1 });
const desk = await aQuoteDesk(made);
const [part] = made.shop.parts as [Part, ...Part[]];

function withPart({ shop, request }: ShopCase, change: Partial<Part>): ShopCase {
  const more: Part = { ...part, id: "odd", ...change };
  return { request, shop: { ...shop, parts: [...shop.parts, more] } };
}

const FITS_NOWHERE = { smallestFeatureMm: 0.01 };

test.each([0, -3, 2.5, Number.NaN, Infinity])("a quantity of %s is refused in a sentence", (quantity) => {
  const line = { ...aLine(desk, part.id, 1, 5), quantity };
  const { lines, findings, extraCost, plan } = insertLines(desk, [line]);
  expect(findings.map(({ code }) => code)).toEqual(["quantity"]);
  expect(findings[0]!.sentence).toContain("whole number of copies");
  expect(lines[0]!.finishedAtMin).toBeNull();
  expect(extraCost).toBe(0);
  expect(plan!.builds.length).toBe(desk.standingPlan.builds.length);
  expect(firstAnswer(desk, [line]).total).toBeNull();
  expect(waysToMake(made.shop, part.id, [quantity]).findings[0]!.code).toBe("quantity");
});

test("a million copies have a cost each, no date, and the reason in a sentence", () => {
  const { lines, findings } = firstAnswer(desk, [aLine(desk, part.id, 1_000_000, 5)]);
  expect(lines[0]!.finishMin).toBeNull();
  expect(lines[0]!.ownCost).toBeGreaterThan(100_000);
  expect(findings).toHaveLength(1);
  expect(findings[0]!.sentence).toMatch(/^Line Q-1 has no date: .{20}/);
});

test("a million copies leave a plan that passes every check, with all of them unplanned and the reason once", () => {
  const { plan, shop, lines, findings } = insertLines(desk, [aLine(desk, part.id, 1_000_000, 5)]);
  const left = plan!.unplanned.filter(({ orderId }) => orderId === "Q-1");
  expect(left.reduce((sum, { copies }) => sum + copies, 0)).toBe(1_000_000);
  expect(checkPlan(shop, plan!)).toEqual([]);
  expect(lines[0]!.finishedAtMin).toBeNull();
  expect(findings.map(({ severity, where }) => [severity, where])).toEqual([["error", "lines/Q-1"]]);
});

test("a date that has passed is answered with the earliest one and a warning", () => {
  const past = { ...aLine(desk, part.id, 2, -3), allowLate: true };
  const { lines, findings } = insertLines(desk, [past]);
  expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["date-past", "warning"]]);
  const soonest = insertLines(desk, [aLine(desk, part.id, 2, 0.001)]);
  expect(lines[0]!.finishedAtMin).toBe(soonest.lines[0]!.finishedAtMin);
  expect(rushOptions(desk, past)).toEqual([]);
});

test("a part that fits nowhere has every reason, no price and no date; with a price elsewhere it is bought", async () => {
  const odd = withPart(made, FITS_NOWHERE);
  const ways = waysToMake(odd.shop, "odd", [1, 5]);
  expect(ways.ways).toEqual([]);
  expect(ways.refused.every(({ reasons }) => reasons.length > 0)).toBe(true);
  expect(ways.findings.map(({ code, severity }) => [code, severity])).toEqual([["no-way", "error"]]);
  const at = await aQuoteDesk(odd);
  const { findings, total } = firstAnswer(at, [aLine(at, "odd", 5, 5)]);
  expect(total).toBeNull();
  expect(findings[0]!.sentence).toContain("Line Q-1 has no date");
  expect(floorOf(at, [aLine(at, "odd", 5, 5)], { places: "first" })).toBeNull();
  expect(priceDrivers(odd.shop, aLine(at, "odd", 5, 5))).toBeNull();

  const bought = withPart(made, { ...FITS_NOWHERE, buyOut: { pricePerPiece: 12, leadTimeDays: 3 } });
  const buying = await aQuoteDesk(bought);
  const answer = firstAnswer(buying, [aLine(buying, "odd", 5, 5)]);
  expect(answer.lines[0]!.ownCost).toBe(60);
  expect(answer.lines[0]!.finishMin).toBe(buying.request.fromMin + 3 * 1440);
  expect(answer.isHeld).toBe(true);
});

test("without prices of feedstock nothing can be quoted, and the reasons say so", async () => {
  const feedstocks = made.shop.feedstocks.map((feedstock) => ({ ...feedstock, pricePerKg: null }));
  const shop = { ...made.shop, feedstocks };
  const { ways, refused, findings } = waysToMake(shop, part.id, [3]);
  expect(ways).toEqual([]);
  expect(refused.some(({ reasons }) => reasons.some(({ code }) => code === "no-price"))).toBe(true);
  expect(findings[0]!.code).toBe("no-way");
  const at = await aQuoteDesk({ ...made, shop });
  expect(firstAnswer(at, [aLine(at, part.id, 3, 5)]).total).toBeNull();
});

test("in a shop with far too much work a line still gets a date, late, and the price of the earliest", async () => {
  const full = makeShop("S", { seed: 1, loadFactor: 2.5 });
  const at = await aQuoteDesk(full);
  const { lines, isHeld, findings } = firstAnswer(at, [aLine(at, full.shop.parts[0]!.id, 10, null)]);
  expect(findings).toEqual([]);
  expect(isHeld).toBe(true);
  expect(lines[0]!.finishMin).toBeGreaterThan(at.request.fromMin + 5 * 1440);
}, 30_000);

test("a part, machine or feedstock that the shop does not have, or an id that it has, is named in a sentence", () => {
  const line = aLine(desk, part.id, 1, 5);
  const code = (change: object): string[] =>
    insertLines(desk, [{ ...line, ...change }]).findings.map((one) => one.code);
  expect(code({ partId: "none" })).toEqual(["unknown-id"]);
  expect(code({ machineId: "none" })).toEqual(["unknown-id"]);
  expect(code({ feedstockId: "none" })).toEqual(["unknown-id"]);
  expect(code({ wantedMin: Number.NaN })).toEqual(["not-a-date"]);
  expect(code({ id: made.shop.orders[0]!.id })).toEqual(["duplicate-id"]);
});

test("a shop with no orders and no parts has a desk too", async () => {
  const empty = await aQuoteDesk({ ...made, shop: { ...made.shop, orders: [], parts: [] } });
  expect(empty.standing.builds).toEqual([]);
  expect(() => warmUp(empty)).not.toThrow();
  expect(insertLines(empty, []).extraCost).toBe(0);
});
