import type { PurchaseCase } from "../shop/purchase-case.ts";
import type { Shop } from "../shop/shop.ts";
import { CaseDesk, type CaseExtent, type CaseTools } from "./case-desk.ts";
import { demandOf } from "./demand.ts";
import { assumedPrices, waysOfDemand } from "./part-costs.ts";
import { SAMPLE_WEEKS, type SampleGap } from "./sample-plans.ts";
import type { ScenarioResult } from "./scenario-job.ts";

/** What is happening, for a progress line. */
export interface CaseProgress {
  readonly stage:
    | "reading the demand"
    | "rough answer"
    | "planning the weeks"
    | "planning sampled weeks in full";
  readonly jobsDone: number;
  readonly jobs: number;
}

/** Everything a case lends beside the tools of its desk. */
export interface EvaluateTools extends CaseTools {
  readonly onProgress?: (progress: CaseProgress) => void;
  /** told once, after a few seconds: the same evaluation of the first weeks of few scenarios */
  readonly onRough?: (evaluation: CaseEvaluation) => void;
}

/** The weeks of all scenarios, without and with each candidate. Result s of each list is of the same scenario. */
export interface CaseEvaluation {
  /** rough: of few scenarios and weeks; stopped: of those scenarios that were done everywhere */
  readonly status: "complete" | "rough" | "stopped";
  readonly weeks: number;
  readonly without: readonly ScenarioResult[];
  readonly candidates: readonly {
    readonly candidateId: string;
    readonly withIt: readonly ScenarioResult[];
  }[];
  /** how far the figures are from real plans; null: not known. `correctedResults` uses it */
  readonly gap: SampleGap | null;
  /** for further questions: bundles, other demands, sampled plans */
  readonly desk: CaseDesk;
}

/** Scenarios and weeks of the rough answer: a quarter of one future. */
export const ROUGH = { scenarios: 1, weeks: 13 } as const;

/**
 * Plans every week of every scenario, without and with each candidate of a case, on as many threads as the tools have. First
 * comes a rough answer where somebody listens for it. Costs are in cash terms (`cash-terms.ts`). Pure but for the tools: equal
 * input and seed give an equal answer. Example: 2 candidates and 20 scenarios of 52 weeks are 60 jobs, 3120 weekly programs.
 */
export async function evaluateCase(
  shop: Shop,
  purchaseCase: PurchaseCase,
  tools: EvaluateTools,
): Promise<CaseEvaluation> {
  const tell = (stage: CaseProgress["stage"], jobsDone: number, jobs: number): void =>
    tools.onProgress?.({ stage, jobsDone, jobs });
  tell("reading the demand", 0, 0);
  const desk = openCase(shop, purchaseCase, tools);
  const ids = purchaseCase.candidates.map(({ id }) => id);
  const isSmall = purchaseCase.scenarios * purchaseCase.weeks <= ROUGH.scenarios * ROUGH.weeks;
  if (tools.onRough && !isSmall) {
    const rough = await evaluate(desk, ids, purchaseCase, ROUGH, (done, all) =>
      tell("rough answer", done, all),
    );
    if (rough.without.length > 0) tools.onRough({ ...rough, status: "rough" });
  }
  const whole = await evaluate(desk, ids, purchaseCase, {}, (done, all) =>
    tell("planning the weeks", done, all),
  );
  const sampled = [
    { candidateIds: [], weeks: SAMPLE_WEEKS.without },
    ...ids.map((id) => ({ candidateIds: [id], weeks: SAMPLE_WEEKS.withEach })),
  ];
  const gap = await desk.gap(sampled, (done, all) => tell("planning sampled weeks in full", done, all));
  return { ...whole, gap, status: tools.stopped?.() ? "stopped" : "complete" };
}

/** Opens a case: prices orders that have no price, and draws its demand. */
export function openCase(shop: Shop, purchaseCase: PurchaseCase, tools: CaseTools): CaseDesk {
  const prices = assumedPrices(shop, purchaseCase, waysOfDemand(shop, purchaseCase));
  return new CaseDesk(shop, purchaseCase, demandOf(shop, purchaseCase, prices), tools);
}

async function evaluate(
  desk: CaseDesk,
  candidateIds: readonly string[],
  { weeks }: PurchaseCase,
  extent: CaseExtent,
  onDone: (done: number, all: number) => void,
): Promise<Omit<CaseEvaluation, "status">> {
  const fleets = [[], ...candidateIds.map((id) => [id])];
  const [without = [], ...others] = await desk.results(fleets, extent, onDone);
  const candidates = candidateIds.map((candidateId, index) => ({ candidateId, withIt: others[index] ?? [] }));
  return { weeks: extent.weeks ?? weeks, without, candidates, gap: null, desk };
}
