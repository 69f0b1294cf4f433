import { expect, test } from "vitest";
import { proveBound } from "../../../core/plan/bound/bound.ts";
import { compileProblem } from "../../../core/plan/compile/compile-problem.ts";
import { askedLines } from "../../../core/quote/asked-lines.ts";
import { lpPrice } from "../../../core/quote/lp-price.ts";
import { orderOf } from "../../../core/quote/quote-order.ts";
import { instantOf } from "../../../core/shop/instants.ts";
import { LP_TOLERANCE } from "../../../core/units/tolerance.ts";
import { makeShop } from "../../bench/make-shop.ts";
import { aLine, aQuoteDesk } from "../../fixtures/a-quote-desk.ts";

const LIMITS = { now: () => 0, untilMs: 1 };

test.each([
  { mixedPlatform: false, parts: 3 },
  { mixedPlatform: true, parts: 1 },
])(
  "the price of a line is never above what the linear program rises by with it, platforms shared: $mixedPlatform",
  async ({ mixedPlatform, parts }) => {
    const made = makeShop("S", { seed: 2, mixedPlatform, loadFactor: 1.1 });
    const desk = await aQuoteDesk(made);
    const before = proveBound(desk.problem, desk.engine, LIMITS);
    let tight = 0;
    for (const part of made.shop.parts.slice(0, parts)) {
      for (const day of [1, 5]) {
        const line = aLine(desk, part.id, 5, day);
        const { more } = askedLines(desk, [line]);
        const index = more.lineIndices[0]!;
        const lines = more.problem.lines.map((one) =>
          one.index === index ? { ...one, dueMin: line.wantedMin! } : one,
        );
        const problem = { ...more.problem, lines };
        const price = lpPrice(before, problem, index)!;
        const rise = proveBound(problem, desk.engine, LIMITS).value - before.value;
        expect(price, `${part.id} by day ${day}`).toBeLessThanOrEqual(rise + 3 * LP_TOLERANCE * before.value);
        expect(price).toBeGreaterThan(0);
        if (price > 0.5 * rise) tight++;
      }
    }
    if (!mixedPlatform) expect(tight).toBeGreaterThan(4);
  },
  60_000,
);

test("a line added to a compiled problem has the options that compiling everything anew gives it", async () => {
  const made = makeShop("S", { seed: 3 });
  const desk = await aQuoteDesk(made);
  for (const part of made.shop.parts.slice(0, 4)) {
    const line = aLine(desk, part.id, 400, 5);
    const { more } = askedLines(desk, [line]);
    const { fromMin, days } = desk.request;
    const at = (epochMin: number): string => instantOf(epochMin, made.shop.timeZone);
    const order = orderOf(line, at(fromMin), at(fromMin + days * 1440));
    const { problem } = compileProblem({ ...made.shop, orders: [...made.shop.orders, order] }, made.request);
    const told = (of: typeof problem, orderId: string): unknown[] => {
      const own = of.lines.find((one) => one.orderId === orderId);
      return (own?.optionIndices ?? []).map((index) => {
        const { classIndex, stateIndex, route, copiesMax, costByCopies, runMinByCopies } = of.options[index]!;
        const { feedstockId, nozzleId } = of.states[stateIndex]!;
        return { classIndex, feedstockId, nozzleId, route, copiesMax, costByCopies, runMinByCopies };
      });
    };
    expect(told(more.problem, "Q-1")).toEqual(told(problem, "Q-1"));
    expect(more.problem.lines.slice(0, -1)).toEqual(desk.problem.lines);
  }
});
