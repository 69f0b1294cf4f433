import { existsSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkAnswer } from "../../core/plan/engines/check-answer.ts";
import { loadHighs } from "../../core/plan/engines/highs.ts";
import { assignmentProgram, GAP_FOLDER, readAssignments } from "../fixtures/generalized-assignment.ts";

/**
 * Generalized assignment: jobs to machines with limited capacity, at least cost (or most profit). Instances of Cattrysse,
 * Salomon & Van Wassenhove 1994 and Chu & Beasley 1997 through OR-Library, with their published optima; the data lie beside
 * the project. The larger ones run in the bench.
 */
const SMALL = ["gap1-0", "gap3-2"];

describe.skipIf(!existsSync(GAP_FOLDER))(
  "generalized assignment (skipped where ../shared/checks/gap is absent)",
  () => {
    test.each(SMALL)("%s: branch and cut proves the published optimum", async (name) => {
      const instance = readAssignments().find((each) => each.name === name);
      if (!instance) throw new Error(`no such instance: ${name}`);
      const program = assignmentProgram(instance);
      const answer = (await loadHighs()).solve(program, 20);
      expect(answer.status).toBe("optimal");
      expect(checkAnswer(program, answer)).toEqual([]);
      const sign = instance.sense === "max" ? -1 : 1;
      expect(answer.objective * sign).toBeCloseTo(instance.optimum, 6);
      expect(answer.bound).toBeLessThanOrEqual(answer.objective + 1e-6);
    });
  },
);
