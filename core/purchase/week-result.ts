import type { CostKind } from "../cost/cost-line.ts";
import type { PartOutcome, Settled } from "./order-queue.ts";
import type { MachineHours, WeekResult } from "./scenario-job.ts";
import type { WeekInput } from "./week-numbers.ts";
import { pathsPaid } from "./week-state.ts";
import type { WeekProgram } from "./week-program.ts";

/** Values of a week's optimum, read by their meaning. */
export class WeekReading {
  readonly stateHours: Float64Array;
  private readonly classH: Float64Array;
  private readonly costs: Partial<Record<CostKind, number>> = {};
  private readonly kg: Record<string, number> = {};
  private readonly program: WeekProgram;
  private readonly values: Float64Array;
  private readonly input: WeekInput;

  constructor(program: WeekProgram, values: Float64Array, input: WeekInput) {
    this.program = program;
    this.values = values;
    this.input = input;
    this.stateHours = new Float64Array(program.states.length);
    this.classH = new Float64Array(program.fleet.week.classes.length);
    this.readBuilds();
    this.readSetUps();
    program.parts.forEach((_, index) => this.readOpen(index));
  }

  /** What became of a part's copies. */
  outcome(index: number): PartOutcome {
    const { young, old, lost, givenUp } = this.program.parts[index]!;
    const last = young.length - 1;
    return {
      hardLost: Float64Array.from(lost, (column) => this.at(column)),
      givenUp: this.at(givenUp),
      open: this.at(young[last]!) + this.at(old[last]!),
      late: Float64Array.from(young, (column) => this.at(column)),
    };
  }

  /** The week's result; `settled` by part of the fleet, and the money of parts that nothing can make as one more. */
  result(settled: readonly Settled[], backlogCopies: number, orders: number, objective: number): WeekResult {
    const total = (of: (each: Settled) => number): number => settled.reduce((sum, each) => sum + of(each), 0);
    const { parts } = this.program.fleet;
    return {
      costByKind: this.costs,
      lateCost: this.costs.late ?? 0,
      orders,
      lateOrders: total((each) => each.lateOrders),
      lostOrders: total((each) => each.lostOrders),
      lostRevenue: total((each) => each.lostRevenue),
      lostUnpricedCost: settled.reduce(
        (sum, each, index) => sum + each.lostUnpricedCopies * (parts[index]?.cheapest ?? 0),
        0,
      ),
      boughtOutCost: this.costs.buyOut ?? 0,
      revenue: total((each) => each.revenue),
      hoursByMachine: this.hoursByMachine(),
      kgByFeedstock: this.kg,
      backlogCopies,
      objective,
    };
  }

  /** Value of a column; round-off is nothing. */
  private at(column: number): number {
    const value = this.values[column]!;
    return value > DUST ? value : 0;
  }

  private pay(kind: CostKind, amount: number): void {
    if (amount > 0) this.costs[kind] = (this.costs[kind] ?? 0) + amount;
  }

  private readBuilds(): void {
    const { wayOfBuild, firstBuild, states } = this.program;
    const stateAt = new Map(states.map((state, at) => [`${state.classIndex}/${state.stateIndex}`, at]));
    wayOfBuild.forEach(({ option, amounts, copies, occupiedH }, build) => {
      const builds = this.at(firstBuild + build);
      if (builds === 0) return;
      for (const kind of BUILD_KINDS) this.pay(kind, builds * amounts[kind]);
      const { feedstockId, massKgPerCopy } = option.route;
      this.kg[feedstockId] = (this.kg[feedstockId] ?? 0) + builds * copies * massKgPerCopy;
      this.classH[option.classIndex]! += builds * occupiedH;
      this.stateHours[stateAt.get(`${option.classIndex}/${option.stateIndex}`)!]! += builds * occupiedH;
    });
  }

  private readSetUps(): void {
    for (const { column, cost, changeH, classIndex } of this.program.states) {
      this.pay("changeover", this.at(column) * cost);
      this.classH[classIndex]! += this.at(column) * changeH;
    }
    this.program.toolPaths.forEach(({ column, cost }, at) => {
      const before = this.input.state.pathsDone[at]!;
      this.pay("engineering", (pathsPaid(before, this.at(column)) - before) * cost);
    });
  }

  /** Lateness and buying out, at the prices of the week. */
  private readOpen(index: number): void {
    const { young, old, bought, arrivalDay } = this.program.parts[index]!;
    const { lateCostPerDay } = this.input.parts[index]!;
    const { lengthDays } = this.program.fleet.week.slots;
    lengthDays.forEach((lengthD, slot) => {
      const nextD = lengthDays[slot + 1] ?? lengthDays[0]!;
      const lateD = (this.at(young[slot]!) * nextD + this.at(old[slot]!) * (lengthD + nextD)) / 2;
      this.pay("late", lateD * lateCostPerDay);
    });
    if (bought < 0) return;
    const { buyOut } = this.program.fleet.parts[index]!;
    this.pay("buyOut", this.at(bought) * (buyOut?.pricePerPiece ?? 0));
    this.pay("late", this.at(bought) * lateCostPerDay * Math.max(0, arrivalDay - 7));
  }

  private hoursByMachine(): MachineHours[] {
    const { fleet } = this.program;
    const { problem, week } = fleet;
    return problem.machines.map(({ machineId, classIndex }) => {
      const { machines, staffedH } = week.classes[classIndex]!;
      const usualH = staffedH.reduce((sum, hours) => sum + hours, 0);
      return {
        machineId,
        usedH: this.classH[classIndex]! / machines,
        staffedH: (usualH / machines) * this.input.shares.ofClass[this.input.week]![classIndex]!,
      };
    });
  }
}

const BUILD_KINDS = ["feedstock", "machine", "labour", "finishing", "expectedFailure", "overhead"] as const;
const DUST = 1e-9;
