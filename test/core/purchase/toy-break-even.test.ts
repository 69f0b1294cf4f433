import { describe, expect, test } from "vitest";
import { answerCase } from "../../../core/purchase/case-answer.ts";
import { capitalRecovery } from "../../../core/purchase/equivalent-annual.ts";
import { evaluateCase } from "../../../core/purchase/evaluate.ts";
import { runScenarioJob } from "../../../core/purchase/run-scenario.ts";
import type { Order } from "../../../core/shop/order.ts";
import { aCase, oneMore } from "./a-toy-case.ts";
import { aStore, hereTools, toyJob, toyLine, toyWorks } from "./a-toy-works.ts";

/*
 * A fleet whose break-even can be written down. One machine is staffed H = 40 h a week; a copy fills the platform and takes
 * h hours of set-up, run and unloading, so a machine makes n = H / h copies a week. q copies are ordered each week, one to a
 * line, at a price p; a copy costs c in cash, and nobody waits (patience 0): what is not made in its week is lost.
 *   one machine sells min(q, n), two sell min(q, 2n)
 *   gain of the second in a year of 52 weeks: G(q) = 52 (p - c) min(n, max(0, q - n))
 *   worth its price P over L years at the rate i when G(q) >= P x i / (1 - (1 + i)^-L)
 *   so it breaks even at q* = n + P x capital recovery / (52 (p - c)), if that is at most 2n.
 */
const PRICE = 100;
const YEARS = 5;
const RATE = 0.1;
/** n is 16.1 copies, so that 8 more a week are within the second machine's reach. */
const MORE_A_WEEK = 8;
/** Labour, machine and feedstock of one copy without overhead; the machine's rate of 2 per h is no cash. */
const NO_RATE = { hourRate: 0 };

async function toy() {
  const store = await aStore();
  const works = toyWorks(1);
  const cashWorks = { ...works, machines: works.machines.map((machine) => ({ ...machine, ...NO_RATE })) };
  const [one] = runScenarioJob(toyJob(cashWorks, [toyLine()]), store).weeks;
  if (!one) throw new Error("no week");
  const hours = one.hoursByMachine[0]?.usedH ?? Number.NaN;
  const cost = Object.values(one.costByKind).reduce((sum, amount) => sum + amount, 0);
  return { store, works, perWeek: 40 / hours, cost };
}

function orders(count: number): Order[] {
  return Array.from({ length: count }, (_, index) => ({
    id: `O-${index}`,
    customer: "",
    partId: "P-1",
    quantity: 1,
    releaseAt: "2026-11-23T00:00",
    dueAt: "2026-11-27T16:00",
    lateCostPerDay: 1,
    pricePerPiece: PRICE,
    allowLate: true,
    perPiece: false,
    note: "",
  }));
}

describe("a second machine for a toy works", () => {
  test("gains what the closed form says, below, at and above what both can make", async () => {
    const { store, works, perWeek, cost } = await toy();
    for (const q of [10, 20, 30, 50]) {
      const purchaseCase = aCase({ candidates: [oneMore()] });
      const shop = { ...works, orders: orders(q) };
      const { without, candidates } = await evaluateCase(shop, purchaseCase, hereTools(store));
      const withIt = candidates[0]?.withIt ?? [];
      const { flow } = answerCase(shop, purchaseCase, purchaseCase.candidates, {
        without,
        withIt,
        points: [],
      });
      const gain = 52 * (PRICE - cost) * Math.min(perWeek, Math.max(0, q - perWeek));
      expect(flow.total[1], `${q} a week`).toBeCloseTo(gain, 2);
    }
  });

  test("is worth its price from the break-even demand on, and not below", async () => {
    const { store, works, perWeek, cost } = await toy();
    // The price at which a whole number of orders a week breaks even exactly.
    const q = Math.ceil(perWeek) + MORE_A_WEEK;
    const price = (52 * (PRICE - cost) * (q - perWeek)) / capitalRecovery(RATE, YEARS);
    const valueAt = async (weekly: number): Promise<number> => {
      const purchaseCase = aCase({ candidates: [oneMore({ price, lifeYears: YEARS })] });
      const shop = { ...works, orders: orders(weekly) };
      const { without, candidates } = await evaluateCase(shop, purchaseCase, hereTools(store));
      const results = { without, withIt: candidates[0]?.withIt ?? [], points: [] };
      return answerCase(shop, purchaseCase, purchaseCase.candidates, results).distribution.p50;
    };
    const oneOrder = (52 * (PRICE - cost)) / capitalRecovery(RATE, YEARS);
    expect(await valueAt(q)).toBeCloseTo(0, 1);
    expect(await valueAt(q - 1)).toBeCloseTo(-oneOrder, 1);
    expect(await valueAt(q + 1)).toBeCloseTo(oneOrder, 1);
  });
});
