import type { BoundModel } from "./bound-model.ts";
import { checkAnswer } from "../engines/check-answer.ts";
import { pricePool } from "./column-pricing.ts";
import type { LinearProgram, LpAnswer, LpEngine } from "../linear-program.ts";
import { columnCost, columnEntries, MOST_SLOTS } from "./pool-columns.ts";

/** When to stop, and the clock, ms. */
export interface BoundLimits {
  readonly now: () => number;
  readonly untilMs: number;
}

/** The best proof that sifting has. */
export interface Sifted {
  /** no point of the relaxation costs less */
  readonly bound: number;
  /** the last solved program and its answer; null where time did not allow one */
  readonly program: LinearProgram | null;
  readonly answer: LpAnswer | null;
  /** columns of the pool in the last program: entry x MOST_SLOTS + slot, by column after the fixed ones */
  readonly chosen: readonly number[];
  readonly rounds: number;
  /** true when no column of the pool could lower the cost any further */
  readonly isComplete: boolean;
}

/** Engines stop at 1e-7 in their own scaling, which large programs lose some of. */
const ANSWER_TOLERANCE = 1e-5;
/** Columns added for one line in one round; more make fewer but larger rounds. */
const PER_LINE = 10;
const MOST_ROUNDS = 60;
/** Reduced costs within this share of the objective are round-off. */
const PRICE_TOLERANCE = 1e-9;

/**
 * Sifting (column generation over a pool that is all there; Bixby, Gregory, Lustig, Marsten & Shanno 1992, from memory):
 * solve with few columns, price the others, add the best of each line, until none would help. After any round the
 * Lagrangian bound "objective + sum over lines of quantity x least reduced cost for one copy" holds (Lasdon 1970, from
 * memory), because a plan makes exactly the quantity; so it can be stopped at any time.
 */
export function sift(
  model: BoundModel,
  engine: LpEngine,
  limits: BoundLimits,
  start: readonly number[] = [],
): Sifted {
  const round = new RestrictedProgram(model);
  for (const column of start.length > 0 ? start : firstColumns(model)) round.add(column);
  let best: Sifted = {
    bound: boundWithoutCapacity(model),
    program: null,
    answer: null,
    chosen: [],
    rounds: 0,
    isComplete: false,
  };
  for (let rounds = 1; rounds <= MOST_ROUNDS; rounds++) {
    const seconds = (limits.untilMs - limits.now()) / 1000;
    if (seconds <= 0) break;
    const program = round.program();
    const answer = engine.solve(program, seconds);
    // An answer that does not prove itself proves nothing about plans either.
    if (answer.status !== "optimal" || checkAnswer(program, answer, ANSWER_TOLERANCE).length > 0) break;
    const tolerance = PRICE_TOLERANCE * Math.max(1, Math.abs(answer.objective));
    const { best: columns, leastPerCopy } = pricePool(model, answer.rowPrices, PER_LINE, tolerance);
    const bound = Math.max(best.bound, lagrangianBound(model, answer.objective, leastPerCopy));
    const added = columns.flat().filter(({ column }) => round.add(column)).length;
    best = {
      bound,
      program,
      answer,
      chosen: round.chosen.slice(0, round.chosen.length - added),
      rounds,
      isComplete: added === 0,
    };
    if (added === 0) break;
  }
  return best;
}

function lagrangianBound(model: BoundModel, objective: number, leastPerCopy: Float64Array): number {
  return model.problem.lines.reduce(
    (bound, line) => bound + line.quantity * Math.min(0, leastPerCopy[line.index]!),
    objective,
  );
}

/** With no condition but the quantities: every copy at its cheapest. The bound that needs no engine. */
function boundWithoutCapacity(model: BoundModel): number {
  const { leastPerCopy } = pricePool(model, new Float64Array(model.rows.lower.length), 0, Infinity);
  return model.problem.lines.reduce((sum, line) => {
    const bought = model.boughtOut[line.index]!;
    const boughtCost = bought < 0 ? Infinity : model.columns.cost[bought]!;
    return sum + line.quantity * Math.min(leastPerCopy[line.index]!, boughtCost, model.missingPrice);
  }, 0);
}

class RestrictedProgram {
  /** pool columns in the order added */
  readonly chosen: number[] = [];
  private readonly model: BoundModel;
  private readonly known = new Set<number>();
  private readonly columns;

  constructor(model: BoundModel) {
    this.model = model;
    this.columns = model.columns.copy();
  }

  /** Adds a column of the pool; false where it is there already. */
  add(column: number): boolean {
    if (this.known.has(column)) return false;
    const entry = Math.floor(column / MOST_SLOTS);
    const slot = column % MOST_SLOTS;
    this.known.add(column);
    this.chosen.push(column);
    this.columns.add(columnCost(this.model, entry, slot), Infinity, columnEntries(this.model, entry, slot));
    return true;
  }

  program(): LinearProgram {
    return this.columns.program(this.model.rows);
  }
}

/** For each option its cheapest column for a copy on time, and for each line its cheapest without limit of capacity. */
function firstColumns(model: BoundModel): number[] {
  const { problem, pool, slots } = model;
  const first = new Map<number, { column: number; perCopy: number }>();
  const keep = (key: number, column: number, perCopy: number): void => {
    const known = first.get(key);
    if (!known || perCopy < known.perCopy) first.set(key, { column, perCopy });
  };
  for (let entry = 0; entry < pool.option.length; entry++) {
    const { index, lineIndex } = problem.options[pool.option[entry]!]!;
    const last = slots[index]!.length - 1;
    if (last < 0) continue;
    const perCopy = (slot: number): number => columnCost(model, entry, slot) / pool.copies[entry]!;
    if (perCopy(0) < Infinity) keep(index, entry * MOST_SLOTS, perCopy(0));
    if (perCopy(last) < Infinity) keep(-1 - lineIndex, entry * MOST_SLOTS + last, perCopy(last));
  }
  return [...new Set([...first.values()].map(({ column }) => column))];
}
