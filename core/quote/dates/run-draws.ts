import { normalShareBelow } from "../normal-law.ts";
import { drawAt, runKey } from "./keyed-draws.ts";
import { normalTable } from "./normal-draw.ts";
import type { SimulationTask } from "./simulation-task.ts";

/** Chance in one run: print times and failures of each build, by its key alone. */
export class RunDraws {
  private readonly task: SimulationTask;
  private readonly table = normalTable();
  private readonly buildSigma: number;
  private readonly machineSigma: number;
  private run = 0;

  constructor(task: SimulationTask) {
    this.task = task;
    this.buildSigma = sigmaOf(task.chances.buildVariation);
    this.machineSigma = sigmaOf(task.chances.machineVariation);
  }

  open(seed: number, run: number): void {
    this.run = runKey(seed, run);
  }

  /** Logarithm of what all prints of a machine take over their estimate in this run. */
  machineLog(machine: number): number {
    const { keyA, keyB, timeFactor } = this.task.machines;
    const log = Math.log(timeFactor[machine]!);
    if (this.machineSigma === 0) return log;
    const share = drawAt(this.run, keyA[machine]!, keyB[machine]!, 0);
    return log + this.machineSigma * this.table.at(share) - this.machineSigma ** 2 / 2;
  }

  /** What one build's whole run takes, warm-up and cool-down included, min. */
  runMin(build: number, machineLog: number): number {
    const { keyA, keyB, runMin, fixedMin, begunMin } = this.task.builds;
    const fixed = fixedMin[build]!;
    const deposit = runMin[build]! - fixed;
    let share = drawAt(this.run, keyA[build]!, keyB[build]!, 0);
    const doneMin = -begunMin[build]!;
    if (doneMin > fixed) share = this.shareBeyond(share, (doneMin - fixed) / deposit, machineLog);
    const log = this.buildSigma === 0 ? 0 : this.buildSigma * this.table.at(share) - this.buildSigma ** 2 / 2;
    const takes = fixed + deposit * Math.exp(log + machineLog);
    return doneMin > takes ? doneMin : takes;
  }

  /** Printing time until one attempt fails, min; Infinity: it does not fail before `runMin`. */
  failsAfterMin(build: number, attempt: number, hazardPerMin: number, runMin: number): number {
    const { startFailureShare, startFailureMin } = this.task.chances;
    const { keyA, keyB } = this.task.builds;
    if (startFailureShare > 0) {
      const start = drawAt(this.run, keyA[build]!, keyB[build]!, 2 + 2 * attempt);
      if (start < startFailureShare) return Math.min(startFailureMin, runMin);
    }
    const share = drawAt(this.run, keyA[build]!, keyB[build]!, 1 + 2 * attempt);
    // No failure where the share is above 1 - e^-x, which is at most x: most builds need no logarithm.
    if (share >= hazardPerMin * runMin) return Infinity;
    const afterMin = -Math.log1p(-share) / hazardPerMin;
    return afterMin < runMin ? afterMin : Infinity;
  }

  /** A share of those that take more than so many times the estimate: the print is known to be going on. */
  private shareBeyond(share: number, times: number, machineLog: number): number {
    if (this.buildSigma === 0) return share;
    const z = (Math.log(times) - machineLog + this.buildSigma ** 2 / 2) / this.buildSigma;
    const below = normalShareBelow(z);
    return Math.min(below + share * (1 - below), LARGEST_SHARE);
  }
}

/** Beyond it a print that is long overdue is taken to end now. */
const LARGEST_SHARE = 1 - 2 ** -40;

/** Standard deviation of the logarithm of a lognormal time with that coefficient of variation. */
function sigmaOf(variation: number): number {
  return Math.sqrt(Math.log1p(variation ** 2));
}
