import type { PlanLine, PlanProblem } from "../plan/plan-problem.ts";
import type { Schedule } from "../plan/schedule.ts";
import { layOutAs } from "../plan/search/machine-windows.ts";
import { takeOutBroken } from "../plan/search/promises.ts";
import { Recreate } from "../plan/search/recreate.ts";
import { SavedPlan, toSchedule } from "../plan/search/saved-plan.ts";
import { SearchData } from "../plan/search/search-data.ts";
import { ANYWHERE, emptyPlan } from "../plan/search/start-plans.ts";
import type { Trial } from "../plan/search/trial.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";
import { seededRandom } from "../units/random.ts";
import { freeze } from "./frozen-plan.ts";

/** Lines put into the standing plan in one way. */
export interface LinePlaces {
  /** cost over the standing plan's, without the lines' own lateness */
  readonly extraCost: number;
  /** by line put in: when its last copy is there, epoch minute; null: copies found no place */
  readonly finishMin: readonly (number | null)[];
}

/** As if the lines were due so many days after the start of the plan, and lateness cost so many times what it does. */
interface Trying {
  readonly dueDay: number;
  readonly rate: number;
  readonly seed: number | null;
}

/** The first ways: as cheap as can be, as early as can be, and between. */
const FIRST: readonly Omit<Trying, "seed">[] = [
  { dueDay: 60, rate: 1 },
  { dueDay: 0, rate: 64 },
  { dueDay: 0, rate: 1 },
  { dueDay: 0, rate: 8 },
  { dueDay: 7, rate: 1 },
];
/** Of large lines only two are tried first: each takes as long as its builds are many. */
const LEAST_FIRST = 2;
const MOST_FIRST_BUILDS = 120;
/** All of them: dates by rates, later dates first. */
const RATES = [1, 3, 8, 24, 64];
const DUE_DAYS = [60, 32, 24, 18, 14, 11, 9, 7, 6, 5, 4, 3, 2, 1.5, 1, 0.5, 0];
const HIGHEST_RATE = 64;
/** More builds than this are not placed one by one. */
const MOST_BUILDS = 400;

/**
 * What a minute is worth when a line's date is weighed against its cost: what it costs to be late, or where that is less, a
 * 50th of its cheapest copies a day, so that a date means something in a shop that charges nothing for lateness.
 * Example: 40 a day and copies for 500: 40 a day; 0 a day: 10.
 */
export function hurryPerMin(problem: PlanProblem, lineIndex: number): number {
  const line = problem.lines[lineIndex];
  if (!line) throw new RangeError(`no such line: ${lineIndex}`);
  return Math.max(line.lateCostPerMin, (HURRY_SHARE * cheapestCost(problem, line)) / MIN_PER_DAY);
}

const HURRY_SHARE = 1 / 50;

function cheapestCost({ options }: PlanProblem, line: PlanLine): number {
  const perCopy = line.optionIndices.map((index) => {
    const costs = options[index]?.costByCopies ?? [];
    const most = costs.length - 1;
    return (costs[most] ?? Infinity) / most;
  });
  return line.quantity * Math.min(...perCopy, line.buyOut?.pricePerPiece ?? Infinity);
}

/**
 * Puts lines into the standing plan in a number of ways, as if they were due at different times: as cheap as can be when they
 * are due late, as early as can be when they are due at once. Builds that stand keep their order on their machines; a new build
 * goes between them where that is cheapest, and what it pushes back is charged. The ways do not depend on the dates that the
 * lines want, so the cheapest for a date is never cheaper than the cheapest for a later one.
 * Example: two free machines, the cheaper free on Thursday only: 80 more on Thursday, or 95 on Tuesday.
 */
export class LinePlacer {
  private readonly found: LinePlaces[] = [];
  private readonly saved: SavedPlan[] = [];
  private readonly trial: Trial;
  private readonly frozen = new SavedPlan();
  private readonly lines: readonly number[];
  private readonly standingCost: number;
  private readonly hurry: readonly number[];
  private readonly seed: number;
  private isAllTried = false;
  /** placed in all ways together */
  private builds = 0;

  /** `lines` are indices of the problem's lines, of which `standing` holds no copy. */
  constructor(problem: PlanProblem, lines: readonly number[], standing: Schedule, seed: number) {
    this.lines = lines;
    this.seed = seed;
    this.hurry = lines.map((line) => hurryPerMin(problem, line));
    // The search's own copy of the problem: the lines' rates and dates in it are set anew for every way.
    const urgent = problem.lines.map((line) => {
      const at = lines.indexOf(line.index);
      return at < 0 ? line : { ...line, lateCostPerMin: this.hurry[at]! * HIGHEST_RATE };
    });
    const own = { ...problem, lines: urgent };
    layOutAs(own, problem);
    this.trial = emptyPlan(new SearchData(own));
    freeze(this.trial, standing);
    this.standingCost = this.ownless();
    this.frozen.save(this.trial.state);
  }

  /** The first few ways, or all where they have been tried already. */
  first(): readonly LinePlaces[] {
    if (this.found.length > 0) return this.found;
    for (const each of FIRST) {
      const isLarge = this.builds > MOST_FIRST_BUILDS && this.found.length >= LEAST_FIRST;
      if (!isLarge) this.place({ ...each, seed: null });
    }
    return this.found;
  }

  /** All ways, the first among them. */
  all(): readonly LinePlaces[] {
    this.first();
    if (this.isAllTried) return this.found;
    this.isAllTried = true;
    for (const rate of RATES) this.tryDates(rate, null);
    if (this.trial.state.data.hasMixing) for (const rate of RATES) this.tryDates(rate, this.seed);
    return this.found;
  }

  get hasAll(): boolean {
    return this.isAllTried;
  }

  /** The plan of one of the ways. Its cost is not that of the problem's own dates. */
  scheduleOf(at: number): Schedule {
    const saved = this.saved[at];
    if (!saved) throw new RangeError(`no such way: ${at}`);
    saved.restore(this.trial);
    return toSchedule(this.trial.state);
  }

  /** Dates from late to early; those by which the lines were done anyway would give the same way again. */
  private tryDates(rate: number, seed: number | null): void {
    const { startMin } = this.trial.state.data.problem;
    let doneMin = Infinity;
    for (const dueDay of DUE_DAYS) {
      if (startMin + dueDay * MIN_PER_DAY >= doneMin) continue;
      const { finishMin } = this.place({ dueDay, rate, seed });
      doneMin = finishMin.reduce<number>((last, finish) => Math.max(last, finish ?? Infinity), -Infinity);
    }
  }

  private place({ dueDay, rate, seed }: Trying): LinePlaces {
    const { trial, lines } = this;
    const { data } = trial.state;
    this.frozen.restore(trial);
    lines.forEach((line, at) => {
      data.dueMin[line] = dueDay * MIN_PER_DAY;
      data.wholeRate[line] = this.hurry[at]! * rate;
    });
    const recreate = new Recreate(trial, seed === null ? null : seededRandom(seed));
    let builds = 0;
    for (const line of lines) recreate.placeLine(line, ANYWHERE, () => builds++ < MOST_BUILDS);
    this.builds += builds;
    takeOutBroken(trial);
    const saved = new SavedPlan();
    saved.save(trial.state);
    this.saved.push(saved);
    const places = {
      extraCost: this.ownless() - this.standingCost,
      finishMin: lines.map((line) => this.finishOf(line)),
    };
    this.found.push(places);
    return places;
  }

  private finishOf(line: number): number | null {
    const { state } = this.trial;
    return state.unplaced[line]! > 0 ? null : state.data.problem.startMin + state.lineEnd[line]!;
  }

  /** Money of the plan without what lines put in cost by being late or left out. */
  private ownless(): number {
    const { state } = this.trial;
    const { data } = state;
    return this.lines.reduce((money, line) => {
      const lateMin = Math.max(0, state.lineEnd[line]! - data.dueMin[line]!);
      const late = state.lineEnd[line]! < 0 ? 0 : lateMin * data.wholeRate[line]!;
      return money - late - state.unplaced[line]! * state.penalty;
    }, state.money);
  }
}
