import { beforeAll, describe, expect, test } from "vitest";
import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import type { QuoteDesk } from "../../../core/quote/quote-desk.ts";
import { answerQuote } from "../../../core/quote/quote-job.ts";
import { quoteTotal } from "../../../core/quote/price.ts";
import { MIN_PER_DAY } from "../../../core/units/conversions.ts";
import { aMachine, aPart, aShop } from "../../fixtures/a-route.ts";
import { aLine, aQuoteDesk } from "../../fixtures/a-quote-desk.ts";
import { minuteOf } from "../../../core/shop/instants.ts";

const REQUEST = { fromMin: minuteOf("2026-11-30T06:00", "Europe/Berlin"), days: 7, seed: 1 };
const RUNS = 300;
const two = aShop({
  machines: [aMachine(), aMachine({ id: "F2", name: "Filament 2" })],
  parts: [aPart(), aPart({ id: "odd", name: "Odd", smallestFeatureMm: 0.01 })],
});

let desk: QuoteDesk;
beforeAll(async () => {
  desk = await aQuoteDesk({ shop: two, request: REQUEST });
});

async function allAnswers(...lines: ReturnType<typeof aLine>[]): Promise<QuoteAnswer[]> {
  const answers: QuoteAnswer[] = [];
  const last = await answerQuote(desk, { lines, runs: RUNS }, { onAnswer: (one) => void answers.push(one) });
  expect(last).toBe(answers.at(-1));
  return answers;
}

describe("answers that get better", () => {
  test("come first, refined and whole, rough until the last", async () => {
    const answers = await allAnswers(aLine(desk, "clip", 6, 3));
    expect(answers.map(({ stage }) => stage)).toEqual(["first", "refined", "refined", "whole", "whole"]);
    expect(answers.map(({ isRough }) => isRough)).toEqual([true, true, true, true, false]);
    expect(answers.map(({ runs }) => runs)).toEqual([0, RUNS, RUNS, RUNS, RUNS]);
  });

  test("have a price and a date at once, and all the rest in the end", async () => {
    const answers = await allAnswers(aLine(desk, "clip", 6, 3));
    const [first] = answers[0]!.lines;
    expect(first!.price!.total).toBeGreaterThan(0);
    expect(first!.promise!.likelihoodPct).toBeNull();
    const [line] = answers.at(-1)!.lines;
    expect(line!.kept.map(({ likelihoodPct }) => likelihoodPct)).toEqual([50, 80, 95]);
    expect(line!.priceDrivers!.drivers.length).toBeGreaterThan(0);
    expect(line!.dateSwings!.length).toBeGreaterThan(0);
    expect(line!.crossover!.byQuantity.costs.every(({ pellet }) => pellet === null)).toBe(true);
    expect(line!.rush).toEqual([]);
    expect(answers.at(-1)!.floor!.lowest).toBeLessThanOrEqual(answers.at(-1)!.floor!.highest);
    expect(answers.at(-1)!.others).not.toBeNull();
  });

  test("are plain data: nothing is lost as JSON", async () => {
    const answer = (await allAnswers(aLine(desk, "clip", 6, 3))).at(-1);
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });

  test("are equal for equal requests, and the desk stays as it is", async () => {
    const before = JSON.stringify(desk.standing);
    const one = (await allAnswers(aLine(desk, "clip", 4, 2))).at(-1);
    const other = (await allAnswers(aLine(desk, "clip", 4, 2))).at(-1);
    expect(one).toEqual(other);
    expect(JSON.stringify(desk.standing)).toBe(before);
  });

  test("stop where they are when somebody stops them, still rough", async () => {
    let asked = 0;
    const answers: QuoteAnswer[] = [];
    const last = await answerQuote(
      desk,
      { lines: [aLine(desk, "clip", 6, 3)], runs: RUNS },
      { onAnswer: (one) => void answers.push(one), stopped: () => asked++ > 0 },
    );
    expect(answers.map(({ stage }) => stage)).toEqual(["first"]);
    expect([last.stage, last.isRough]).toEqual(["first", true]);
  });

  test("let others work between the steps", async () => {
    let pauses = 0;
    const pause = async (): Promise<void> => void pauses++;
    await answerQuote(desk, { lines: [aLine(desk, "clip", 1, 3)], runs: 10 }, { pause });
    expect(pauses).toBe(4);
  });
});

describe("prices", () => {
  test("by quantity hold the asked one at its price, and never rise with it", async () => {
    const [line] = (await allAnswers(aLine(desk, "clip", 6, 3))).at(-1)!.lines;
    expect(line!.breaks.find(({ quantity }) => quantity === 6)!.pricePerPiece).toBe(
      line!.price!.pricePerPiece,
    );
    const prices = line!.breaks.map(({ pricePerPiece }) => pricePerPiece);
    expect(prices).toEqual(prices.toSorted((a, b) => b - a));
    expect(line!.breaks.map(({ quantity }) => quantity)).toEqual(
      line!.breaks.map(({ quantity }) => quantity).toSorted((a, b) => a - b),
    );
  });

  test("are given for 1, 2, 5, 10, 20, 50, 100 and the asked quantity by every way", async () => {
    const [line] = (await allAnswers(aLine(desk, "clip", 6, 3)))[0]!.lines;
    expect(line!.ways.quantities).toEqual([1, 2, 5, 6, 10, 20, 50, 100]);
    for (const { costs, machineIds } of line!.ways.ways) {
      expect(machineIds).toEqual(["F1", "F2"]);
      expect(costs.map((cost) => cost?.quantity)).toEqual(line!.ways.quantities);
    }
  });

  test("of several lines add up to the total", async () => {
    const answer = (
      await allAnswers(aLine(desk, "clip", 3, 3), { ...aLine(desk, "clip", 5, 4), id: "Q-2" })
    ).at(-1)!;
    const totals = answer.lines.map(({ price }) => price!.total);
    expect(answer.total).toEqual(quoteTotal(totals, answer.rule));
  });
});

describe("dates", () => {
  test("kept with a higher likelihood are no earlier, and the promised one is kept as asked", async () => {
    const [line] = (await allAnswers({ ...aLine(desk, "clip", 6, 1), wantedMin: null })).at(-1)!.lines;
    const dates = line!.kept.map(({ byMin }) => byMin!);
    expect(dates).toEqual(dates.toSorted((a, b) => a - b));
    expect(line!.promise!.byMin).toBeGreaterThanOrEqual(dates[1]!);
    expect(line!.promise!.byMin - dates[1]!).toBeLessThan(60);
    expect(line!.promise!.likelihoodPct!).toBeGreaterThanOrEqual(80 - 100 / RUNS);
    expect(line!.wanted).toBeNull();
  });

  test("that are wanted and kept are promised to the minute", async () => {
    const asked = aLine(desk, "clip", 2, 4.37);
    const [line] = (await allAnswers(asked)).at(-1)!.lines;
    expect(line!.promise!.byMin).toBe(asked.wantedMin);
    expect(line!.wanted).toMatchObject({ status: "known" });
  });

  test("that cannot be held have what would hold them, or none", async () => {
    const tight = { ...aLine(desk, "clip", 60, 0.3), allowLate: true };
    const [line] = (await allAnswers(tight)).at(-1)!.lines;
    expect(line!.promise!.byMin).toBeGreaterThan(tight.wantedMin!);
    expect(line!.rush).not.toBeNull();
    for (const { finishMin } of line!.rush!) expect(finishMin).toBeLessThanOrEqual(tight.wantedMin!);
  });

  test("of two lines are kept together no more often than the less likely one", async () => {
    const soon = { ...aLine(desk, "clip", 6, 1), id: "Q-2" };
    const { lines, together } = (await allAnswers(aLine(desk, "clip", 3, 1), soon)).at(-1)!;
    const own = lines.map(({ wanted }) => (wanted?.status === "known" ? wanted.likelihood : Number.NaN));
    expect(together.wanted!.status === "known" && together.wanted!.likelihood).toBeLessThanOrEqual(
      Math.min(...own),
    );
  });

  test("are asked with another likelihood where the request says so", async () => {
    const line = { ...aLine(desk, "clip", 6, 1), wantedMin: null };
    const sure = await answerQuote(desk, { lines: [line], runs: RUNS, promisePct: 99 });
    const usual = await answerQuote(desk, { lines: [line], runs: RUNS, promisePct: 50 });
    expect(sure.lines[0]!.promise!.byMin).toBeGreaterThan(usual.lines[0]!.promise!.byMin);
  });
});

describe("what cannot be answered", () => {
  test("a part that fits nowhere has reasons and no price; the other line keeps its own", async () => {
    const odd = { ...aLine(desk, "odd", 2, 3), id: "Q-2" };
    const answer = (await allAnswers(aLine(desk, "clip", 2, 3), odd)).at(-1)!;
    const [good, bad] = answer.lines;
    expect([good!.price !== null, good!.kept.length]).toEqual([true, 3]);
    expect([bad!.price, bad!.promise, bad!.kept]).toEqual([null, null, []]);
    expect(bad!.ways.refused.length).toBeGreaterThan(0);
    expect(answer.total).toBeNull();
    expect(answer.findings.some(({ code }) => code === "no-way")).toBe(true);
  });

  test.each([0, 1_000_000])("%s copies: one sentence, no date, nothing thrown", async (quantity) => {
    const answer = (await allAnswers(aLine(desk, "clip", quantity, 3))).at(-1)!;
    expect(answer.lines[0]!.promise).toBeNull();
    expect(answer.findings.length).toBe(1);
    expect([answer.runs, answer.others]).toEqual([0, []]);
  });

  test("a date in the past is answered with the earliest one and a warning", async () => {
    const past = { ...aLine(desk, "clip", 2, -3), allowLate: true };
    const answer = (await allAnswers(past)).at(-1)!;
    expect(answer.findings.map(({ code }) => code)).toEqual(["date-past"]);
    expect(answer.lines[0]!.promise!.byMin).toBeGreaterThan(REQUEST.fromMin);
    expect(answer.lines[0]!.promise!.byMin).toBeLessThan(REQUEST.fromMin + MIN_PER_DAY);
  });

  test("a margin of the whole price, or a shop without prices, is said", async () => {
    const all = { ...two, costing: { ...two.costing, marginPct: 100 } };
    const greedy = await answerQuote(await aQuoteDesk({ shop: all, request: REQUEST }), {
      lines: [aLine(desk, "clip", 2, 3)],
      runs: 10,
    });
    expect(greedy.findings.map(({ code }) => code)).toEqual(["margin"]);
    expect(greedy.total).toBeNull();
  });

  test("two lines of one id are a programmer's mistake", async () => {
    const line = aLine(desk, "clip", 2, 3);
    await expect(answerQuote(desk, { lines: [line, line] })).rejects.toThrow("two lines of one id");
  });
});
