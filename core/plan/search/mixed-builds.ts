import { runMin, slowestLayerS } from "../../estimate/print-time.ts";
import type { PlanOption, PlanProblem } from "../plan-problem.ts";
import { packPlatform } from "../packing/platform-packing.ts";
import { mayFitShelves } from "../packing/platform-shelf.ts";

/** What a build with several items takes; null in the cache where it cannot be. */
export interface MixedBuild {
  readonly runMin: number;
  readonly cost: number;
}

/** Copies of one option on a shared platform. */
export interface MixedItem {
  readonly optionIndex: number;
  readonly copies: number;
}

/** Builds that share a platform: whether they can be, how long they run and what they cost, remembered by their items. */
export class MixedBuilds {
  private readonly problem: PlanProblem;
  private known = new Map<string, MixedBuild | null>();

  constructor(problem: PlanProblem) {
    this.problem = problem;
  }

  /**
   * The build of these items (at least two, of different lines, equal mixKey), or null: the footprints do not fit the
   * platform together, or a layer would take longer than one of the parts allows.
   */
  of(items: readonly MixedItem[]): MixedBuild | null {
    const sorted = items.toSorted((a, b) => a.optionIndex - b.optionIndex);
    const key = sorted.map((item) => `${item.optionIndex}x${item.copies}`).join(" ");
    const known = this.known.get(key);
    if (known !== undefined) return known;
    if (this.known.size >= MOST_KNOWN) this.known = new Map();
    const build = this.make(sorted);
    this.known.set(key, build);
    return build;
  }

  private make(items: readonly MixedItem[]): MixedBuild | null {
    const parts = items.map(({ optionIndex, copies }) => {
      const option = this.problem.options[optionIndex];
      if (!option) throw new RangeError(`no such option: ${optionIndex}`);
      return { option, copies };
    });
    if (!this.layersFit(parts) || !this.footprintsFit(parts)) return null;
    const routes = parts.map(({ option, copies }) => ({ route: option.route, copies }));
    return { runMin: runMin(routes), cost: this.problem.mixedCost(items) };
  }

  private layersFit(parts: readonly OptionCopies[]): boolean {
    let slowestS = 0;
    let allowedS = Infinity;
    for (const { option, copies } of parts) {
      slowestS += slowestLayerS({ route: option.route, copies });
      allowedS = Math.min(allowedS, option.route.longestLayerS);
    }
    return slowestS <= allowedS;
  }

  private footprintsFit(parts: readonly OptionCopies[]): boolean {
    const facts = this.problem.classes[parts[0]?.option.classIndex ?? -1];
    if (!facts) throw new RangeError("a build with no items has no platform");
    const pieces = parts.flatMap(({ option, copies }) =>
      Array.from({ length: copies }, () => option.route.footprintMm),
    );
    if (pieces.length > MOST_PIECES) return false;
    const { platformMm, partGapMm } = facts;
    return (
      mayFitShelves(pieces, platformMm, partGapMm) && packPlatform(pieces, platformMm, partGapMm) !== null
    );
  }
}

interface OptionCopies {
  readonly option: PlanOption;
  readonly copies: number;
}

const MOST_KNOWN = 200_000;
/** Beyond so many pieces finding places takes too long for the search. */
const MOST_PIECES = 60;
