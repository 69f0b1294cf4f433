import type { LpEngine } from "../plan/linear-program.ts";
import { outlayOf } from "../shop/check-case-money.ts";
import { overlappingCandidates } from "../shop/check-case-changes.ts";
import type { Candidate } from "../shop/purchase-case.ts";
import { type BundleGuess, guessBundle } from "./bundle-program.ts";

/** What bundles are judged by. */
interface BundleTools {
  readonly engine: LpEngine;
  /** equivalent annual value of candidates taken together, worked out on the scenarios; never asked for an empty bundle */
  readonly evaluate: (candidateIds: readonly string[]) => Promise<number>;
  /** most bundles that may be worked out */
  readonly mostEvaluations: number;
}

/** A bundle that was worked out. */
export interface WorkedBundle {
  readonly candidateIds: readonly string[];
  /** equivalent annual value of all together, currency per year */
  readonly value: number;
  readonly outlay: number;
}

export interface BestBundle {
  /** the best that was worked out; empty: nothing is worth buying */
  readonly best: WorkedBundle;
  /** exact: every bundle within the budget was worked out; heuristic: some were left out by a guess from pairs */
  readonly proof: "exact" | "heuristic";
  /** in the order in which they were worked out */
  readonly worked: readonly WorkedBundle[];
  /** how the best was found, in one sentence */
  readonly sentence: string;
}

/**
 * The bundle of candidates worth most each year within a budget. Equivalent annual values compare unequal lives, and each is
 * worked out for the whole bundle at once, since two machines that do the same work are not worth their sum. Where the bundles
 * within the budget are few enough, all are worked out: exact on these scenarios. Otherwise single ones and pairs are, an integer
 * program guesses the best bundle from them, the guess is worked out, and so on until no guess promises more or the evaluations
 * are used up: heuristic. Example: two machines worth 30 and 20 each year alone and 35 together, at 100 000 each and a budget of
 * 150 000: the first.
 */
export async function bestBundle(
  candidates: readonly Candidate[],
  budget: number | null,
  tools: BundleTools,
): Promise<BestBundle> {
  const desk = new BundleDesk(candidates, budget, tools);
  const all = desk.bundlesUpTo(tools.mostEvaluations);
  if (all !== null) {
    for (const members of all) await desk.work(members);
    return desk.answer("exact");
  }
  await desk.workSmallOnes();
  await desk.workGuesses();
  return desk.answer("heuristic");
}

class BundleDesk {
  private readonly worked = new Map<
    string,
    { readonly members: readonly number[]; readonly value: number }
  >();
  private readonly outlays: readonly number[];
  private readonly excluded: readonly (readonly [number, number])[];
  private readonly candidates: readonly Candidate[];
  private readonly budget: number | null;
  private readonly tools: BundleTools;

  constructor(candidates: readonly Candidate[], budget: number | null, tools: BundleTools) {
    this.candidates = candidates;
    this.budget = budget;
    this.tools = tools;
    this.outlays = candidates.map(outlayOf);
    const place = new Map(candidates.map(({ id }, index) => [id, index]));
    this.excluded = overlappingCandidates(candidates).map(([one, other]) => [
      place.get(one) ?? 0,
      place.get(other) ?? 0,
    ]);
  }

  /** Every bundle that is allowed, or null where there are more than so many. */
  bundlesUpTo(most: number): number[][] | null {
    const found: number[][] = [];
    let partial: number[][] = [[]];
    for (const index of this.candidates.keys()) {
      const grown = partial.map((members) => [...members, index]).filter((own) => this.isCompatible(own));
      partial = [...partial, ...grown];
      // Sales lower an outlay, so a bundle over the budget may come back into it: the count before that is only a guard.
      if (partial.length > MOST_COMBINATIONS) return null;
    }
    found.push(...partial.filter((members) => members.length > 0 && this.isAffordable(members)));
    return found.length > most ? null : found;
  }

  async work(members: readonly number[]): Promise<void> {
    const key = members.join();
    if (this.worked.has(key) || this.worked.size >= this.tools.mostEvaluations) return;
    this.worked.set(key, { members, value: await this.tools.evaluate(this.idsOf(members)) });
  }

  /** Single candidates, then pairs, those with the most promising members first. */
  async workSmallOnes(): Promise<void> {
    const indices = [...this.candidates.keys()];
    for (const index of indices) await this.work([index]);
    const pairs = indices
      .flatMap((a) => indices.slice(a + 1).map((b) => [a, b]))
      .filter((pair) => this.isCompatible(pair) && this.isAffordable(pair))
      .toSorted((one, other) => this.sumOfSingles(other) - this.sumOfSingles(one));
    const reserved = Math.ceil(this.tools.mostEvaluations / RESERVED_SHARE);
    for (const pair of pairs) {
      if (this.worked.size < this.tools.mostEvaluations - reserved) await this.work(pair);
    }
  }

  async workGuesses(): Promise<void> {
    while (this.worked.size < this.tools.mostEvaluations) {
      const guess = guessBundle(this.guess(), this.tools.engine);
      if (guess === null || guess.members.length === 0 || guess.value <= this.best().value) return;
      await this.work(guess.members);
    }
  }

  answer(proof: BestBundle["proof"]): BestBundle {
    const worked = [...this.worked.values()].map((own) => this.described(own.members, own.value));
    const best = this.best();
    const count = worked.length;
    const sentence =
      proof === "exact"
        ? `All ${count} bundles within the budget were worked out, each as a whole: none is worth more.`
        : `There are too many bundles to work out all: single candidates, pairs and the bundles that an integer program guessed from them were, ${count} in all, so a better one may exist.`;
    return { best: this.described(best.members, best.value), proof, worked, sentence };
  }

  /** The best so far; buying nothing is worth 0. Single ones that cannot be paid alone do not count. */
  private best(): { readonly members: readonly number[]; readonly value: number } {
    let best: { readonly members: readonly number[]; readonly value: number } = { members: [], value: 0 };
    for (const own of this.worked.values()) {
      if (own.value > best.value && this.isAffordable(own.members)) best = own;
    }
    return best;
  }

  private guess(): BundleGuess {
    const values = this.outlays.map((_, index) => this.valueOf([index]) ?? 0);
    const pairs = [...this.worked.values()].flatMap(({ members, value }) => {
      const [a, b] = members;
      if (members.length !== 2 || a === undefined || b === undefined) return [];
      return [{ a, b, more: value - this.sumOfSingles(members) }];
    });
    const known = [...this.worked.values()].map(({ members }) => members);
    return { outlays: this.outlays, values, pairs, excluded: this.excluded, known, budget: this.budget };
  }

  private valueOf(members: readonly number[]): number | undefined {
    return this.worked.get(members.join())?.value;
  }

  private sumOfSingles(members: readonly number[]): number {
    return members.reduce((sum, index) => sum + (this.valueOf([index]) ?? 0), 0);
  }

  private isCompatible(members: readonly number[]): boolean {
    return !this.excluded.some(([a, b]) => members.includes(a) && members.includes(b));
  }

  private isAffordable(members: readonly number[]): boolean {
    return this.budget === null || this.outlayFor(members) <= this.budget;
  }

  private outlayFor(members: readonly number[]): number {
    return members.reduce((sum, index) => sum + (this.outlays[index] ?? 0), 0);
  }

  private idsOf(members: readonly number[]): string[] {
    return members.flatMap((index) => this.candidates[index]?.id ?? []);
  }

  private described(members: readonly number[], value: number): WorkedBundle {
    return { candidateIds: this.idsOf(members), value, outlay: this.outlayFor(members) };
  }
}

const MOST_COMBINATIONS = 65_536;
/** One evaluation in so many is kept for the guesses. */
const RESERVED_SHARE = 3;
