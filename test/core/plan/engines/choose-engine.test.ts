import { expect, test } from "vitest";
import { chooseEngine } from "../../../../core/plan/engines/choose-engine.ts";
import { loadGlpk } from "../../../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../../../core/plan/engines/highs.ts";
import { tinyProblem } from "../../../fixtures/tiny-problem.ts";

const engines = { glpk: await loadGlpk(), highs: await loadHighs() };

function named(options: number, mixKey: number): string {
  const problem = tinyProblem(1);
  const option = { ...problem.options[0]!, mixKey };
  return chooseEngine({ ...problem, options: Array.from({ length: options }, () => option) }, engines).name;
}

test("small problems go to GLPK, large ones to HiGHS, and options that share platforms weigh more", () => {
  expect([named(400, -1), named(401, -1)]).toEqual(["glpk", "highs"]);
  expect([named(40, 0), named(41, 0)]).toEqual(["glpk", "highs"]);
});
