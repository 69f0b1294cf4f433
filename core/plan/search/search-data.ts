import type { PlanLine, PlanOption, PlanProblem } from "../plan-problem.ts";
import { EarlierPlaces } from "./earlier-places.ts";

/**
 * The problem as flat arrays for the search. Times are minutes from the start of the plan. `[from, to)` tables hold for each
 * line its options and for each option its machines.
 */
export class SearchData {
  readonly problem: PlanProblem;
  readonly lineCount: number;
  readonly machineCount: number;
  readonly stateCount: number;

  readonly optionLine: Int32Array;
  readonly optionClass: Int32Array;
  readonly optionState: Int32Array;
  readonly optionMixKey: Int32Array;
  readonly optionMin: Int32Array;
  readonly optionMax: Int32Array;
  readonly optionEngineering: Int32Array;
  /** of each option and so many copies: [optionTable + copies] */
  readonly optionTable: Int32Array;
  readonly runMin: Float64Array;
  readonly buildCost: Float64Array;
  readonly lineOptions: readonly Int32Array[];
  readonly optionMachines: readonly Int32Array[];
  /** 1 where the option may run on the machine: [option * machineCount + machine] */
  readonly mayRun: Uint8Array;

  readonly machineClass: Int32Array;
  readonly machineStart: Int32Array;
  readonly setUpMin: Float64Array;
  readonly changeoverMin: readonly Float64Array[];
  readonly changeoverCost: readonly Float64Array[];

  readonly quantity: Int32Array;
  readonly releaseMin: Int32Array;
  readonly dueMin: Float64Array;
  /** cost per minute of the whole line being late; 0 where copies count by themselves */
  readonly wholeRate: Float64Array;
  /** cost per minute and copy where copies count by themselves, else 0 */
  readonly pieceRate: Float64Array;
  /** 1 where the line must not be late */
  readonly hard: Uint8Array;
  readonly buyPrice: Float64Array;
  readonly buyArriveMin: Float64Array;
  readonly engineeringCost: Float64Array;
  readonly makespanRate: number;
  /** where an earlier plan had its builds */
  readonly earlier: EarlierPlaces;
  readonly hasMixing: boolean;
  readonly hasBuyOut: boolean;

  constructor(problem: PlanProblem) {
    const { lines, options, machines, classes, states, startMin } = problem;
    this.problem = problem;
    this.lineCount = lines.length;
    this.machineCount = machines.length;
    this.stateCount = states.length;
    this.optionLine = Int32Array.from(options, (option) => option.lineIndex);
    this.optionClass = Int32Array.from(options, (option) => option.classIndex);
    this.optionState = Int32Array.from(options, (option) => option.stateIndex);
    this.optionMixKey = Int32Array.from(options, (option) =>
      classes[option.classIndex]?.mixedPlatform ? option.mixKey : -1,
    );
    this.optionMin = Int32Array.from(options, (option) => Math.max(1, option.copiesMin));
    this.optionMax = Int32Array.from(options, mostCopies);
    this.optionEngineering = Int32Array.from(options, (option) => option.engineeringIndex);
    this.optionTable = tableStarts(options);
    this.runMin = flatten(options, (option) => option.runMinByCopies);
    this.buildCost = flatten(options, (option) => option.costByCopies);
    this.lineOptions = lines.map((line) => Int32Array.from(usableOptions(line, options)));
    this.optionMachines = options.map((option) => Int32Array.from(usableMachines(option, problem)));
    this.mayRun = new Uint8Array(options.length * machines.length);
    this.optionMachines.forEach((list, option) => {
      for (const machine of list) this.mayRun[option * machines.length + machine] = 1;
    });
    this.machineClass = Int32Array.from(machines, (machine) => machine.classIndex);
    this.machineStart = Int32Array.from(machines, (machine) => Math.min(machine.startState, states.length));
    this.setUpMin = Float64Array.from(classes, (facts) => facts.setUpMin);
    this.changeoverMin = classes.map((facts) => facts.changeoverMin);
    this.changeoverCost = classes.map((facts) => facts.changeoverCost);
    this.quantity = Int32Array.from(lines, (line) => line.quantity);
    this.releaseMin = Int32Array.from(lines, (line) => Math.max(0, line.releaseMin - startMin));
    this.dueMin = Float64Array.from(lines, (line) => line.dueMin - startMin);
    this.wholeRate = Float64Array.from(lines, (line) => (line.perPiece ? 0 : line.lateCostPerMin));
    this.pieceRate = Float64Array.from(lines, (line) =>
      line.perPiece ? line.lateCostPerMin / Math.max(1, line.orderedCopies) : 0,
    );
    this.hard = Uint8Array.from(lines, (line) => (line.allowLate ? 0 : 1));
    this.buyPrice = Float64Array.from(lines, (line) => line.buyOut?.pricePerPiece ?? Infinity);
    this.buyArriveMin = Float64Array.from(lines, (line) => (line.buyOut?.arriveMin ?? Infinity) - startMin);
    this.engineeringCost = Float64Array.from(problem.engineering, (item) => item.cost);
    this.makespanRate = problem.makespanCostPerMin ?? 0;
    this.earlier = new EarlierPlaces(problem);
    this.hasMixing = this.optionMixKey.some((key) => key >= 0);
    this.hasBuyOut = lines.some((line) => line.buyOut !== null);
  }

  /** Run time of one build of one option, min. */
  runOf(option: number, copies: number): number {
    return this.runMin[this.optionTable[option]! + copies]!;
  }

  /** Money of one build of one option, without changeover, engineering and lateness. */
  costOf(option: number, copies: number): number {
    return this.buildCost[this.optionTable[option]! + copies]!;
  }
}

function mostCopies(option: PlanOption): number {
  return Math.min(option.copiesMax, option.runMinByCopies.length - 1, option.costByCopies.length - 1);
}

function usableOptions(line: PlanLine, options: readonly PlanOption[]): number[] {
  return line.optionIndices.filter((index) => {
    const option = options[index];
    return (
      option !== undefined && option.copiesMin <= line.quantity && option.copiesMin <= mostCopies(option)
    );
  });
}

/** Machines with a stretch of time that is long enough for the smallest build. */
function usableMachines(option: PlanOption, problem: PlanProblem): number[] {
  const shortest = option.runMinByCopies[Math.max(1, option.copiesMin)] ?? Infinity;
  return option.machineIndices.filter((index) =>
    problem.machines[index]?.segments.some(({ startMin, endMin }) => endMin - startMin >= shortest),
  );
}

function tableStarts(options: readonly PlanOption[]): Int32Array {
  const starts = new Int32Array(options.length);
  let next = 0;
  options.forEach((option, index) => {
    starts[index] = next;
    next += mostCopies(option) + 1;
  });
  return starts;
}

function flatten(options: readonly PlanOption[], table: (option: PlanOption) => Float64Array): Float64Array {
  const size = options.reduce((sum, option) => sum + mostCopies(option) + 1, 0);
  const flat = new Float64Array(size);
  let next = 0;
  for (const option of options) {
    flat.set(table(option).subarray(0, mostCopies(option) + 1), next);
    next += mostCopies(option) + 1;
  }
  return flat;
}
