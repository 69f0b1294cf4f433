import type { LpEngine } from "../plan/linear-program.ts";
import { listed } from "../shop/finding.ts";
import type { Candidate, PurchaseCase } from "../shop/purchase-case.ts";
import type { Shop } from "../shop/shop.ts";
import type { BreakEven } from "./break-even.ts";
import { type BestBundle, bestBundle } from "./bundle.ts";
import { answerCase, type CaseAnswer } from "./case-answer.ts";
import type { CaseTools } from "./case-desk.ts";
import { lifeOf } from "./cash-flow.ts";
import { type CrossoverChart, crossoverChart } from "./crossover-chart.ts";
import { type MixRow, demandMix } from "./demand-mix.ts";
import { breakEvenDemand } from "./demand-value.ts";
import { demandOf } from "./demand.ts";
import type { CaseEvaluation } from "./evaluate.ts";
import { idleCandidates } from "./idle-candidate.ts";
import { operatingFigures, type OperatingFigures } from "./operating-figures.ts";
import { assumedPrices, waysOfDemand } from "./part-costs.ts";
import type { DemandPoint } from "./over-life.ts";
import { recommendation } from "./purchase-words.ts";
import { correctedResults, type SampleGap } from "./sample-plans.ts";
import type { ScenarioResult } from "./scenario-job.ts";
import { SideQuestions } from "./side-questions.ts";
import { tornadoOf, type TornadoBar } from "./tornado.ts";

/** Everything said about one candidate. */
export interface CandidateStudy {
  readonly candidate: Candidate;
  readonly answer: CaseAnswer;
  /** how the works runs with it, in a mean year */
  readonly figures: OperatingFigures;
  /** by multiples of the demand and of the feedstocks' prices; null: not worked out, or stopped before */
  readonly demand: BreakEven | null;
  readonly pelletPrice: BreakEven | null;
  readonly filamentPrice: BreakEven | null;
  readonly tornado: readonly TornadoBar[];
  /** true: it can make nothing that is ordered */
  readonly makesNothing: boolean;
  /** net present value with the weekly figures as they are, not corrected by weeks planned in full, currency */
  readonly uncorrectedValue: number;
  /** the recommendation with its condition; it says so where the verdict hangs on that correction */
  readonly sentence: string;
}

/** A case answered: what the page and the sheet show. */
export interface CaseStudy {
  readonly status: CaseEvaluation["status"];
  /** how the works runs as it is, in a mean year */
  readonly without: OperatingFigures;
  /** in the order of the case */
  readonly candidates: readonly CandidateStudy[];
  /** the best of them together within the budget; null: not worked out */
  readonly bundle: BestBundle | null;
  /** that bundle planned as one on all scenarios; null: nothing to take, or not worked out */
  readonly together: CaseAnswer | null;
  /** what to take of everything, in one sentence; null: no bundle was worked out */
  readonly sentence: string | null;
  readonly chart: CrossoverChart;
  readonly mix: readonly MixRow[];
}

/** Scenarios and weeks on which other demands, prices and bundles are worked out where nobody says otherwise. */
export const SIDE = { scenarios: 2, weeks: 26 } as const;
/** All bundles of four candidates. */
export const MOST_BUNDLES = 15;

export interface StudyTools extends CaseTools {
  readonly engine: LpEngine;
  /** what weeks planned in full showed, by which every cost is corrected; null: not looked at, costs as the program has them */
  readonly gap: SampleGap | null;
  /** money as people read it, for sentences */
  readonly money: (amount: number) => string;
  /**
   * scenarios and weeks on which other demands, other feedstock prices and bundles are worked out; null: not at all, for a
   * first answer
   */
  readonly side: { readonly scenarios: number; readonly weeks: number } | null;
  /** most bundles to work out; 15 are all of four candidates */
  readonly mostBundles: number;
}

/**
 * Answers a case from its evaluation: figures, break-evens, tornado and sentence of each candidate, the best bundle, the
 * crossover chart. Of an evaluation stopped before one scenario was done everywhere no candidate is answered.
 * Example: four candidates with `side` 2 scenarios of 26 weeks ask for some 5000 more weeks.
 */
export async function studyCase(
  shop: Shop,
  purchaseCase: PurchaseCase,
  evaluation: CaseEvaluation,
  tools: StudyTools,
): Promise<CaseStudy> {
  const correct: Correct = (results) => (tools.gap ? correctedResults(results, tools.gap) : results);
  const ways = waysOfDemand(shop, purchaseCase);
  const demand = demandOf(shop, purchaseCase, assumedPrices(shop, purchaseCase, ways));
  const side =
    tools.side && new SideQuestions({ shop, purchaseCase, demand, tools, extent: tools.side, correct });
  const desk = { shop, purchaseCase, evaluation, tools, side, correct };
  const candidates = evaluation.without.length === 0 ? [] : await candidateStudies(desk);
  const bundle = side && candidates.length > 0 ? await bundleOf(desk, candidates, side) : null;
  const together = bundle && (await togetherAnswer(desk, candidates, bundle));
  return {
    status: evaluation.status,
    without: operatingFigures(shop, correct(evaluation.without)),
    candidates,
    bundle,
    together,
    sentence: bundle && bundleSentence(desk, candidates, bundle, together),
    chart: crossoverChart(ways),
    mix: demandMix(shop, demand),
  };
}

type Correct = (results: readonly ScenarioResult[]) => readonly ScenarioResult[];

interface StudyDesk {
  readonly shop: Shop;
  readonly purchaseCase: PurchaseCase;
  readonly evaluation: CaseEvaluation;
  readonly tools: StudyTools;
  readonly side: SideQuestions | null;
  readonly correct: Correct;
}

async function candidateStudies(desk: StudyDesk): Promise<CandidateStudy[]> {
  const { shop, purchaseCase, side } = desk;
  const { candidates } = purchaseCase;
  const points =
    (await side?.demandPoints(
      candidates.map((candidate) => [candidate]),
      lifeOf(candidates),
    )) ?? [];
  const idle = new Set(idleCandidates(shop, purchaseCase).map(({ candidateId }) => candidateId));
  const studies: CandidateStudy[] = [];
  for (const [place, candidate] of candidates.entries())
    studies.push(await candidateStudy(desk, candidate, points[place] ?? [], idle.has(candidate.id)));
  return studies;
}

async function candidateStudy(
  { shop, purchaseCase, evaluation, tools, side, correct }: StudyDesk,
  candidate: Candidate,
  points: readonly DemandPoint[],
  makesNothing: boolean,
): Promise<CandidateStudy> {
  const { growthPctPerYear } = purchaseCase;
  const raw = evaluation.candidates.find(({ candidateId }) => candidateId === candidate.id)?.withIt ?? [];
  const withIt = correct(raw);
  const without = correct(evaluation.without);
  const answer = answerCase(shop, purchaseCase, [candidate], { without, withIt, points });
  const value = answer.answer.netPresentValue;
  const asProgrammed = { without: evaluation.without, withIt: raw, points };
  const uncorrectedValue = answerCase(shop, purchaseCase, [candidate], asProgrammed).answer.netPresentValue;
  const demand = breakEvenDemand(answer.question, points, growthPctPerYear);
  const recommended = { names: [candidate.name], answer, demand, makesNothing };
  return {
    candidate,
    answer,
    figures: operatingFigures(shop, withIt),
    demand,
    pelletPrice: (await side?.breakEvenPrice([candidate], value, "pellet")) ?? null,
    filamentPrice: (await side?.breakEvenPrice([candidate], value, "filament")) ?? null,
    tornado: tornadoOf(answer.question, points, growthPctPerYear),
    makesNothing,
    uncorrectedValue,
    sentence:
      recommendation(recommended, purchaseCase, tools.money) + flipWords(value, uncorrectedValue, tools),
  };
}

/** Said where correcting by weeks planned in full turns a loss into a gain or the other way. */
function flipWords(value: number, uncorrectedValue: number, { money }: StudyTools): string {
  if (value > 0 === uncorrectedValue > 0) return "";
  return ` This hangs on the correction by weeks planned in full: without it the value would be ${money(uncorrectedValue)}. Have more weeks planned before you decide.`;
}

/** Single candidates are worth what all scenarios say; what being together changes comes from the side questions. */
async function bundleOf(
  { purchaseCase, tools }: StudyDesk,
  studies: readonly CandidateStudy[],
  side: SideQuestions,
): Promise<BestBundle> {
  const evaluate = async (ids: readonly string[]): Promise<number> => {
    const own = membersOf(studies, ids);
    const alone = own.reduce((sum, { answer }) => sum + answer.answer.equivalentAnnualValue, 0);
    if (own.length < 2) return alone;
    return alone + ((await side.together(own.map(({ candidate }) => candidate))) ?? 0);
  };
  const { engine, mostBundles, side: extent } = tools;
  const candidates = studies.map(({ candidate }) => candidate);
  const best = await bestBundle(candidates, purchaseCase.budget, {
    engine,
    evaluate,
    mostEvaluations: mostBundles,
  });
  const scope = `What being together changes was worked out on ${extent?.scenarios} ${extent?.scenarios === 1 ? "scenario" : "scenarios"} of ${extent?.weeks} weeks.`;
  return { ...best, sentence: `${best.sentence} ${scope}` };
}

function membersOf(studies: readonly CandidateStudy[], ids: readonly string[]): CandidateStudy[] {
  return studies.filter(({ candidate }) => ids.includes(candidate.id));
}

/** The best bundle planned as one on all scenarios; null: it is empty, or this was stopped. */
async function togetherAnswer(
  { shop, purchaseCase, evaluation, side, correct }: StudyDesk,
  studies: readonly CandidateStudy[],
  { best }: BestBundle,
): Promise<CaseAnswer | null> {
  const members = membersOf(studies, best.candidateIds);
  if (members.length < 2) return members[0]?.answer ?? null;
  const own = members.map(({ candidate }) => candidate);
  const [points = []] = (await side?.demandPoints([own], lifeOf(own))) ?? [];
  const [without = [], withIt = []] = await evaluation.desk.results([[], best.candidateIds]);
  if (without.length === 0) return null;
  const results = { without: correct(without), withIt: correct(withIt), points };
  return answerCase(shop, purchaseCase, own, results);
}

function bundleSentence(
  { purchaseCase, tools }: StudyDesk,
  studies: readonly CandidateStudy[],
  { best }: BestBundle,
  together: CaseAnswer | null,
): string {
  const members = membersOf(studies, best.candidateIds);
  const [first, ...others] = members;
  if (first === undefined) return "Take none of them: no candidate within the budget is worth what it costs.";
  if (others.length === 0) return first.sentence;
  const names = members.map(({ candidate }) => candidate.name);
  if (together === null) return `${listed(names)} together were not planned to the end.`;
  return recommendation(
    { names, answer: together, demand: null, makesNothing: false },
    purchaseCase,
    tools.money,
  );
}
