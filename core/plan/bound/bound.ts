import { LP_TOLERANCE } from "../../units/tolerance.ts";
import { type BoundModel, boundModel } from "./bound-model.ts";
import { cheapestCopies } from "./cheapest-copies.ts";
import type { LpEngine } from "../linear-program.ts";
import type { PlanProblem } from "../plan-problem.ts";
import { MOST_SLOTS } from "./pool-columns.ts";
import { type BoundLimits, sift, type Sifted } from "./sifting.ts";

/** What no plan can beat, and the assignment and prices behind it. */
export interface BoundAnswer {
  /** no plan that makes or buys all copies, but for `missing`, costs less; major units */
  readonly value: number;
  /** how it was proven, for people */
  readonly from: string;
  /** copies by option, fractions of copies included */
  readonly shares: readonly { readonly optionIndex: number; readonly copies: number }[];
  readonly boughtOut: readonly { readonly lineIndex: number; readonly copies: number }[];
  /** copies that no plan makes: promised hard and not in time beside the others, or no sum of allowed builds (2 at a time, 7 wanted) */
  readonly missing: readonly { readonly lineIndex: number; readonly copies: number }[];
  /** cost of one more copy by line: what the relaxation pays for the last one */
  readonly linePrices: Float64Array;
  /** cost of the whole line by its prices: the floor of a quote */
  readonly orderPrices: Float64Array;
  /** the relaxation, null where time did not even allow making it, and its last answer, for `hourPrices` */
  readonly model: BoundModel | null;
  readonly sifted: Sifted;
}

/**
 * A lower bound on the cost of every valid plan, by a linear program whose conditions each plan keeps (see `bound-model.ts`
 * for what each leaves out). It stops at the time given with what it has proven by then.
 */
export function proveBound(problem: PlanProblem, engine: LpEngine, limits: BoundLimits): BoundAnswer {
  const model = boundModel(problem, () => limits.now() < limits.untilMs);
  if (!model) return withoutModel(problem);
  const sifted = sift(model, engine, limits);
  const missing = copiesOf(model.missing, sifted);
  const missingCopies = missing.reduce((sum, { copies }) => sum + copies, 0);
  const size = Math.max(1, Math.abs(sifted.bound));
  return {
    // Less the solver's own tolerance, so that round-off never claims a proof.
    value: Math.max(0, sifted.bound - missingCopies * model.missingPrice - LP_TOLERANCE * size),
    from: problem.lines.some((line) => line.quantity > 0) ? sentence(sifted, missingCopies) : NOTHING_TO_MAKE,
    shares: sharesOf(model, sifted),
    boughtOut: copiesOf(model.boughtOut, sifted),
    missing,
    linePrices: linePrices(model, sifted),
    orderPrices: orderPrices(model, sifted),
    model,
    sifted,
  };
}

/** Every copy at its cheapest, and nothing to start a search from. */
function withoutModel(problem: PlanProblem): BoundAnswer {
  const bound = cheapestCopies(problem);
  const sifted = { bound, program: null, answer: null, chosen: [], rounds: 0, isComplete: false };
  return {
    value: bound * (1 - LP_TOLERANCE),
    from: problem.lines.some((line) => line.quantity > 0) ? sentence(sifted, 0) : NOTHING_TO_MAKE,
    shares: [],
    boughtOut: [],
    missing: [],
    linePrices: new Float64Array(problem.lines.length),
    orderPrices: new Float64Array(problem.lines.length),
    model: null,
    sifted,
  };
}

const NOTHING_TO_MAKE = "Nothing is left to make, so nothing can cost less.";

function sentence(sifted: Sifted, missingCopies: number): string {
  if (!sifted.program)
    return "Every copy at its cheapest, without limits of capacity: time did not allow more.";
  const size = `${sifted.program.rows} conditions and ${sifted.program.cols} columns after ${sifted.rounds} rounds`;
  const proof = sifted.isComplete ? "solved to its optimum" : "stopped by time, with the bound of its prices";
  const left =
    missingCopies > COPY_TOLERANCE
      ? "; it leaves out copies that no plan can make in time or in the builds allowed"
      : "";
  return `Linear program of staffed hours, unstaffed gaps, operators and set-ups, ${size}, ${proof}${left}.`;
}

/** Fewer copies than this are round-off. */
const COPY_TOLERANCE = 1e-6;

function sharesOf(model: BoundModel, { answer, chosen }: Sifted): BoundAnswer["shares"] {
  const copies = new Map<number, number>();
  chosen.forEach((column, at) => {
    const entry = Math.floor(column / MOST_SLOTS);
    const made = model.pool.copies[entry]! * (answer?.values[model.columns.cost.length + at] ?? 0);
    if (made <= COPY_TOLERANCE) return;
    const option = model.pool.option[entry]!;
    copies.set(option, (copies.get(option) ?? 0) + made);
  });
  return [...copies].map(([optionIndex, made]) => ({ optionIndex, copies: made }));
}

function copiesOf(columns: Int32Array, { answer }: Sifted): { lineIndex: number; copies: number }[] {
  const found: { lineIndex: number; copies: number }[] = [];
  columns.forEach((column, lineIndex) => {
    const copies = column < 0 ? 0 : (answer?.values[column] ?? 0);
    if (copies > COPY_TOLERANCE) found.push({ lineIndex, copies });
  });
  return found;
}

function linePrices({ demand }: BoundModel, { answer }: Sifted): Float64Array {
  return Float64Array.from(demand, (row) => answer?.rowPrices[row] ?? 0);
}

/** Row prices times what the line asks for: its copies and its whole builds. */
function orderPrices({ demand, wholeBuilds, rows }: BoundModel, { answer }: Sifted): Float64Array {
  const worth = (row: number): number => (answer?.rowPrices[row] ?? 0) * rows.lower[row]!;
  return Float64Array.from(demand, (row, line) =>
    wholeBuilds[line]!.reduce((sum, whole) => sum + worth(whole.row), worth(row)),
  );
}
