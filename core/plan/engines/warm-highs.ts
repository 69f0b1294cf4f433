import type { Highs, Model } from "highs";
import type { LinearProgram } from "../linear-program.ts";
import { openHighsModel } from "./highs.ts";

/** What is new in a program that is solved again. Everything not named stays as it was. */
export interface ProgramNews {
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly colUpper: Float64Array;
  readonly cost: Float64Array;
  readonly entries: readonly { readonly row: number; readonly col: number; readonly value: number }[];
}

/** Values of an optimum. */
export interface WarmAnswer {
  readonly objective: number;
  readonly values: Float64Array;
}

/** A linear program that stays in the solver, so that a like one starts from the last optimum. The caller closes it. */
export interface WarmProgram {
  /** forgets the last optimum: what follows depends on the news and the seed alone */
  readonly restart: (seed: number) => void;
  readonly change: (news: ProgramNews) => void;
  /** null where there is no optimum */
  readonly solve: () => WarmAnswer | null;
  readonly close: () => void;
}

/** Opens programs in the solver. */
export interface WarmEngine {
  readonly open: (program: LinearProgram) => WarmProgram;
}

const OPTIMAL = 7;

/** Loads HiGHS for programs that are solved again and again with other numbers (dual simplex from the last basis). */
export async function loadWarmHighs(): Promise<WarmEngine> {
  const { default: highsModule } = await import("highs");
  // The package's types describe its CommonJS face; what is imported here is the function itself.
  const loadModule = highsModule as unknown as () => Promise<Highs>;
  const highs = await loadModule();
  return { open: (program) => openWarm(highs, program) };
}

function openWarm(highs: Highs, program: LinearProgram): WarmProgram {
  const { rows, cols } = program;
  let model = openModel(highs, program, 0);
  const allRows = { kind: "range", from: 0, to: rows - 1 } as const;
  const allCols = { kind: "range", from: 0, to: cols - 1 } as const;
  const lower = new Float64Array(cols);
  return {
    restart: (seed) => {
      // A model that is only cleared keeps its scaling, and with it traces of what it solved before.
      model.dispose();
      model = openModel(highs, program, seed);
    },
    change: (news) => {
      model.changeRowsBounds(allRows, news.rowLower, news.rowUpper);
      model.changeColsBounds(allCols, lower, news.colUpper);
      model.changeColsCost(allCols, news.cost);
      for (const { row, col, value } of news.entries) model.changeCoefficient(row, col, value);
    },
    solve: () => {
      model.run();
      if (model.getModelStatus() !== OPTIMAL) return null;
      return {
        objective: model.getObjectiveValue(),
        values: Float64Array.from(model.getSolution().colValue),
      };
    },
    close: () => model.dispose(),
  };
}

function openModel(highs: Highs, program: LinearProgram, seed: number): Model {
  const model = openHighsModel(highs, program);
  // Reducing the program first would throw the last optimum away.
  model.options.set("presolve", "off");
  model.options.set("random_seed", seed % MOST_SEED);
  return model;
}

/** Largest seed that the solver takes, and one. */
const MOST_SEED = 2_147_483_647;
