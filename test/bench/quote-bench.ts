import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../core/plan/engines/highs.ts";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import { planWeek } from "../../core/plan/plan-week.ts";
import { firstAnswer, refinedAnswer, warmUp } from "../../core/quote/first-answer.ts";
import { floorOf } from "../../core/quote/floor.ts";
import { insertLines } from "../../core/quote/insert-order.ts";
import { openQuoteDesk, type QuoteDesk } from "../../core/quote/quote-desk.ts";
import { answerQuote } from "../../core/quote/quote-job.ts";
import type { QuoteLineRequest } from "../../core/quote/quote-order.ts";
import { rushOptions } from "../../core/quote/rush.ts";
import { seededRandom } from "../../core/units/random.ts";
import { atMost, type BenchCall, type BenchRow, median, told } from "./bench-row.ts";
import { pick, wholeBetween } from "./draw.ts";
import { makeShop, type ShopCase } from "./make-shop.ts";

const now = (): number => performance.now();
const ENGINES = { glpk: loadGlpk, highs: loadHighs };
const PLAN_S = 5;
const QUESTIONS = 40;
const POLISH = { steps: 20_000, seed: 1 };

/** A desk on the large shop with a plan of it: what opening costs, the first price and date, what refining takes. */
export async function benchQuotes(call: BenchCall): Promise<BenchRow[]> {
  const made = makeShop("L", { seed: 1 });
  const plan = await planOf(made);
  const opening = now();
  const desk = await openQuoteDesk(made.shop, plan, { ...made.request, seed: 1 }, { now, engines: ENGINES });
  const openedS = (now() - opening) / 1000;
  const warmS = secondsOf(() => warmUp(desk));
  call.say(
    `desk on L seed 1: ${plan.builds.length} builds, opened in ${openedS.toFixed(2)} s, warmed up in ${warmS.toFixed(2)} s`,
  );
  const lines = questions(desk, call.quick ? QUESTIONS / 4 : QUESTIONS);
  const firstS = lines.map((line) => secondsOf(() => firstAnswer(desk, [line])));
  const againS = lines
    .slice(-1)
    .map((line) => secondsOf(() => firstAnswer(desk, [{ ...line, wantedMin: null }])));
  const few = lines.slice(0, call.quick ? 2 : 8);
  const refinedS = few.map((line) => secondsOf(() => refinedAnswer(desk, [line])));
  const planS = few.map((line) => secondsOf(() => insertLines(desk, [line])));
  const floorS = few.map((line) => secondsOf(() => floorOf(desk, [line], { places: "all", polish: POLISH })));
  const rushS = few.slice(0, 3).map((line) => secondsOf(() => rushOptions(desk, line)));
  return [
    told("L quote desk: opened with a plan", openedS, "s"),
    told("L quote desk: warmed up", warmS, "s"),
    atMost(`L first price and date, warm desk, median of ${lines.length} lines`, median(firstS), "s", 0.3),
    atMost(
      `L first price and date, warm desk, slowest of ${lines.length} lines`,
      Math.max(...firstS),
      "s",
      0.3,
    ),
    atMost("L the same line with another date", Math.max(...againS), "s", 0.3),
    told("L refined price and date, median", median(refinedS), "s"),
    told("L plan with the line written and checked, median", median(planS), "s"),
    told("L floor with both plans polished by 20 000 steps, median", median(floorS), "s"),
    told("L what would hold a date, median", median(rushS), "s"),
    ...narrowing(desk, few),
    ...(await benchJob(made, plan, lines.slice(-(call.quick ? 2 : 6)))),
  ];
}

/** The job as the desktop and the command ask it: seconds from asking until each answer, at a desk opened anew and warmed up. */
async function benchJob(
  { shop, request }: ShopCase,
  plan: PlanDocument,
  lines: readonly QuoteLineRequest[],
): Promise<BenchRow[]> {
  const desk = await openQuoteDesk(shop, plan, { ...request, seed: 1 }, { now, engines: ENGINES });
  warmUp(desk);
  const took: number[][] = [];
  for (const line of lines) took.push(await answerSeconds(desk, line));
  const at = (stage: number): number[] => took.slice(1).map((times) => times[stage] ?? Infinity);
  const [first] = took;
  return [
    atMost("L quote job: first answer, first question", first?.[0] ?? Infinity, "s", 0.3),
    atMost("L quote job: simulated date, first question", first?.[1] ?? Infinity, "s", 3),
    told("L quote job: whole answer, first question", first?.at(-1) ?? Infinity, "s"),
    atMost(`L quote job: first answer, next ${lines.length - 1} questions, median`, median(at(0)), "s", 0.3),
    atMost(
      `L quote job: simulated date, next ${lines.length - 1} questions, slowest`,
      Math.max(...at(1)),
      "s",
      3,
    ),
    told(
      `L quote job: whole answer, next ${lines.length - 1} questions, median`,
      median(took.slice(1).map((times) => times.at(-1) ?? Infinity)),
      "s",
    ),
  ];
}

/** Seconds from asking to each answer: first, dated, compared, depending, whole. */
async function answerSeconds(desk: QuoteDesk, line: QuoteLineRequest): Promise<number[]> {
  const startMs = now();
  const times: number[] = [];
  await answerQuote(desk, { lines: [line] }, { onAnswer: () => void times.push((now() - startMs) / 1000) });
  return times;
}

/** How far apart the ends of the floor are, before and after polishing. */
function narrowing(desk: QuoteDesk, lines: readonly QuoteLineRequest[]): BenchRow[] {
  const floors = lines.flatMap((line) => floorOf(desk, [line], { places: "all", polish: POLISH }) ?? []);
  return [
    told(
      "L floor, lowest over inserted, median",
      median(floors.map((one) => share(one.lowest, one.inserted))),
      "%",
    ),
    told(
      "L floor, highest over inserted, median",
      median(floors.map((one) => share(one.highest, one.inserted))),
      "%",
    ),
  ];
}

function planOf({ shop, request }: ShopCase): Promise<PlanDocument> {
  const asked = { ...request, seed: 1, seconds: PLAN_S };
  return planWeek(shop, asked, { now, startedMs: now(), engines: ENGINES });
}

/** Lines of the shop's parts in quantities of 1 to 60, by days 2 to 13 of the plan, each another. */
function questions(desk: QuoteDesk, count: number): QuoteLineRequest[] {
  const random = seededRandom(11);
  return Array.from({ length: count }, (_, index) => ({
    id: `Q-${index + 1}`,
    partId: pick(desk.shop.parts, random).id,
    quantity: wholeBetween(random, 1, 60),
    wantedMin: desk.request.fromMin + wholeBetween(random, 2, 13) * 1440,
    allowLate: false,
  }));
}

function secondsOf(run: () => unknown): number {
  const startMs = now();
  run();
  return (now() - startMs) / 1000;
}

function share(of: number, whole: number): number {
  return whole > 0 ? (of / whole) * 100 : 0;
}
