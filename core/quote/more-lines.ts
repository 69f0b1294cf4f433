import type { BuildCosting } from "../cost/build-cost.ts";
import { compileLines, type CompiledLines } from "../plan/compile/compile-lines.ts";
import type { PlanRequest } from "../plan/compile/compile-problem.ts";
import { groupAlike } from "../plan/compile/machine-classes.ts";
import { OptionFinder } from "../plan/compile/option-finder.ts";
import { changeoverTable, StateNumbers } from "../plan/compile/set-up-states.ts";
import type { MachineClass, PlanOption, PlanProblem, SetUpState } from "../plan/plan-problem.ts";
import type { Order } from "../shop/order.ts";
import type { Shop } from "../shop/shop.ts";

/** A compiled problem that lines can be added to, with what their compiling needs. */
export interface OpenProblem {
  /** in the order of its ids, as the problem was compiled from */
  readonly shop: Shop;
  readonly request: PlanRequest;
  readonly costing: BuildCosting;
  readonly problem: PlanProblem;
}

/** The problem with more lines behind its own, whose numbers stay as they are. */
export interface MoreLines {
  readonly problem: PlanProblem;
  /** by order: index of its line, -1 where it has none */
  readonly lineIndices: readonly number[];
  readonly unplannable: CompiledLines["unplannable"];
}

/**
 * Adds order lines to a compiled problem without compiling it again: lines, options, tool paths and set-up states of the
 * problem keep their numbers, new ones come behind them. Example: 500 lines with 2818 options and one more of 6: 2824.
 */
export function withMoreLines(open: OpenProblem, orders: readonly Order[]): MoreLines {
  const { problem, request, costing } = open;
  const shop = { ...open.shop, orders: [...orders] };
  const numbers = new StateNumbers(shop);
  for (const state of problem.states) numbers.of(state);
  const groups = groupAlike(shop.machines);
  const times = { classes: problem.classes, machines: problem.machines };
  const finder = new OptionFinder({ shop, costing, numbers, times, groups });
  const found = compileLines({ shop, finder, costing, times, request });
  const options = [...problem.options, ...moreOptions(problem, found)];
  const lines = found.lines.map((line) => ({
    ...line,
    index: line.index + problem.lines.length,
    optionIndices: line.optionIndices.map((index) => index + problem.options.length),
  }));
  const { states } = numbers;
  return {
    problem: {
      ...problem,
      states,
      classes: problem.classes.map((facts, index) => withChangeovers(open, facts, index, states, options)),
      machines: problem.machines.map((machine) => ({
        ...machine,
        startState: machine.startState === problem.states.length ? states.length : machine.startState,
      })),
      lines: [...problem.lines, ...lines],
      options,
      engineering: [...problem.engineering, ...moreEngineering(problem, found)],
      mixedCost: mixedCostOf(open, options),
    },
    lineIndices: orders.map(({ id }) => lines.find(({ orderId }) => orderId === id)?.index ?? -1),
    unplannable: found.unplannable,
  };
}

/** Options of the new lines under the numbers that they have behind the problem's own. */
function moreOptions(problem: PlanProblem, found: CompiledLines): PlanOption[] {
  const keys = new Map(problem.options.map((option) => [shareKey(option), option.mixKey]));
  const engineering = engineeringNumbers(problem, found);
  let next = problem.options.reduce((most, { mixKey }) => Math.max(most, mixKey), -1) + 1;
  return found.options.map((option) => {
    const key = shareKey(option);
    if (!keys.has(key)) keys.set(key, option.mixKey < 0 ? -1 : next++);
    return {
      ...option,
      index: option.index + problem.options.length,
      lineIndex: option.lineIndex + problem.lines.length,
      mixKey: keys.get(key) ?? -1,
      engineeringIndex: option.engineeringIndex < 0 ? -1 : (engineering[option.engineeringIndex] ?? -1),
    };
  });
}

/** What options must have in common to share a platform. */
function shareKey({ classIndex, stateIndex, route }: PlanOption): string {
  const { layerHeightMm, beadWidthMm, orientation } = route;
  return JSON.stringify([classIndex, stateIndex, layerHeightMm, beadWidthMm, orientation]);
}

/** By tool path of the new lines: its number in the whole problem. */
function engineeringNumbers({ engineering }: PlanProblem, found: CompiledLines): number[] {
  let next = engineering.length;
  return found.engineering.map(({ partId, process }) => {
    const known = engineering.findIndex((item) => item.partId === partId && item.process === process);
    return known < 0 ? next++ : known;
  });
}

function moreEngineering({ engineering }: PlanProblem, found: CompiledLines): PlanProblem["engineering"] {
  return found.engineering.filter(
    ({ partId, process }) => !engineering.some((item) => item.partId === partId && item.process === process),
  );
}

/** A class with the changeovers of all states that its options and machines now have. */
function withChangeovers(
  { shop, costing, problem }: OpenProblem,
  facts: MachineClass,
  classIndex: number,
  states: readonly SetUpState[],
  options: readonly PlanOption[],
): MachineClass {
  const machine = shop.machines[facts.machineIndices[0] ?? -1];
  if (!machine) throw new RangeError("a class without machines");
  const toStates = new Set(
    options.filter((option) => option.classIndex === classIndex).map(({ stateIndex }) => stateIndex),
  );
  const starts = facts.machineIndices.map((index) => problem.machines[index]?.startState ?? -1);
  const loaded = starts.filter((state) => state >= 0 && state < problem.states.length);
  return {
    ...facts,
    ...changeoverTable(costing, machine, states, new Set([...toStates, ...loaded]), toStates),
  };
}

function mixedCostOf(
  { shop, costing, problem }: OpenProblem,
  options: readonly PlanOption[],
): PlanProblem["mixedCost"] {
  return (items) => {
    const first = options[items[0]?.optionIndex ?? -1];
    const machine = shop.machines[problem.classes[first?.classIndex ?? -1]?.machineIndices[0] ?? -1];
    if (!machine) throw new RangeError("a build with no items has no cost");
    const routes = items.map(({ optionIndex, copies }) => {
      const option = options[optionIndex];
      if (!option) throw new RangeError(`no such option: ${optionIndex}`);
      return { route: option.route, copies };
    });
    return costing.amounts(routes, machine).total;
  };
}
