/**
 * A linear program as data: minimise cost . x, subject to rowLower <= A x <= rowUpper and colLower <= x <= colUpper. Infinity
 * stands for "no bound". A is stored by columns (compressed): the entries of column j are `start[j]` up to `start[j + 1]`.
 * To maximise, negate the costs.
 */
export interface LinearProgram {
  readonly cols: number;
  readonly rows: number;
  readonly cost: Float64Array;
  readonly colLower: Float64Array;
  readonly colUpper: Float64Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly start: Int32Array;
  readonly index: Int32Array;
  readonly value: Float64Array;
  /** columns that must be whole numbers; none given: all continuous */
  readonly integer?: Uint8Array;
}

/** Says whether some columns must be whole numbers. Example: flags 0 and 1: true; flags 0 and 0, or none given: false. */
export function isInteger({ integer }: LinearProgram): boolean {
  return integer?.some((flag) => flag !== 0) ?? false;
}

/**
 * An engine's answer. For "optimal": values by column, price of each row (change of the objective per unit more of the
 * right-hand side), reduced cost of each column (cost - A' price). For integer programs prices and reduced costs are zero
 * and `bound` is the proven dual bound (-Infinity where the engine has none); for linear ones bound = objective.
 */
export interface LpAnswer {
  readonly status: "optimal" | "infeasible" | "unbounded" | "time-limit";
  readonly objective: number;
  readonly bound: number;
  readonly values: Float64Array;
  readonly rowPrices: Float64Array;
  readonly reducedCosts: Float64Array;
}

/** Loads and runs one solver. Both engines answer alike; the user never chooses. */
export interface LpEngine {
  readonly name: "glpk" | "highs";
  /** Solves from scratch. `seconds` is the time limit. */
  solve(program: LinearProgram, seconds: number): LpAnswer;
}
