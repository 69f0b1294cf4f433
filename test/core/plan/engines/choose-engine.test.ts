import { expect, test } from "vitest";
import { chooseEngine } from "../../../../core/plan/engines/choose-engine.ts";
import { loadGlpk } from "../../../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../../../core/plan/engines/highs.ts";
import { tinyProblem } from "../../../fixtures/tiny-problem.ts";

const engines = { glpk: loadGlpk, highs: loadHighs };

async function named(options: number, mixKey: number): Promise<string> {
  const problem = tinyProblem(1);
  const option = { ...problem.options[0]!, mixKey };
  const sized = { ...problem, options: Array.from({ length: options }, () => option) };
  return (await chooseEngine(sized, engines)).name;
}

test("small problems go to GLPK, large ones to HiGHS, and options that share platforms weigh more", async () => {
  expect([await named(400, -1), await named(401, -1)]).toEqual(["glpk", "highs"]);
  expect([await named(40, 0), await named(41, 0)]).toEqual(["glpk", "highs"]);
});
