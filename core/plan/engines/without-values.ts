import type { LinearProgram, LpAnswer } from "../linear-program.ts";

/** The answer of an engine that has no values to give, only a status. Example: status "infeasible", objective NaN. */
export function withoutValues(program: LinearProgram, status: LpAnswer["status"]): LpAnswer {
  return {
    status,
    objective: Number.NaN,
    bound: Number.NEGATIVE_INFINITY,
    values: new Float64Array(program.cols),
    rowPrices: new Float64Array(program.rows),
    reducedCosts: new Float64Array(program.cols),
  };
}
