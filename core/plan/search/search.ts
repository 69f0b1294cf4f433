import { seededRandom } from "../../units/random.ts";
import { cycleMs } from "./cycle-length.ts";
import { Improver, type Progress } from "./improve.ts";
import type { PlanProblem } from "../plan-problem.ts";
import { hasBroken, takeOutBroken } from "./promises.ts";
import type { Shares } from "./rounding.ts";
import { toSchedule } from "./saved-plan.ts";
import type { Schedule } from "../schedule.ts";
import { SearchData } from "./search-data.ts";
import { emptyPlan, startPlan } from "./start-plans.ts";
import type { Trial } from "./trial.ts";

/** Where a search starts: copies by option and copies bought out, as the linear program divides them. */
export type SearchStart = Shares;

/** Until when to search, and whom to tell. */
export interface SearchControl {
  readonly seed: number;
  /** a clock, ms */
  readonly now: () => number;
  /** reading of that clock at which the search ends */
  readonly untilMs: number;
  /** most steps; where it ends the search before the clock does, equal seeds give equal schedules */
  readonly iterations?: number;
  readonly stopped?: () => boolean;
  /** told of a better schedule, at most a few times a second */
  readonly onBetter?: (schedule: Schedule) => void;
  /** a cost that is good enough to stop at */
  readonly goodEnough?: number;
}

/**
 * Plans in the exact calendar: starts from the linear program's shares where given, or from simple rules, and improves until
 * the time is up, `stopped` says so or the cost is good enough. The schedule obeys every rule of a valid plan; copies that
 * find no place, or only one that breaks a promise, are `unplaced`.
 */
export function searchSchedule(
  problem: PlanProblem,
  start: SearchStart | null,
  control: SearchControl,
): Schedule {
  const trial = emptyPlan(new SearchData(problem));
  const clock = new SearchClock(control);
  startPlan(trial, start, () => clock.isTimeLeft());
  const teller = new Teller(trial, control);
  teller.tell();
  if (trial.state.activeCount > 0 && clock.isTimeLeft()) {
    const improver = new Improver(trial, seededRandom(control.seed));
    improver.run(clock.progress(), clock.cycles(cycleMs(trial.state)), () =>
      teller.tellSometimes(() => improver.keepBest()),
    );
  }
  takeOutBroken(trial);
  return toSchedule(trial.state);
}

/** Steps that stand for a millisecond where steps and not the clock end the search. */
const STEPS_A_MS = 160;
const MOST_CYCLES = 100;

/** Sums of money that differ by less are equal. */
const LEAST_DIFFERENCE = 1e-6;

/** Share of time or steps that is used up. */
class SearchClock {
  private readonly control: SearchControl;
  private readonly startMs: number;
  private steps = 0;

  constructor(control: SearchControl) {
    this.control = control;
    this.startMs = control.now();
  }

  isTimeLeft(): boolean {
    return this.control.now() < this.control.untilMs && this.control.stopped?.() !== true;
  }

  /** Cycles of annealing of about this length that there is time for. */
  cycles(lengthMs: number): number {
    const { iterations, untilMs } = this.control;
    const ms = iterations === undefined ? untilMs - this.startMs : iterations / STEPS_A_MS;
    return Math.max(1, Math.min(MOST_CYCLES, Math.round(ms / Math.max(1, lengthMs))));
  }

  progress(): Progress {
    const { control } = this;
    const most = control.iterations ?? Infinity;
    const goodEnough = (control.goodEnough ?? -Infinity) + LEAST_DIFFERENCE;
    return (steps, bestMoney) => {
      this.steps += steps;
      const nowMs = control.now();
      if (control.stopped?.() === true || bestMoney <= goodEnough) return 1;
      if (most < Infinity) return nowMs >= control.untilMs ? 1 : this.steps / most;
      return Math.min(1, (nowMs - this.startMs) / Math.max(1, control.untilMs - this.startMs));
    };
  }
}

/** Between two schedules told, ms. */
const TELL_EVERY_MS = 250;

/** Tells of better schedules, of those that break no promise. */
class Teller {
  private readonly trial: Trial;
  private readonly control: SearchControl;
  private lastMs = -Infinity;

  constructor(trial: Trial, control: SearchControl) {
    this.trial = trial;
    this.control = control;
  }

  tellSometimes(keep: () => void): void {
    if (this.control.now() - this.lastMs < TELL_EVERY_MS) return;
    keep();
    this.tell();
  }

  tell(): void {
    const { control, trial } = this;
    this.lastMs = control.now();
    if (control.onBetter && !hasBroken(trial.state)) control.onBetter(toSchedule(trial.state));
  }
}
