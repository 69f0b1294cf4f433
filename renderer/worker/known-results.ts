import type { CaseTools, ResultCache } from "../../core/purchase/case-desk.ts";
import type { ScenarioResult } from "../../core/purchase/scenario-job.ts";

/** So much text and so many results are remembered between runs: some ten cases of small works, one of a large one. */
const MOST_CHARS = 40_000_000;
const MOST_RESULTS = 1500;

/** What earlier runs of this worker found, so that a case with one new candidate asks for the jobs of that one alone. */
export class KnownResults {
  private readonly numbers = new Map<string, string>();
  private readonly results = new Map<string, ScenarioResult>();
  private chars = 0;
  private given = 0;

  /** A name for a text that no other text ever gets: its number in the order in which texts came. */
  readonly hash: CaseTools["hash"] = (text) => {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    const name = String(++this.given);
    this.numbers.set(text, name);
    this.chars += text.length;
    return name;
  };

  readonly cache: ResultCache = {
    get: (key) => this.results.get(key),
    set: (key, result) => this.results.set(key, result),
  };

  /** Between runs: forgets everything where it has become too much. Numbers are not given twice. */
  trim(): void {
    if (this.chars <= MOST_CHARS && this.results.size <= MOST_RESULTS) return;
    this.numbers.clear();
    this.results.clear();
    this.chars = 0;
  }
}
