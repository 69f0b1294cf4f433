import type { Highs, Model } from "highs";
import { isInteger, type LinearProgram, type LpAnswer, type LpEngine } from "../linear-program.ts";
import { withoutValues } from "./without-values.ts";

/** Loads HiGHS (dual simplex; branch and cut with a proven bound for whole numbers). */
export async function loadHighs(): Promise<LpEngine> {
  const { default: highsModule } = await import("highs");
  // The package's types describe its CommonJS face; what is imported here is the function itself.
  const loadModule = highsModule as unknown as () => Promise<Highs>;
  const highs = await loadModule();
  return { name: "highs", solve: (program, seconds) => solve(highs, program, seconds) };
}

/** Model status codes of the HiGHS library. */
const OPTIMAL = 7;
const INFEASIBLE = 8;
const UNBOUNDED_OR_INFEASIBLE = 9;
const UNBOUNDED = 10;

function solve(highs: Highs, program: LinearProgram, seconds: number): LpAnswer {
  if (program.cols === 0 || program.rows === 0)
    throw new RangeError("a linear program needs columns and rows");
  const model = openHighsModel(highs, program);
  try {
    model.options.set("time_limit", Math.max(0.05, seconds));
    model.run();
    return readAnswer(model, program);
  } finally {
    // Models live in the solver's own memory and are never collected.
    model.dispose();
  }
}

/** A HiGHS model of the program, silent. The caller disposes it. */
export function openHighsModel(highs: Highs, program: LinearProgram): Model {
  const model = highs.createModel({
    numCols: program.cols,
    numRows: program.rows,
    colCost: program.cost,
    colLower: program.colLower,
    colUpper: program.colUpper,
    rowLower: program.rowLower,
    rowUpper: program.rowUpper,
    matrix: {
      format: "csc",
      numRows: program.rows,
      numCols: program.cols,
      starts: program.start,
      indices: program.index,
      values: program.value,
    },
    ...(program.integer ? { integrality: Int32Array.from(program.integer) } : {}),
  });
  model.options.set("output_flag", false);
  return model;
}

function readAnswer(model: Model, program: LinearProgram): LpAnswer {
  const status = statusOf(model.getModelStatus());
  const { colValue, rowDual, colDual } = model.getSolution();
  if (isInteger(program)) return integerAnswer(model, program, status, colValue);
  if (status !== "optimal") return withoutValues(program, status);
  const objective = model.getObjectiveValue();
  return { status, objective, bound: objective, values: colValue, rowPrices: rowDual, reducedCosts: colDual };
}

function integerAnswer(
  model: Model,
  program: LinearProgram,
  status: LpAnswer["status"],
  values: Float64Array,
): LpAnswer {
  const answer = withoutValues(program, status);
  const bound = Number(model.info.get("mip_dual_bound"));
  if (status === "infeasible" || status === "unbounded") return answer;
  const hasValues = model.info.get("primal_solution_status") === FEASIBLE_POINT;
  if (!hasValues) return { ...answer, bound };
  return { ...answer, objective: model.getObjectiveValue(), bound, values };
}

/** HiGHS's code for "the values are a feasible solution". */
const FEASIBLE_POINT = 2;

function statusOf(code: number): LpAnswer["status"] {
  if (code === OPTIMAL) return "optimal";
  if (code === INFEASIBLE || code === UNBOUNDED_OR_INFEASIBLE) return "infeasible";
  return code === UNBOUNDED ? "unbounded" : "time-limit";
}
