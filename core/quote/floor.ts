import type { BoundAnswer } from "../plan/bound/bound.ts";
import { cheapestCopies } from "../plan/bound/cheapest-copies.ts";
import type { PlanProblem } from "../plan/plan-problem.ts";
import type { Schedule } from "../plan/schedule.ts";
import { scheduleCost } from "../plan/search/schedule-cost.ts";
import { answerLines, type Effort } from "./answer-lines.ts";
import { lpPrice } from "./lp-price.ts";
import { polish, type PolishEffort } from "./polish.ts";
import type { QuoteDesk } from "./quote-desk.ts";
import type { QuoteLineRequest } from "./quote-order.ts";

/**
 * What lines cost the shop at the least and at the most, their own lateness included: sold for less than the lowest they displace
 * better work, sold for more than the highest they do not. Rarely the least is lower than said: where the lines change a machine
 * over for work that is not released yet, so that it begins sooner.
 */
export interface Floor {
  /**
   * price in the linear program; where a plan adds less than that, the hours are not as dear here as the program has them, and it
   * is the work by itself that displaces nothing; 0 where the program has no prices
   */
  readonly lowest: number;
  /** cost of the best plan found with them over the one without */
  readonly highest: number;
  /** cost of the insertion into the standing plan, before both were polished */
  readonly inserted: number;
}

/** The same works without some lines and with them. */
export interface WithAndWithout {
  readonly bound: Pick<BoundAnswer, "model" | "sifted">;
  readonly without: { readonly problem: PlanProblem; readonly schedule: Schedule };
  readonly with: { readonly problem: PlanProblem; readonly schedule: Schedule };
  /** the lines, by index in the problem with them */
  readonly lineIndices: readonly number[];
}

/**
 * The floor of lines in the standing plan, null where one of them has no place. With `effort.polish` the range is narrowed.
 * Example: 61 by the program, 83 inserted, 74 after polishing with and without them: 61 to 74.
 */
export function floorOf(
  desk: QuoteDesk,
  lines: readonly QuoteLineRequest[],
  effort: { readonly places: Effort; readonly polish?: PolishEffort },
): Floor | null {
  const { problem, schedule, lines: answered } = answerLines(desk, lines, effort.places);
  if (answered.length === 0 || answered.some(({ finishMin }) => finishMin === null)) return null;
  const lineIndices = lines.map(({ id }) => problem.lines.findIndex(({ orderId }) => orderId === id));
  const works: WithAndWithout = {
    bound: desk.bound,
    without: { problem: desk.problem, schedule: desk.standing },
    with: { problem, schedule: { ...schedule, cost: scheduleCost(problem, schedule) } },
    lineIndices,
  };
  return floorBetween(works, effort.polish ?? null);
}

/**
 * The range from the price in the linear program to what the lines add to the plan. To narrow it, the plan is polished with and
 * without the lines, from the same state by the same steps and seed, and the difference taken where it is less: never the
 * difference of two plans made anew, whose noise is larger than most lines. Example: without `effort` 61 to 83.
 */
export function floorBetween(works: WithAndWithout, effort: PolishEffort | null): Floor {
  const { bound, lineIndices } = works;
  const inserted = works.with.schedule.cost - works.without.schedule.cost;
  const inProgram = lineIndices.reduce(
    (sum, index) => sum + (lpPrice(bound, works.with.problem, index) ?? 0),
    0,
  );
  const highest = effort ? Math.min(inserted, polishedDifference(works, effort)) : inserted;
  return { lowest: inProgram <= highest ? inProgram : lowestAlone(works, highest), highest, inserted };
}

/** The lines' cheapest copies, as if they displaced nothing and were never late. */
function lowestAlone({ lineIndices, with: { problem } }: WithAndWithout, highest: number): number {
  const lines = problem.lines.filter(({ index }) => lineIndices.includes(index));
  return Math.min(cheapestCopies({ ...problem, lines }), highest);
}

function polishedDifference(works: WithAndWithout, effort: PolishEffort): number {
  const polishedWith = polish(works.with.problem, works.with.schedule, effort);
  const polishedWithout = polish(works.without.problem, works.without.schedule, effort);
  return polishedWith.cost - polishedWithout.cost;
}
