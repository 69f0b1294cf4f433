import type { Shop } from "../shop/shop.ts";
import { quantityCrossover, sizeCrossover } from "./crossover.ts";
import { dateSwings } from "./date-swings.ts";
import { effectOnOthers } from "./dates/effect-on-others.ts";
import { type SimulatedDates, type SimulationControl, simulate } from "./dates/simulate.ts";
import { type SimulationTask, simulationTask } from "./dates/simulation-task.ts";
import { firstAnswer, type PricedLines, refinedAnswer } from "./first-answer.ts";
import { floorOf } from "./floor.ts";
import { insertLines } from "./insert-order.ts";
import { lineDates, togetherLikelihood } from "./line-promise.ts";
import { type LineWays, lineWays } from "./line-ways.ts";
import { otherOrders } from "./other-orders.ts";
import { planToDate } from "./plan-to-date.ts";
import { priceFindings } from "./price-findings.ts";
import { priceRule } from "./price.ts";
import { priceDrivers } from "./price-drivers.ts";
import { pricedLine, type PricingOf } from "./priced-line.ts";
import type { AnswerLine, QuoteAnswer, QuoteAsked } from "./quote-answer.ts";
import type { QuoteDesk } from "./quote-desk.ts";
import type { QuoteLineRequest } from "./quote-order.ts";
import { rushOptions } from "./rush.ts";
import { standingDates } from "./standing-dates.ts";

/** Who listens, and who may stop it. */
export interface QuoteJobControl {
  /** every answer as it gets better; the last one is returned too */
  readonly onAnswer?: (answer: QuoteAnswer) => void;
  /** asked between and within the steps; true: the answer so far is returned, still rough */
  readonly stopped?: () => boolean;
  /** waited for between the steps, so that a worker can hear messages */
  readonly pause?: () => Promise<void>;
}

/** Times that the plan is lived through, where the request says nothing. */
const RUNS = 2000;
/** Likelihood of a promised date, %, where the request says nothing. */
const PROMISE_PCT = 80;
/** Steps by which the plan is polished with and without the lines. */
const POLISH_STEPS = 5000;

/**
 * Answers a request from a warm desk, better and better: price and date from the free calendar at once; then the lines inserted
 * and every date simulated; then the floor and what the lines do to other orders; at last what would help and what all depends
 * on. Equal requests at one desk give equal answers; the desk stays as it is. Lines that cannot be answered have findings.
 * Example: at a desk of 175 builds the first answer takes 0.2 s, dates with their likelihoods 1 s, the whole 3 s.
 */
export async function answerQuote(
  desk: QuoteDesk,
  asked: QuoteAsked,
  { onAnswer, stopped = () => false, pause }: QuoteJobControl = {},
): Promise<QuoteAnswer> {
  const job = new QuoteJob(desk, asked, stopped);
  let answer = job.first();
  const steps = [
    () => job.dated(answer),
    () => job.compared(answer),
    () => job.depending(answer),
    () => job.rushed(answer),
  ];
  for (const step of steps) {
    onAnswer?.(answer);
    await pause?.();
    if (stopped()) return answer;
    const better = step();
    if (stopped()) return answer;
    answer = better;
  }
  onAnswer?.(answer);
  return answer;
}

/** The plan with the lines that have a place in it, lived through until these are finished. */
interface Lived {
  readonly placed: readonly QuoteLineRequest[];
  readonly task: SimulationTask;
  readonly dates: SimulatedDates;
}

function crossoverOf(shop: Shop, { asked, ways }: AnswerLine): AnswerLine["crossover"] {
  if (ways.ways.length === 0 || ways.findings.some(({ severity }) => severity === "error")) return null;
  const { partId, quantity } = asked;
  return { byQuantity: quantityCrossover(shop, partId), bySize: sizeCrossover(shop, partId, quantity) };
}

class QuoteJob {
  private readonly desk: QuoteDesk;
  private readonly asked: QuoteAsked;
  private readonly stopped: () => boolean;
  private readonly ways: readonly LineWays[];
  private readonly pricing: PricingOf;
  private readonly runs: number;
  private lived: Lived | null = null;

  constructor(desk: QuoteDesk, asked: QuoteAsked, stopped: () => boolean) {
    const ids = asked.lines.map(({ id }) => id);
    if (new Set(ids).size < ids.length) throw new RangeError(`two lines of one id: ${ids.join(", ")}`);
    this.desk = desk;
    this.asked = asked;
    this.stopped = stopped;
    this.ways = asked.lines.map((line) => lineWays(desk.shop, line));
    const { fromMin } = desk.request;
    const { timeZone } = desk.shop;
    const { charging = "within", promisePct = PROMISE_PCT } = asked;
    this.pricing = { rule: priceRule(desk.shop), charging, promising: { timeZone, fromMin, promisePct } };
    this.runs = asked.runs ?? RUNS;
  }

  /** Price and date at once. */
  first(): QuoteAnswer {
    const { desk, asked, pricing } = this;
    const priced = firstAnswer(desk, asked.lines, pricing.charging);
    return {
      stage: "first",
      isRough: true,
      fromMin: desk.request.fromMin,
      rule: pricing.rule,
      ...this.money(priced),
      lines: this.lines(priced),
      floor: null,
      runs: 0,
      together: { wanted: null, promised: null },
      others: null,
    };
  }

  /** The lines in the plan where they suit best, and every date simulated. */
  dated(before: QuoteAnswer): QuoteAnswer {
    const { desk, asked, pricing } = this;
    const priced = refinedAnswer(desk, asked.lines, pricing.charging);
    const rough = this.lines(priced);
    const answer: QuoteAnswer = { ...before, stage: "refined", ...this.money(priced), lines: rough };
    this.lived = this.live(rough.filter(({ plannedMin }) => plannedMin !== null).map((line) => line.asked));
    if (!this.lived) return answer;
    const { dates } = this.lived;
    const lines = rough.map((line) => ({ ...line, ...lineDates(dates, line.asked, pricing.promising) }));
    return {
      ...answer,
      lines,
      floor: floorOf(desk, asked.lines, { places: "all" }),
      runs: dates.runs,
      together: togetherLikelihood(dates, lines, pricing.promising.fromMin),
    };
  }

  /** The floor narrowed, and what the lines do to other orders. */
  compared(before: QuoteAnswer): QuoteAnswer {
    const { desk, asked, stopped, lived } = this;
    if (!lived) return { ...before, others: [] };
    const polish = { steps: POLISH_STEPS, seed: desk.request.seed, stopped };
    const floor = floorOf(desk, asked.lines, { places: "all", polish });
    return { ...before, floor, others: this.others(lived) };
  }

  /** What prices and dates depend on. */
  depending(before: QuoteAnswer): QuoteAnswer {
    const { desk, runs, stopped, lived, pricing } = this;
    const dates = { runs, seed: desk.request.seed, promisePct: pricing.promising.promisePct, stopped };
    const lines = before.lines.map((line) => ({
      ...line,
      dateSwings: lived && line.promise ? dateSwings(lived.task, line.asked.id, dates) : [],
      priceDrivers: line.price ? priceDrivers(desk.shop, line.asked) : null,
      crossover: crossoverOf(desk.shop, line),
    }));
    return { ...before, stage: "whole", lines };
  }

  /** What would hold the wanted dates that the promised ones do not. */
  rushed(before: QuoteAnswer): QuoteAnswer {
    const lines = before.lines.map((line) => ({ ...line, rush: this.rushOf(line) }));
    return { ...before, isRough: false, lines };
  }

  private rushOf({ asked, promise, price }: AnswerLine): AnswerLine["rush"] {
    const isHeld = promise !== null && promise.byMin <= (asked.wantedMin ?? Infinity);
    return isHeld || !price ? [] : rushOptions(this.desk, asked, this.stopped);
  }

  /** Null: no line has a place. */
  private live(placed: readonly QuoteLineRequest[]): Lived | null {
    if (placed.length === 0) return null;
    const inserted = insertLines(this.desk, placed, { withoutDocument: true });
    const task = simulationTask(inserted.shop, planToDate(inserted));
    const orderIds = placed.map(({ id }) => id);
    return { placed, task, dates: simulate(task, { ...this.luck(), orderIds }) };
  }

  /** The works with the lines until the last order is finished; the plan with them is checked on the way. */
  private others({ placed, task }: Lived): QuoteAnswer["others"] {
    const without = standingDates(this.desk, this.runs, this.stopped);
    if (!without) return null;
    const moved = insertLines(this.desk, placed).others;
    return otherOrders(effectOnOthers(simulate(task, this.luck()), without), moved);
  }

  private luck(): SimulationControl {
    return { runs: this.runs, seed: this.desk.request.seed, stopped: this.stopped };
  }

  private lines(priced: PricedLines): AnswerLine[] {
    return this.asked.lines.map((line, at) => {
      const ways = this.ways[at];
      const answer = priced.lines[at];
      if (!ways || !answer) throw new RangeError(`no such line: ${at}`);
      return pricedLine(line, ways, answer, this.pricing);
    });
  }

  private money(priced: PricedLines): Pick<QuoteAnswer, "total" | "extraCost" | "isHeld" | "findings"> {
    const { total, extraCost, isHeld } = priced;
    const findings = [
      ...priced.findings,
      ...priceFindings(priced.lines, this.pricing.rule),
      ...this.ways.flatMap((ways) => ways.findings),
    ];
    const said = new Map(findings.map((finding) => [finding.sentence, finding]));
    return { total, extraCost, isHeld, findings: [...said.values()] };
  }
}
