import type { LineAnswer } from "./first-answer.ts";
import { roughPromise, type PromiseRule } from "./line-promise.ts";
import { breaksAround, type LineWays } from "./line-ways.ts";
import type { PriceRule } from "./price.ts";
import type { AnswerLine } from "./quote-answer.ts";
import type { QuoteLineRequest } from "./quote-order.ts";

/** What a line is priced with. */
export interface PricingOf {
  readonly rule: PriceRule;
  readonly charging: "within" | "apart";
  readonly promising: PromiseRule;
}

/**
 * A line with its price, its price breaks and the date of the plan; nothing of it is simulated. Example: a line of 6 copies that
 * costs 15.51 and is planned for 06:19: 2.58 a copy, 3.23 asked for each, 07:00 as a date to promise.
 */
export function pricedLine(
  asked: QuoteLineRequest,
  ways: LineWays,
  answer: LineAnswer,
  { rule, charging, promising }: PricingOf,
): AnswerLine {
  const { ownCost, costBasis, price, lpPrice, finishMin, toolPathsWith, way } = answer;
  const displaced = (costBasis ?? 0) - (ownCost ?? 0);
  const { quantity } = asked;
  const pathsCharged = toolPathsWith === null ? null : (way?.process ?? null);
  return {
    asked,
    ways,
    unitCost: ownCost === null ? null : ownCost / quantity,
    toolPathsWith,
    costBasis,
    price,
    breaks: price
      ? breaksAround(
          ways,
          { quantity, pricePerPiece: price.pricePerPiece, displaced, charging, pathsCharged },
          rule,
        )
      : [],
    lpPrice,
    plannedMin: finishMin,
    kept: [],
    wanted: null,
    promise: roughPromise(finishMin, asked, promising),
    dateSwings: null,
    priceDrivers: null,
    crossover: null,
    rush: null,
  };
}
