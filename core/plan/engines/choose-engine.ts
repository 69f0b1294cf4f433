import type { LpEngine } from "../linear-program.ts";
import type { PlanProblem } from "../plan-problem.ts";

/**
 * Up to so many options GLPK is as quick as HiGHS, whose larger program first has to be made ready by the runtime: 200 options
 * (bench size S) 1.5 s against 2.4 s from a cold start on two busy cores; 860 options (M) 2.7 s against 0.5 s.
 */
const MOST_OPTIONS_FOR_GLPK = 400;

/** Options that may share platforms make the program several times larger, and GLPK slower from the start. */
const SHARED_WEIGHT = 10;

/** Loaders of both engines; the one that is not needed is never loaded. */
export interface EngineLoaders {
  readonly glpk: () => Promise<LpEngine>;
  readonly highs: () => Promise<LpEngine>;
}

/** Loads the engine for a problem's bound, by its size. */
export function chooseEngine(problem: PlanProblem, engines: EngineLoaders): Promise<LpEngine> {
  const size = problem.options.reduce((sum, option) => sum + (option.mixKey >= 0 ? SHARED_WEIGHT : 1), 0);
  return size <= MOST_OPTIONS_FOR_GLPK ? engines.glpk() : engines.highs();
}
