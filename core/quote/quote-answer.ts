import type { Crossover } from "./crossover.ts";
import type { DateEffect } from "./dates/effect-on-others.ts";
import type { KeptDate, Likelihood } from "./dates/likelihood.ts";
import type { Finding } from "../units/finding.ts";
import type { Floor } from "./floor.ts";
import type { MovedOrder } from "./insert-order.ts";
import type { LineWays } from "./line-ways.ts";
import type { PriceDrivers } from "./price-drivers.ts";
import type { LinePrice, PriceRule, QuoteTotal } from "./price.ts";
import type { QuoteLineRequest } from "./quote-order.ts";
import type { RushOption } from "./rush.ts";

/** first: from the free calendar at once; refined: with simulated dates; whole: with what all depends on and what would hold a date. */
export type AnswerStage = "first" | "refined" | "whole";

/** Everything a quote is asked for. */
export interface QuoteAsked {
  /** ids unlike each other and unlike all orders of the shop */
  readonly lines: readonly QuoteLineRequest[];
  /** within: tool paths and first set-up in the price of the copies; apart: charged once beside them; left out: within */
  readonly charging?: "within" | "apart";
  /** likelihood with which a promised date is kept, 1 to 99 %; left out: 80 */
  readonly promisePct?: number;
  /** times that the plan is lived through; left out: 2000 */
  readonly runs?: number;
}

/** A date to promise. */
export interface DatePromise {
  /** epoch minute, a full hour of the works' clocks or the minute that the customer wants */
  readonly byMin: number;
  /** how likely it is kept; null: not simulated yet */
  readonly likelihoodPct: number | null;
  /** standard error of that, percentage points */
  readonly errorPct: number | null;
}

/** What moves a line's promised date, made lower and higher alone. */
export interface DateSwing {
  readonly input: string;
  readonly low: { readonly change: string; readonly byMin: number | null };
  readonly high: { readonly change: string; readonly byMin: number | null };
  /** how far the two dates lie apart, min; null: one of them does not exist */
  readonly swingMin: number | null;
}

/** One line of an answer. What is null comes later, or `findings` say why it does not come. */
export interface AnswerLine {
  readonly asked: QuoteLineRequest;
  readonly ways: LineWays;
  /** what one copy costs at the asked quantity by itself, tool paths and first set-up in it, currency */
  readonly unitCost: number | null;
  /** line of this answer that its tool paths are charged with, so that they are not in its cost; null: there is none */
  readonly toolPathsWith: string | null;
  /** what the price of the line is made from, currency: its own cost, or what the plan costs more for it if that is more */
  readonly costBasis: number | null;
  readonly price: LinePrice | null;
  /** price of one copy at other quantities, ascending; the asked quantity among them */
  readonly breaks: readonly { readonly quantity: number; readonly pricePerPiece: number }[];
  /** price of the line in the linear program, currency */
  readonly lpPrice: number | null;
  /** last copy in the plan with every print as long as estimated, epoch minute; null: no place */
  readonly plannedMin: number | null;
  /** dates kept with 50, 80 and 95 %; empty: not simulated */
  readonly kept: readonly KeptDate[];
  /** likelihood of the wanted date; null: none wanted, or not simulated yet */
  readonly wanted: Likelihood | null;
  readonly promise: DatePromise | null;
  /** the five inputs that move its date most; null: not known yet */
  readonly dateSwings: readonly DateSwing[] | null;
  /** the five inputs that move its price by itself most, and the estimate's band; null: not known yet, or it has no price */
  readonly priceDrivers: PriceDrivers | null;
  /** where filament and pellets cross over; null: not known yet */
  readonly crossover: { readonly byQuantity: Crossover; readonly bySize: Crossover } | null;
  /** what would hold the wanted date; empty: it is held, none is wanted, or nothing would; null: not known yet */
  readonly rush: readonly RushOption[] | null;
}

/** What the lines do to one other order. */
export interface OtherOrder extends DateEffect {
  /** finish in the plan without and with the lines, and the lateness that it costs more; null: unmoved in the plan */
  readonly moved: Pick<MovedOrder, "wasMin" | "isMin" | "extraLateCost"> | null;
}

/** The answer to a request as plain data: prices, dates, what they rest on. Money in the shop's currency, times epoch minutes. */
export interface QuoteAnswer {
  readonly stage: AnswerStage;
  /** true: something is still being computed, or it was stopped before its end */
  readonly isRough: boolean;
  /** start of the plan that it was made against, epoch minute */
  readonly fromMin: number;
  readonly rule: PriceRule;
  readonly lines: readonly AnswerLine[];
  /** null: a line has no price */
  readonly total: QuoteTotal | null;
  /** what the plan costs more, without the lines' own lateness, currency */
  readonly extraCost: number;
  /** every line that must not be late is in time in the plan */
  readonly isHeld: boolean;
  /** all lines together; null: not known yet, or a line has no place */
  readonly floor: Floor | null;
  /** runs of the simulation; 0: none yet */
  readonly runs: number;
  /** likelihood that all dates are kept together; null: no such dates, or not simulated yet */
  readonly together: { readonly wanted: Likelihood | null; readonly promised: Likelihood | null };
  /** other orders that finish at another time because of the lines, those whose due date suffers most first; null: not known yet */
  readonly others: readonly OtherOrder[] | null;
  readonly findings: readonly Finding[];
}
