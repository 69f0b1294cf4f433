import { depositionMin, slowestLayerS } from "../../estimate/print-time.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import type { ClassFrame } from "./class-frame.ts";
import type { LineSlot } from "./line-slots.ts";
import { mixedCostFloor } from "./mixed-cost-floor.ts";
import type { PlanOption, PlanProblem } from "../plan-problem.ts";
import { longestSharedRunMin, platformShare } from "../packing/platform-share.ts";

/**
 * Options that may share platforms, pooled: the bound counts builds of the whole key and copies by option, not which copies
 * lie together. What limits the copies of one build is kept as shares of a build that one copy takes at least.
 */
export interface MixedKey {
  readonly classIndex: number;
  readonly stateIndex: number;
  readonly optionIndices: readonly number[];
  /** buckets in which its builds are counted, ascending; the last is the one without capacity */
  readonly buckets: readonly number[];
  /** position in `buckets` of each bucket of the calendar: its own or the next one counted */
  readonly positionOf: Int32Array;
  readonly perBuildCost: number;
  /** warm-up and cool-down, h */
  readonly fixedH: number;
  /** no build of the key runs longer, min */
  readonly longestRunMin: number;
  /** by position in `optionIndices` */
  readonly perCopyCost: Float64Array;
  readonly perCopyH: Float64Array;
  /** [limit][position]: share of the platform's area, of the longest layer time, of the longest run; useless ones left out */
  readonly shares: readonly Float64Array[];
}

/** All keys of a problem. `slotsOf` tells in which stretches of time an option's copies may complete. */
export function mixedKeys(
  problem: PlanProblem,
  frames: readonly ClassFrame[],
  slotsOf: (option: PlanOption) => readonly LineSlot[],
): MixedKey[] {
  const groups = new Map<number, PlanOption[]>();
  for (const option of problem.options) {
    if (option.mixKey < 0) continue;
    const group = groups.get(option.mixKey);
    if (group) group.push(option);
    else groups.set(option.mixKey, [option]);
  }
  return [...groups.values()].map((options) => mixedKey(problem, frames, options, slotsOf));
}

function mixedKey(
  problem: PlanProblem,
  frames: readonly ClassFrame[],
  options: readonly PlanOption[],
  slotsOf: (option: PlanOption) => readonly LineSlot[],
): MixedKey {
  const first = options[0]!;
  const frame = frames[first.classIndex]!;
  const machineClass = problem.classes[first.classIndex]!;
  const free = frame.points.length;
  const used = new Set(options.flatMap((option) => slotsOf(option).map((slot) => slot.bucket)));
  const buckets = [...thinned([...used].filter((bucket) => bucket < free)), free];
  const floor = mixedCostFloor(problem, options);
  const fixedMin = Math.min(...options.map((option) => option.route.fixedMin));
  const perCopyMin = Float64Array.from(options, leastMinPerCopy);
  return {
    classIndex: first.classIndex,
    stateIndex: first.stateIndex,
    optionIndices: options.map((option) => option.index),
    buckets,
    positionOf: Int32Array.from({ length: free + 1 }, (_, bucket) =>
      buckets.findIndex((each) => each >= bucket),
    ),
    perBuildCost: floor.perBuild,
    fixedH: fixedMin / MIN_PER_H,
    longestRunMin: Math.max(...options.map((option) => longestSharedRunMin(machineClass, option))),
    perCopyCost: floor.perCopy,
    perCopyH: perCopyMin.map((minutes) => minutes / MIN_PER_H),
    shares: usefulShares([
      Float64Array.from(options, (option) => platformShare(machineClass, option)),
      Float64Array.from(options, layerShare),
      perCopyMin.map((minutes) => minutes / Math.max(1, frame.longestRunMin - fixedMin)),
    ]),
  };
}

/** A key's buckets cost rows and columns each. What lies between those kept is counted later, which only adds freedom. */
const MOST_BUCKETS = 12;

function thinned(buckets: readonly number[]): number[] {
  const sorted = buckets.toSorted((a, b) => a - b);
  const step = Math.ceil(sorted.length / MOST_BUCKETS);
  return sorted.filter((_, at) => (sorted.length - 1 - at) % step === 0);
}

/** Deposition of one copy at its quickest, without rounding, min: more copies share what layers wait and change. */
function leastMinPerCopy({ route, copiesMax }: PlanOption): number {
  return depositionMin({ route, copies: copiesMax }) / copiesMax;
}

/** Layers of all items in a build add up to at most the longest layer time of each. */
function layerShare({ route, copiesMax }: PlanOption): number {
  if (!Number.isFinite(route.longestLayerS)) return 0;
  return slowestLayerS({ route, copies: copiesMax }) / copiesMax / route.longestLayerS;
}

/** Leaves out a limit that another one implies for every option. */
function usefulShares(shares: readonly Float64Array[]): Float64Array[] {
  const kept = [...shares];
  for (const share of shares) {
    const isImplied = kept.some(
      (other) => other !== share && other.every((value, at) => value >= share[at]!),
    );
    if (isImplied) kept.splice(kept.indexOf(share), 1);
  }
  return kept;
}
