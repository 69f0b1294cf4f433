import highsModule from "highs";
import type { LinearProgram } from "../linear-program.ts";
import { openHighsModel } from "./highs.ts";

/** An interval, ends included. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

/** How far data may move one at a time: costs with the plan unchanged, row limits with the prices unchanged. */
export interface LpRanges {
  readonly cost: readonly Range[];
  readonly rowLimit: readonly Range[];
}

const loadModule = highsModule as unknown as typeof highsModule.default;
const BASIC = 1;

/**
 * Sensitivity of a linear program's optimum. For a row whose limit is not met HiGHS ranges its activity, not its limit: there
 * the limit may move from the activity to infinity ("at most") or from minus infinity to the activity ("at least"), as
 * textbooks have it. Throws where the program has no optimum.
 */
export async function loadHighsRanging(): Promise<(program: LinearProgram) => LpRanges> {
  const highs = await loadModule();
  return (program) => {
    const model = openHighsModel(highs, program);
    try {
      model.run();
      const { rowStatus } = model.getBasis();
      const activity = model.getSolution().rowValue;
      const { colCostUp, colCostDown, rowBoundUp, rowBoundDown } = model.getRanging();
      const cost = Array.from(program.cost, (_, col) => ({
        from: finite(colCostDown.value[col]!),
        to: finite(colCostUp.value[col]!),
      }));
      const rowLimit = Array.from(program.rowLower, (lower, row): Range => {
        const value = activity[row]!;
        if (rowStatus[row] !== BASIC)
          return { from: finite(rowBoundDown.value[row]!), to: finite(rowBoundUp.value[row]!) };
        return lower === -Infinity ? { from: value, to: Infinity } : { from: -Infinity, to: value };
      });
      return { cost, rowLimit };
    } finally {
      model.dispose();
    }
  };
}

/** HiGHS writes very large numbers for "no end". */
function finite(value: number): number {
  return Math.abs(value) >= 1e20 ? Math.sign(value) * Infinity : value;
}
