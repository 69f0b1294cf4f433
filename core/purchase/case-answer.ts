import type { Candidate, PurchaseCase } from "../shop/purchase-case.ts";
import type { Shop } from "../shop/shop.ts";
import { answerOf, type PurchaseAnswer } from "./answer.ts";
import { applyCandidates } from "./apply-candidate.ts";
import { type CashFlow, cashFlow, type CashQuestion, lifeOf } from "./cash-flow.ts";
import { shiftWagesPerYear, standingCashPerYear } from "./cash-terms.ts";
import { type Distribution, distributionOf } from "./distribution.ts";
import { mostToPay, valueOf } from "./most-to-pay.ts";
import { changeOf, meanMoney, type OperatingMoney, operatingYears } from "./operating-money.ts";
import { changesOverLife, type DemandPoint } from "./over-life.ts";
import type { ScenarioResult } from "./scenario-job.ts";

/** What the weeks of the scenarios gave, without and with candidates; result s of both is of the same scenario. */
export interface CaseResults {
  readonly without: readonly ScenarioResult[];
  readonly withIt: readonly ScenarioResult[];
  /** what they change at other demands, for growth beyond the weeks planned and for the tornado; empty: not worked out */
  readonly points: readonly DemandPoint[];
}

/** One candidate, or several taken together, judged. */
export interface CaseAnswer {
  readonly candidateIds: readonly string[];
  readonly lifeYears: number;
  /** of the mean over scenarios; its rows add up to its total */
  readonly flow: CashFlow;
  readonly answer: PurchaseAnswer;
  /** net present value over scenarios */
  readonly distribution: Distribution;
  /** highest price at which it is worth buying, currency; null: of several candidates */
  readonly mostToPay: number | null;
  /** what it all follows from, for the tornado */
  readonly question: CashQuestion;
}

/**
 * Judges candidates taken together by the weeks planned without and with them on the same scenarios: changes of running money
 * year by year, the cash flow of their mean, and the net present value of each scenario. The mean of the values is the value of
 * the mean flow, since a value is linear in its flow. Example: 20 scenarios with a mean gain of 30 000 a year for 8 years.
 */
export function answerCase(
  shop: Shop,
  purchaseCase: PurchaseCase,
  candidates: readonly Candidate[],
  results: CaseResults,
): CaseAnswer {
  const lifeYears = lifeOf(candidates);
  const changes = scenarioChanges(results);
  const fixed = fixedChange(shop, candidates);
  const questionOf = (planned: readonly OperatingMoney[]): CashQuestion => ({
    candidates,
    financing: purchaseCase.financing,
    yearly: changesOverLife(planned, lifeYears, purchaseCase.growthPctPerYear, results.points),
    ...fixed,
  });
  const question = questionOf(meanMoney(changes));
  const flow = cashFlow(question);
  return {
    candidateIds: candidates.map(({ id }) => id),
    lifeYears,
    flow,
    answer: answerOf(flow, purchaseCase.financing),
    distribution: distributionOf(changes.map((planned) => valueOf(questionOf(planned)))),
    mostToPay: mostToPay(question),
    question,
  };
}

/** What candidates change at one demand, the mean over scenarios of the first year planned, for `CaseResults.points`. */
export function demandPoint(
  demandFactor: number,
  results: Pick<CaseResults, "without" | "withIt">,
): DemandPoint {
  const [change] = meanMoney(scenarioChanges(results));
  if (change === undefined) throw new RangeError("no scenario was worked out at this demand");
  return { demandFactor, change };
}

function scenarioChanges({ without, withIt }: Pick<CaseResults, "without" | "withIt">): OperatingMoney[][] {
  if (without.length !== withIt.length || without.length === 0)
    throw new RangeError(
      `${without.length} scenarios without and ${withIt.length} with: both need the same ones`,
    );
  return without.map((base, scenario) => {
    const before = operatingYears(base);
    const after = operatingYears(withIt[scenario] ?? base);
    return after.map((money, year) => changeOf(money, before[year] ?? money));
  });
}

/** Floor, maintenance and wages: what changes each year whatever is ordered. */
function fixedChange(
  shop: Shop,
  candidates: readonly Candidate[],
): Pick<CashQuestion, "standingPerYear" | "wagesPerYear"> {
  const after = applyCandidates(shop, candidates);
  const shifts = candidates.flatMap(({ changes }) =>
    changes.flatMap((change) => (change.kind === "add-shift" ? [change] : [])),
  );
  const wages = shifts.reduce((sum, shift) => sum + shiftWagesPerYear(shift, shop.costing.labourPerH), 0);
  return {
    standingPerYear: standingCashPerYear(shop) - standingCashPerYear(after),
    wagesPerYear: 0 - wages,
  };
}
