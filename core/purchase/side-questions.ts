import type { Candidate, PurchaseCase } from "../shop/purchase-case.ts";
import type { Shop } from "../shop/shop.ts";
import { type BreakEven, seekBreakEven } from "./break-even.ts";
import { type CaseAnswer, answerCase, demandPoint } from "./case-answer.ts";
import { lifeOf } from "./cash-flow.ts";
import { CaseDesk, type CaseExtent, type CaseTools } from "./case-desk.ts";
import type { Demand } from "./demand.ts";
import { withFeedstockPrice } from "./feedstock-price.ts";
import type { DemandPoint } from "./over-life.ts";
import type { ScenarioResult } from "./scenario-job.ts";

/**
 * Multiples of the demand that are worked out, closer together around what is expected: where a works fills up, gains rise
 * steeply, and a straight line between far points would claim too much.
 */
const DEMAND_FACTORS: readonly number[] = [
  0.5, 0.8, 0.9, 1, 1.1, 1.25, 1.5,
]; /** A works that grows further is not looked at. */
const LARGEST_FACTOR = 2.5;
/** Nearer than this to another, a factor is not worth working out. */
const APART = 0.03;
/** Multiples of a feedstock's price. */
const PRICE_FACTORS: readonly number[] = [0.5, 1, 2];
const REFINEMENTS = 1;

/** What side questions are asked about. */
interface SideInput {
  readonly shop: Shop;
  readonly purchaseCase: PurchaseCase;
  readonly demand: Demand;
  readonly tools: CaseTools;
  /** the few scenarios and weeks */
  readonly extent: CaseExtent;
  /** corrects results by what weeks planned in full showed */
  readonly correct: (results: readonly ScenarioResult[]) => readonly ScenarioResult[];
}

/**
 * Questions beside the main one, each of which plans weeks anew: other demands, other feedstock prices, several candidates at
 * once. They are asked on fewer scenarios and weeks. What they say is how far a value moves from the same few scenarios as they
 * are; that difference is added to the value of all scenarios, so that the few need not be typical ones.
 */
export class SideQuestions {
  private readonly input: SideInput;
  private readonly desk: CaseDesk;

  constructor(input: SideInput) {
    this.input = input;
    this.desk = this.deskFor(input.shop);
  }

  /**
   * What each group of candidates changes at other demands when it is taken together, by place; the demand of the last year of
   * a life is one of them.
   */
  async demandPoints(groups: readonly (readonly Candidate[])[], lifeYears: number): Promise<DemandPoint[][]> {
    const grown = this.grownFactor(lifeYears);
    const isNew = DEMAND_FACTORS.every((factor) => Math.abs(factor - grown) > APART);
    return this.pointsAt(groups, isNew ? [...DEMAND_FACTORS, grown] : DEMAND_FACTORS);
  }

  private async pointsAt(
    groups: readonly (readonly Candidate[])[],
    factors: readonly number[],
  ): Promise<DemandPoint[][]> {
    const points = groups.map((): DemandPoint[] => []);
    const fleets = [[], ...groups.map((group) => group.map(({ id }) => id))];
    for (const demandFactor of factors) {
      const extent = { ...this.input.extent, demandFactor };
      const [without = [], ...others] = await this.resultsOf(this.desk, fleets, extent);
      if (without.length === 0) return groups.map(() => []);
      for (const [place, withIt] of others.entries())
        points[place]?.push(demandPoint(demandFactor, { without, withIt }));
    }
    return points;
  }

  /** Demand of the last year of a life over that of the first. */
  private grownFactor(lifeYears: number): number {
    const growth = (1 + this.input.purchaseCase.growthPctPerYear / 100) ** (lifeYears - 1);
    return Math.min(LARGEST_FACTOR, growth);
  }

  /** Multiple of the price of all feedstocks of one form at which they gain nothing; prices of parts stay. */
  breakEvenPrice(
    candidates: readonly Candidate[],
    value: number,
    form: "filament" | "pellet",
  ): Promise<BreakEven | null> {
    return this.breakEven(value, (factor) => {
      const desk = factor === 1 ? this.desk : this.deskFor(withFeedstockPrice(this.input.shop, form, factor));
      return this.valueOn(desk, candidates);
    });
  }

  /**
   * Equivalent annual value of candidates taken together less the sum of those of each alone: what being together changes, with
   * growth until the last year. Null: stopped.
   */
  async together(candidates: readonly Candidate[]): Promise<number | null> {
    const groups = [candidates, ...candidates.map((candidate) => [candidate])];
    const grown = this.grownFactor(lifeOf(candidates));
    const points =
      Math.abs(grown - 1) > APART ? await this.pointsAt(groups, [1, grown]) : groups.map(() => []);
    let more = 0;
    for (const [place, group] of groups.entries()) {
      const answer = await this.answerOn(this.desk, group, points[place] ?? []);
      if (answer === null) return null;
      more += (place === 0 ? 1 : -1) * answer.answer.equivalentAnnualValue;
    }
    return more;
  }

  private async breakEven(
    value: number,
    valueAt: (factor: number) => Promise<number | null>,
  ): Promise<BreakEven | null> {
    const asItIs = await valueAt(1);
    if (asItIs === null) return null;
    return seekBreakEven(
      async (factor) => value + ((await valueAt(factor)) ?? asItIs) - asItIs,
      PRICE_FACTORS,
      REFINEMENTS,
    );
  }

  private async valueOn(desk: CaseDesk, candidates: readonly Candidate[]): Promise<number | null> {
    return (await this.answerOn(desk, candidates, []))?.answer.netPresentValue ?? null;
  }

  /** Null: stopped before one scenario was done. */
  private async answerOn(
    desk: CaseDesk,
    candidates: readonly Candidate[],
    points: readonly DemandPoint[],
  ): Promise<CaseAnswer | null> {
    const { shop, purchaseCase, extent } = this.input;
    const ids = candidates.map(({ id }) => id);
    const [without = [], withIt = []] = await this.resultsOf(desk, [[], ids], extent);
    if (without.length === 0) return null;
    return answerCase(shop, purchaseCase, candidates, { without, withIt, points });
  }

  private async resultsOf(
    desk: CaseDesk,
    fleets: readonly (readonly string[])[],
    extent: CaseExtent,
  ): Promise<(readonly ScenarioResult[])[]> {
    return (await desk.results(fleets, extent)).map((results) => this.input.correct(results));
  }

  private deskFor(shop: Shop): CaseDesk {
    const { purchaseCase, demand, tools } = this.input;
    return new CaseDesk(shop, purchaseCase, demand, tools);
  }
}
