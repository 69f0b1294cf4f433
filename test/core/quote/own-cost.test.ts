import { expect, test } from "vitest";
import { ownCostOf, ownCosts } from "../../../core/quote/own-cost.ts";
import { answerQuote } from "../../../core/quote/quote-job.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import { aPart, aShop } from "../../fixtures/a-route.ts";
import { aLine, aQuoteDesk } from "../../fixtures/a-quote-desk.ts";

const shop = aShop({
  parts: [
    aPart({ toolPathsReady: [] }),
    aPart({ id: "lid", toolPathsReady: [] }),
    aPart({ id: "known", toolPathsReady: ["filament", "pellet"] }),
  ],
});
const request = { fromMin: minuteOf("2026-11-30T06:00", "Europe/Berlin"), days: 7, seed: 1 };
const line = (id: string, partId: string, quantity: number) => ({ id, partId, quantity });

test("tool paths of a part are charged with the first of its lines, and the second costs less by just these", () => {
  const [first, second] = ownCosts(shop, [line("1", "clip", 2), line("2", "clip", 3)]);
  const alone = ownCostOf(shop, line("2", "clip", 3));
  const { engineering } = alone.way!.first;
  expect(engineering).toBeGreaterThan(0);
  expect(first).toEqual(ownCostOf(shop, line("1", "clip", 2)));
  expect(second!.cost!).toBeCloseTo(alone.cost! - engineering, 9);
  expect(second!.oneOff).toBeCloseTo(alone.oneOff - engineering, 9);
  expect(second!.toolPathsWith).toBe("1");
});

test("each part has tool paths of its own, and one whose tool paths exist has none to charge", () => {
  const costs = ownCosts(shop, [
    line("1", "clip", 2),
    line("2", "lid", 2),
    line("3", "known", 2),
    line("4", "known", 2),
  ]);
  expect(costs.map(({ toolPathsWith }) => toolPathsWith)).toEqual([null, null, null, null]);
});

test("a line that is bought charges no tool paths: the next one that is made has them", () => {
  const buyOut = { pricePerPiece: 0.01, leadTimeDays: 2 };
  const cheap = aShop({ parts: [aPart({ toolPathsReady: [], buyOut })] });
  expect(ownCosts(cheap, [line("1", "clip", 2), line("2", "clip", 3)]).map(({ way }) => way)).toEqual([
    null,
    null,
  ]);
  const dear = aShop({ parts: [aPart({ toolPathsReady: [], buyOut: { ...buyOut, pricePerPiece: 1e6 } })] });
  expect(ownCosts(dear, [line("1", "clip", 2), line("2", "clip", 3)])[1]!.toolPathsWith).toBe("1");
});

test("the answer names the line that has them, and no quantity of the other is priced with them", async () => {
  const desk = await aQuoteDesk({ shop, request });
  const lines = [aLine(desk, "clip", 2, null), { ...aLine(desk, "clip", 2, null), id: "Q-2" }];
  const answer = await answerQuote(desk, { lines, runs: 20 });
  expect(answer.lines.map(({ toolPathsWith }) => toolPathsWith)).toEqual([null, "Q-1"]);
  const [first, second] = answer.lines;
  const highest = (at: typeof first): number =>
    Math.max(...at!.breaks.map(({ pricePerPiece }) => pricePerPiece));
  expect(second!.price!.total).toBeLessThan(first!.price!.total);
  expect(highest(second)).toBeLessThan(highest(first));
});
