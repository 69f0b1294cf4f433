import type { BuildAmounts, BuildCosting } from "../cost/build-cost.ts";
import type { MachineClass, PlanOption } from "../plan/plan-problem.ts";
import type { GapPattern } from "../plan/bound/gap-patterns.ts";
import type { Machine } from "../shop/machine.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import type { ClassWeek } from "./fleet-capacity.ts";
import { type LineSizes, meanBuildCopies } from "./line-sizes.ts";

/** One kind of build of one part on one class of machines: the columns of the weekly program are made of these. */
export interface FleetWay {
  readonly partIndex: number;
  readonly option: PlanOption;
  /** position in the class's gap patterns */
  readonly pattern: number;
  /** mean copies in one build, a fraction where lines do not fill their builds */
  readonly copies: number;
  readonly amounts: BuildAmounts;
  /** staffed hours of its machine that it takes: set-up, unload, and the run less what gaps take off it */
  readonly attendedH: number;
  /** hours in which it occupies its machine */
  readonly occupiedH: number;
}

/** What the ways of one option are made from. */
export interface WayInput {
  readonly partIndex: number;
  readonly sizes: LineSizes;
  readonly option: PlanOption;
  readonly machineClass: MachineClass;
  readonly week: ClassWeek;
  readonly machine: Machine;
  readonly costing: BuildCosting;
}

/**
 * The ways of one option: for every gap pattern a build of mean size, and where that runs on into staffed time also the
 * largest that is done when people are back. Lines that may share a platform count as sharing a full one. Leaves out what
 * neighbours in size would cost: builds differ, the mean stands for them.
 */
export function fleetWays(input: WayInput): FleetWay[] {
  const { option, sizes, week } = input;
  const mean =
    option.mixKey >= 0 ? option.copiesMax : meanBuildCopies(sizes, option.copiesMin, option.copiesMax);
  if (mean < option.copiesMin) return [];
  return week.patterns.flatMap((gaps, pattern) => {
    const most = mostCopies(input, gaps, mean);
    if (most < option.copiesMin || runMinOf(option, most) <= gaps.entryMin) return [];
    const filled = filledCopies(option, gaps, most);
    return [most, ...(filled === null ? [] : [filled])].map((copies) => wayOf(input, pattern, gaps, copies));
  });
}

/** The mean build, or the largest whole one below it that fits the stretches the pattern spans; 0 where none does. */
function mostCopies({ option, machineClass }: WayInput, gaps: GapPattern, mean: number): number {
  const fits = (copies: number): boolean =>
    machineClass.setUpMin + runMinOf(option, copies) <= gaps.spanMin ||
    gaps.counts.every((count) => count === 0);
  if (fits(mean)) return mean;
  return largestWhole(option, mean, fits);
}

/** The largest whole build that ends inside the pattern's last gap, where the one of `most` copies does not. */
function filledCopies(option: PlanOption, gaps: GapPattern, most: number): number | null {
  const untilMin = gaps.gapMin + gaps.betweenMin;
  if (untilMin === 0 || runMinOf(option, most) <= untilMin) return null;
  const filled = largestWhole(option, most, (copies) => runMinOf(option, copies) <= untilMin);
  return filled >= option.copiesMin && runMinOf(option, filled) > gaps.entryMin ? filled : null;
}

/** Run times grow with the copies, so halving finds it. */
function largestWhole(option: PlanOption, below: number, holds: (copies: number) => boolean): number {
  let low = option.copiesMin - 1;
  let high = Math.floor(below) + 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low < option.copiesMin ? 0 : low;
}

function wayOf(input: WayInput, pattern: number, gaps: GapPattern, copies: number): FleetWay {
  const { partIndex, option, week } = input;
  const runMin = runMinOf(option, copies);
  return {
    partIndex,
    option,
    pattern,
    copies,
    amounts: amountsOf(input, copies),
    attendedH: week.prepH + Math.max(runMin - gaps.gapMin, gaps.betweenMin) / MIN_PER_H,
    occupiedH: week.prepH + runMin / MIN_PER_H,
  };
}

/** Run time of a mean build: between those of its whole neighbours. */
function runMinOf(option: PlanOption, copies: number): number {
  const low = Math.floor(copies);
  const lowMin = option.runMinByCopies[low]!;
  return low === copies ? lowMin : lowMin + (copies - low) * (option.runMinByCopies[low + 1]! - lowMin);
}

function amountsOf({ option, machine, costing }: WayInput, copies: number): BuildAmounts {
  const low = Math.floor(copies);
  const at = (whole: number): BuildAmounts =>
    costing.amounts([{ route: option.route, copies: whole }], machine, option.runMinByCopies[whole]!);
  if (low === copies) return at(low);
  const [from, to] = [at(low), at(low + 1)];
  const between = (kind: keyof BuildAmounts): number => from[kind] + (copies - low) * (to[kind] - from[kind]);
  return {
    feedstock: between("feedstock"),
    machine: between("machine"),
    labour: between("labour"),
    finishing: between("finishing"),
    expectedFailure: between("expectedFailure"),
    overhead: between("overhead"),
    total: between("total"),
  };
}
