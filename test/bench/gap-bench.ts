import { existsSync } from "node:fs";
import { loadHighs } from "../../core/plan/engines/highs.ts";
import type { LinearProgram, LpEngine } from "../../core/plan/linear-program.ts";
import {
  type Assignment,
  assignmentProgram,
  GAP_FOLDER,
  readAssignments,
} from "../fixtures/generalized-assignment.ts";
import type { AssignmentTask } from "./assignment-prices.ts";
import { cheapestAssignment } from "./assignment-tree.ts";

/** What was found for one published instance. */
export interface AssignmentResult {
  readonly name: string;
  readonly optimum: number;
  readonly found: number;
  /** proven: no assignment is better */
  readonly bound: number;
  /** branch and cut alone found and proved it */
  readonly byBranchAndCut: boolean;
  readonly seconds: number;
}

/** Branch and cut alone has this share of the time, the tree of prices the rest. */
const BRANCH_AND_CUT_SHARE = 0.25;

/**
 * Solves every published instance of generalized assignment (Cattrysse, Salomon & Van Wassenhove 1994; Chu & Beasley 1997;
 * Yagiura, Ibaraki & Glover 2004; through OR-Library): by branch and cut on the engine, and where that is not proven in its
 * share of the time by a tree that starts from the prices of the engine's relaxation. Null where the data are absent.
 */
export async function assignmentBench(
  now: () => number,
  secondsEach: number,
): Promise<AssignmentResult[] | null> {
  if (!existsSync(GAP_FOLDER)) return null;
  const engine = await loadHighs();
  return readAssignments().map((instance) => solved(instance, engine, now, secondsEach));
}

function solved(
  instance: Assignment,
  engine: LpEngine,
  now: () => number,
  seconds: number,
): AssignmentResult {
  const startMs = now();
  const program = assignmentProgram(instance);
  const cut = engine.solve(program, seconds * BRANCH_AND_CUT_SHARE);
  const byBranchAndCut = cut.status === "optimal";
  const untilMs = startMs + seconds * 1000;
  const { found, bound } = byBranchAndCut
    ? { found: cut.objective, bound: cut.bound }
    : byTree(program, instance, engine, () => now() < untilMs);
  const sign = instance.sense === "max" ? -1 : 1;
  return {
    name: instance.name,
    optimum: instance.optimum,
    found: sign * (cut.objective < found || Number.isNaN(found) ? cut.objective : found),
    bound: sign * bound,
    byBranchAndCut,
    seconds: (now() - startMs) / 1000,
  };
}

/** Prices from the relaxation, the tree, and its assignment put back into the program for the engine to confirm. */
function byTree(
  program: LinearProgram,
  instance: Assignment,
  engine: LpEngine,
  isTimeLeft: () => boolean,
): { found: number; bound: number } {
  const { integer: _, ...relaxed } = program;
  const { rowPrices } = engine.solve(relaxed, RELAXATION_S);
  const task = taskOf(program, instance);
  const { machineOf, bound } = cheapestAssignment(
    task,
    rowPrices.slice(instance.capacity.length),
    isTimeLeft,
  );
  return { found: machineOf ? confirmed(program, machineOf, engine) : Number.NaN, bound };
}

const RELAXATION_S = 20;

function taskOf(program: LinearProgram, { load, capacity }: Assignment): AssignmentTask {
  return { cost: program.cost, load: Int32Array.from(load.flat()), capacity };
}

/** The engine's own cost of an assignment; NaN where it breaks a row. */
function confirmed(program: LinearProgram, machineOf: readonly number[], engine: LpEngine): number {
  const values = new Float64Array(program.cols);
  machineOf.forEach((machine, job) => {
    values[machine * machineOf.length + job] = 1;
  });
  return engine.solve({ ...program, colLower: values, colUpper: values }, RELAXATION_S).objective;
}
