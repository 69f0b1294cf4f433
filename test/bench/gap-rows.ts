import { type BenchCall, type BenchRow, atLeast, told } from "./bench-row.ts";
import { type AssignmentResult, assignmentBench } from "./gap-bench.ts";

const SECONDS_EACH = { quick: 8, whole: 20 };
const SAME = 1e-6;

/** How many published instances of generalized assignment end at the published optimum; nothing where the data are absent. */
export async function benchAssignment({ quick, say }: BenchCall): Promise<BenchRow[]> {
  const secondsEach = quick ? SECONDS_EACH.quick : SECONDS_EACH.whole;
  const results = await assignmentBench(() => performance.now(), secondsEach);
  if (!results) {
    say("skipped: the published instances are not beside the project (../shared/checks/gap)");
    return [];
  }
  for (const { name, found, optimum, bound, byBranchAndCut, seconds } of results) {
    const way = byBranchAndCut ? "branch and cut" : "tree of prices";
    say(`${name}: found ${found}, optimum ${optimum}, bound ${bound}, ${way}, ${seconds.toFixed(1)} s`);
  }
  const count = (name: string, holds: (result: AssignmentResult) => boolean) =>
    told(name, results.filter(holds).length, `of ${results.length}`);
  const reached = results.filter(({ found, optimum }) => isSame(found, optimum)).length;
  return [
    atLeast("instances solved to the published optimum", reached, `of ${results.length}`, results.length),
    count("proven to be the optimum", ({ found, bound }) => isSame(found, bound)),
    count("solved by branch and cut alone in a quarter of the time", ({ byBranchAndCut }) => byBranchAndCut),
    told(
      `slowest instance, ${secondsEach} s allowed`,
      Math.max(...results.map((result) => result.seconds)),
      "s",
    ),
  ];
}

const isSame = (one: number, other: number): boolean => Math.abs(one - other) < SAME * Math.abs(other);
