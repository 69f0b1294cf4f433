import type { GLPK, LP, Options, Result } from "glpk.js/node";
import { isInteger, type LinearProgram, type LpAnswer, type LpEngine } from "../linear-program.ts";
import { withoutValues } from "./without-values.ts";

/** Loads GLPK (simplex; branch and bound for whole numbers, without a proven bound when it stops early). */
export async function loadGlpk(): Promise<LpEngine> {
  const { default: loadModule } = await import("glpk.js/node");
  const glpk = await loadModule();
  return { name: "glpk", solve: (program, seconds) => solve(glpk, program, seconds) };
}

/** Status codes of GLPK's own manual: basic solution optimal, none feasible, unbounded. */
const NO_FEASIBLE = 4;
const OPTIMAL = 5;
const UNBOUNDED = 6;
const MAX_SECONDS = 2_000_000;

function solve(glpk: GLPK, program: LinearProgram, seconds: number): LpAnswer {
  if (program.cols === 0 || program.rows === 0)
    throw new RangeError("a linear program needs columns and rows");
  const options: Options = {
    // Presolve loses row prices; branch and bound does not start without it.
    presol: isInteger(program),
    msglev: glpk.GLP_MSG_OFF,
    tmlim: Math.min(MAX_SECONDS, Math.max(1, Math.ceil(seconds))),
  };
  const { result } = glpk.solve(asModel(glpk, program), options);
  return isInteger(program) ? integerAnswer(program, result) : linearAnswer(program, result);
}

function linearAnswer(program: LinearProgram, result: Result["result"]): LpAnswer {
  if (result.status !== OPTIMAL) return withoutValues(program, statusOf(result.status));
  const values = columnValues(program, result);
  const rowPrices = new Float64Array(program.rows);
  for (let row = 0; row < program.rows; row++) rowPrices[row] = result.dual?.[`r${row}`] ?? 0;
  return {
    status: "optimal",
    objective: result.z,
    bound: result.z,
    values,
    rowPrices,
    reducedCosts: reducedCosts(program, rowPrices),
  };
}

function integerAnswer(program: LinearProgram, result: Result["result"]): LpAnswer {
  if (result.status !== OPTIMAL) return withoutValues(program, statusOf(result.status));
  const answer = withoutValues(program, "optimal");
  // GLPK searched the tree to its end, so the objective is the bound.
  return { ...answer, objective: result.z, bound: result.z, values: columnValues(program, result) };
}

function statusOf(status: number): LpAnswer["status"] {
  if (status === NO_FEASIBLE) return "infeasible";
  return status === UNBOUNDED ? "unbounded" : "time-limit";
}

function columnValues(program: LinearProgram, result: Result["result"]): Float64Array {
  const values = new Float64Array(program.cols);
  for (let col = 0; col < program.cols; col++) values[col] = result.vars[`c${col}`] ?? 0;
  return values;
}

/** What GLPK's wrapper leaves out: cost - A' price. */
function reducedCosts(program: LinearProgram, rowPrices: Float64Array): Float64Array {
  const reduced = Float64Array.from(program.cost);
  for (let col = 0; col < program.cols; col++) {
    for (let at = program.start[col] ?? 0; at < (program.start[col + 1] ?? 0); at++) {
      reduced[col]! -= (program.value[at] ?? 0) * (rowPrices[program.index[at] ?? 0] ?? 0);
    }
  }
  return reduced;
}

function asModel(glpk: GLPK, program: LinearProgram): LP {
  const vars = Array.from(program.cost, (coef, col) => ({ name: `c${col}`, coef }));
  const model: LP = {
    name: "program",
    objective: { direction: glpk.GLP_MIN, name: "cost", vars },
    subjectTo: Array.from(program.rowLower, (lower, row) => ({
      name: `r${row}`,
      vars: [],
      bnds: boundOf(glpk, lower, program.rowUpper[row] ?? Infinity),
    })),
    bounds: Array.from(program.colLower, (lower, col) => ({
      name: `c${col}`,
      ...boundOf(glpk, lower, program.colUpper[col] ?? Infinity),
    })),
  };
  for (let col = 0; col < program.cols; col++) {
    for (let at = program.start[col] ?? 0; at < (program.start[col + 1] ?? 0); at++) {
      model.subjectTo[program.index[at] ?? 0]?.vars.push({ name: `c${col}`, coef: program.value[at] ?? 0 });
    }
  }
  if (program.integer)
    model.generals = vars.filter((_, col) => program.integer?.[col]).map(({ name }) => name);
  return model;
}

function boundOf(glpk: GLPK, lower: number, upper: number): { type: number; lb: number; ub: number } {
  const hasLower = lower > Number.NEGATIVE_INFINITY;
  const hasUpper = upper < Number.POSITIVE_INFINITY;
  if (!hasLower && !hasUpper) return { type: glpk.GLP_FR, lb: 0, ub: 0 };
  if (!hasUpper) return { type: glpk.GLP_LO, lb: lower, ub: 0 };
  if (!hasLower) return { type: glpk.GLP_UP, lb: 0, ub: upper };
  return { type: lower === upper ? glpk.GLP_FX : glpk.GLP_DB, lb: lower, ub: upper };
}
