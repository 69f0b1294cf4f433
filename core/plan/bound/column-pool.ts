import { MIN_PER_H } from "../../units/conversions.ts";
import type { ClassFrame } from "./class-frame.ts";
import { copyHull } from "./copy-hull.ts";
import { earliestByCopies } from "./earliest-by-copies.ts";
import type { GapPattern } from "./gap-patterns.ts";
import type { LineSlot } from "./line-slots.ts";
import type { MixedKey } from "./mixed-keys.ts";
import type { PlanOption, PlanProblem } from "../plan-problem.ts";
import { countOf, type WholeBuilds } from "./whole-builds.ts";

/**
 * All that a column of the bound can be made of, in parallel arrays: one entry for each option, gap pattern and vertex copies.
 * An entry and one of its option's slots make a column, which is only written out when it is worth it. Pooled entries are
 * single copies of an option that may share a platform.
 */
export interface ColumnPool {
  readonly option: Int32Array;
  /** pattern of the option's class; -1 for pooled entries */
  readonly pattern: Int32Array;
  readonly copies: Float64Array;
  readonly cost: Float64Array;
  /** staffed hours of its machine that the build takes at least; for pooled entries the copy's share */
  readonly attendedH: Float64Array;
  /** hours in which the build occupies its machine at least */
  readonly occupiedH: Float64Array;
  /** what the build counts in the conditions that builds of its line are whole */
  readonly count0: Float64Array;
  readonly count1: Float64Array;
  readonly count2: Float64Array;
  /** no build that the entry stands for is unloaded before, even on an empty machine */
  readonly earliestMin: Float64Array;
}

/** A chord may lie this share of the cost, or one minute, too high before another vertex is worth it. */
const COST_TOLERANCE = 0.0005;
const TIME_TOLERANCE_MIN = 1;

/** What the pool is made of. */
interface PoolInput {
  readonly problem: PlanProblem;
  readonly frames: readonly ClassFrame[];
  /** by option */
  readonly slots: readonly (readonly LineSlot[])[];
  readonly keys: readonly MixedKey[];
  /** by line */
  readonly wholeBuilds: readonly (readonly WholeBuilds[])[];
}

/** Options between two questions for the time. */
const OPTIONS_A_LOOK = 64;

/**
 * Makes the pool. Times a build cannot keep (no window or segment is long enough) make no entry. Null where `isTimeLeft` says
 * no before it is made.
 */
export function columnPool(input: PoolInput, isTimeLeft: () => boolean): ColumnPool | null {
  const { problem, frames, slots, keys, wholeBuilds } = input;
  const writer = new PoolWriter();
  for (const option of problem.options) {
    if (option.index % OPTIONS_A_LOOK === 0 && !isTimeLeft()) return null;
    if (option.mixKey >= 0 || problem.lines[option.lineIndex]!.quantity === 0) continue;
    const family = {
      option,
      frame: frames[option.classIndex]!,
      slots: slots[option.index]!,
      whole: wholeBuilds[option.lineIndex]!,
      earliest: earliestByCopies(problem, option),
    };
    family.frame.patterns.forEach((_, pattern) => {
      addBuilds(writer, { ...family, pattern });
    });
  }
  for (const key of keys) addCopies(writer, problem, key);
  return writer.pool();
}

class PoolWriter {
  readonly columns: Record<keyof ColumnPool, number[]> = {
    option: [],
    pattern: [],
    copies: [],
    cost: [],
    attendedH: [],
    occupiedH: [],
    count0: [],
    count1: [],
    count2: [],
    earliestMin: [],
  };

  add(entry: Record<keyof ColumnPool, number>): void {
    for (const name of POOL_NAMES) this.columns[name].push(entry[name]);
  }

  pool(): ColumnPool {
    const { option, pattern, ...others } = this.columns;
    return {
      option: Int32Array.from(option),
      pattern: Int32Array.from(pattern),
      copies: Float64Array.from(others.copies),
      cost: Float64Array.from(others.cost),
      attendedH: Float64Array.from(others.attendedH),
      occupiedH: Float64Array.from(others.occupiedH),
      count0: Float64Array.from(others.count0),
      count1: Float64Array.from(others.count1),
      count2: Float64Array.from(others.count2),
      earliestMin: Float64Array.from(others.earliestMin),
    };
  }
}

/** The columns `count...`, by position of the condition; a line has no more conditions. */
export const COUNT_NAMES = ["count0", "count1", "count2"] as const;

const POOL_NAMES: readonly (keyof ColumnPool)[] = [
  "option",
  "pattern",
  "copies",
  "cost",
  "attendedH",
  "occupiedH",
  ...COUNT_NAMES,
  "earliestMin",
];

interface BuildFamily {
  readonly option: PlanOption;
  readonly frame: ClassFrame;
  readonly slots: readonly LineSlot[];
  readonly whole: readonly WholeBuilds[];
  readonly earliest: (copies: number) => number;
  readonly pattern: number;
}

/** Entries of one option and gap pattern: a build of k copies is a mixture of vertex builds, never a dearer one. */
function addBuilds(
  writer: PoolWriter,
  { option, frame, slots, whole, earliest, pattern }: BuildFamily,
): void {
  const gaps = frame.patterns[pattern]!;
  const run = option.runMinByCopies;
  const fewest = firstCopies(option, (copies) => run[copies]! > gaps.entryMin);
  const most = firstCopies(option, (copies) => !fitsSpan(option, frame, gaps, copies)) - 1;
  if (fewest > most) return;
  const onTime = firstCopies(option, (copies) => earliest(copies) > (slots[0]?.limitMin ?? 0)) - 1;
  const filled = firstCopies(option, (copies) => run[copies]! > gaps.gapMin + gaps.betweenMin);
  const hull = copyHull(
    fewest,
    most,
    [onTime, onTime + 1, filled - 1, filled, ...whole.flatMap((each) => [each.rest, each.most])],
    [
      {
        of: (copies) => option.costByCopies[copies]!,
        tolerance: COST_TOLERANCE * option.costByCopies[fewest]!,
      },
      { of: (copies) => attendedMin(frame, gaps, run[copies]!), tolerance: TIME_TOLERANCE_MIN },
      { of: (copies) => frame.prepMin + run[copies]!, tolerance: TIME_TOLERANCE_MIN },
      // Counts are wanted large, so their chords must not lie too low; they are worth no vertices of their own.
      ...whole.map((each) => ({ of: (copies: number) => -countOf(each, copies), tolerance: Infinity })),
    ],
  );
  hull.copies.forEach((copies, at) => {
    // The vertex also stands for builds down to one copy above the vertex before it.
    const least = at === 0 ? copies : hull.copies[at - 1]! + 1;
    writer.add({
      option: option.index,
      pattern,
      copies,
      cost: hull.values[0]![at]!,
      attendedH: hull.values[1]![at]! / MIN_PER_H,
      occupiedH: hull.values[2]![at]! / MIN_PER_H,
      earliestMin: earliest(least),
      ...counts(hull.values.slice(3), at),
    });
  });
}

/** What a vertex build counts in each condition of its line. */
function counts(tables: readonly Float64Array[], at: number): Record<(typeof COUNT_NAMES)[number], number> {
  const count = (table: number): number => -(tables[table]?.[at] ?? 0);
  return { count0: count(0), count1: count(1), count2: count(2) };
}

/** Set-up, unload, and the run less what gaps take off it, but at least the windows between them. */
function attendedMin(frame: ClassFrame, gaps: GapPattern, runMin: number): number {
  return frame.prepMin + Math.max(runMin - gaps.gapMin, gaps.betweenMin);
}

function fitsSpan(option: PlanOption, frame: ClassFrame, gaps: GapPattern, copies: number): boolean {
  const runMin = option.runMinByCopies[copies]!;
  // The unload may follow in a later window, so it needs no room here; set-ups are never shorter than the class's.
  return runMin <= frame.longestRunMin && frame.setUpMin + runMin <= gaps.spanMin;
}

/** Smallest number of copies with a property that holds from some number on; one more than the most where it never does. */
function firstCopies(option: PlanOption, holds: (copies: number) => boolean): number {
  let low = option.copiesMin;
  let high = option.copiesMax + 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** One entry for each option of a key: a single copy in a build that it may share. */
function addCopies(writer: PoolWriter, problem: PlanProblem, key: MixedKey): void {
  key.optionIndices.forEach((optionIndex, at) => {
    const option = problem.options[optionIndex]!;
    if (problem.lines[option.lineIndex]!.quantity === 0) return;
    writer.add({
      option: optionIndex,
      pattern: -1,
      copies: 1,
      cost: key.perCopyCost[at]!,
      attendedH: key.perCopyH[at]!,
      occupiedH: key.perCopyH[at]!,
      ...counts([], 0),
      earliestMin: earliestByCopies(problem, option)(option.copiesMin),
    });
  });
}
