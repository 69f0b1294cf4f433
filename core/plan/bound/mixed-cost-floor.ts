import { depositionMin, runMin } from "../../estimate/print-time.ts";
import type { PlanOption, PlanProblem } from "../plan-problem.ts";

/**
 * Lowest cost of builds that several lines may share, as so much a build and so much a copy:
 * mixed cost >= perBuild + sum of copies x perCopy, for every mixture.
 *
 * Why it holds: the cost of a build is what its copies take each (feedstock, finishing) plus a function g of its run time
 * that grows ever faster (machine and labour grow evenly, expected failures as an exponential); run time is a fixed part
 * plus each item's own. So an item adds to any mixture at least what it adds to the empty build, g(fixed), and that is
 * perBuild. The empty build is not for sale: g(fixed) is extrapolated from builds of items without copies, which still take
 * time for layer changes. For a function of which all derivatives are positive a line through two points lies below it
 * left of them, and a parabola through three above it: one gives perBuild, the other what to take off an item's own cost.
 * Under-counts: failures that grow with the platform, and the rounding to whole minutes.
 */
interface MixedCostFloor {
  readonly perBuild: number;
  /** by position in the options given */
  readonly perCopy: Float64Array;
}

export function mixedCostFloor(problem: PlanProblem, options: readonly PlanOption[]): MixedCostFloor {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  for (const option of options) {
    const empty = emptyBuild(problem, option);
    low = Math.max(low, empty.low);
    high = Math.min(high, empty.high);
  }
  return { perBuild: low, perCopy: Float64Array.from(options, (option) => perCopy(problem, option, high)) };
}

/** Cheapest cost that one copy adds to any build, once the empty build is paid. */
function perCopy(problem: PlanProblem, option: PlanOption, emptyCost: number): number {
  const perMin = dearestMinute(problem, option);
  let least = Number.POSITIVE_INFINITY;
  for (let copies = option.copiesMin; copies <= option.copiesMax; copies++) {
    // A mixture rounds its run up once, so what rounding alone can have cost this build is taken off.
    const roundedUpMin = Math.max(0, option.runMinByCopies[copies]! - exactRunMin(option, copies));
    const rounding = roundedUpMin > 0 ? perMin * roundedUpMin : 0;
    const cost = option.costByCopies[copies]! - emptyCost - rounding;
    least = Math.min(least, cost / copies);
  }
  return Math.max(0, least);
}

/** No minute of any build of this option alone costs more: what a second platform full adds, by its minutes. */
function dearestMinute(problem: PlanProblem, option: PlanOption): number {
  const item = { optionIndex: option.index, copies: option.copiesMax };
  const full = { route: option.route, copies: option.copiesMax };
  const moreMin = runMin([full, full]) - runMin([full]);
  return moreMin > 0 ? (problem.mixedCost([item, item]) - problem.mixedCost([item])) / moreMin : Infinity;
}

function exactRunMin(option: PlanOption, copies: number): number {
  return option.route.fixedMin + depositionMin({ route: option.route, copies });
}

/** Bounds on the cost of a build with nothing in it, from builds of 1, 2 and 3 batches of items without copies. */
function emptyBuild(problem: PlanProblem, option: PlanOption): { low: number; high: number } {
  const route = option.route;
  const itemMin = depositionMin({ route, copies: 0 });
  const batch = itemMin > 0 ? Math.min(MOST_ITEMS, Math.ceil(1 / itemMin)) : 1;
  const cost = (batches: number): number =>
    problem.mixedCost(
      Array.from({ length: batch * batches }, () => ({ optionIndex: option.index, copies: 0 })),
    );
  const minutes = (batches: number): number =>
    runMin(Array.from({ length: batch * batches }, () => ({ route, copies: 0 })));
  const [x1, x2, x3] = [minutes(1), minutes(2), minutes(3)];
  const [y1, y2, y3] = [cost(1), cost(2), cost(3)];
  const most = y1;
  if (!(x1 < x2 && x2 < x3)) return { low: 0, high: most };
  const slope12 = (y2 - y1) / (x2 - x1);
  const slope23 = (y3 - y2) / (x3 - x2);
  const bend = Math.max(0, (slope23 - slope12) / (x3 - x1));
  const back = route.fixedMin - x1;
  const low = y1 + slope12 * back;
  return { low: Math.max(0, low), high: Math.min(most, low + bend * back * (route.fixedMin - x2)) };
}

/** Items without copies in one batch; only layers that change in no time at all need more. */
const MOST_ITEMS = 64;
