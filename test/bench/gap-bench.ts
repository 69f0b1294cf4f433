import { existsSync } from "node:fs";
import { loadHighs } from "../../core/plan/engines/highs.ts";
import { assignmentProgram, GAP_FOLDER, readAssignments } from "../fixtures/generalized-assignment.ts";

/** What branch and cut found for one published instance. */
export interface AssignmentResult {
  readonly name: string;
  readonly optimum: number;
  readonly found: number;
  /** proven: no assignment is better */
  readonly bound: number;
  readonly seconds: number;
}

/**
 * Solves every published instance of generalized assignment as an integer program (Cattrysse, Salomon & Van Wassenhove 1994;
 * Chu & Beasley 1997; Yagiura, Ibaraki & Glover 2004; through OR-Library). Null where the data are absent.
 */
export async function assignmentBench(
  now: () => number,
  secondsEach: number,
): Promise<AssignmentResult[] | null> {
  if (!existsSync(GAP_FOLDER)) return null;
  const engine = await loadHighs();
  return readAssignments().map((instance) => {
    const startMs = now();
    const answer = engine.solve(assignmentProgram(instance), secondsEach);
    const sign = instance.sense === "max" ? -1 : 1;
    return {
      name: instance.name,
      optimum: instance.optimum,
      found: sign * answer.objective,
      bound: sign * answer.bound,
      seconds: (now() - startMs) / 1000,
    };
  });
}
