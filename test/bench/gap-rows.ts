import { type BenchCall, type BenchRow, atLeast, told } from "./bench-row.ts";
import { assignmentBench } from "./gap-bench.ts";

const SECONDS_EACH = { quick: 2, whole: 20 };
const SAME = 1e-6;

/** How many published instances of generalized assignment end at the published optimum; nothing where the data are absent. */
export async function benchAssignment({ quick, say }: BenchCall): Promise<BenchRow[]> {
  const secondsEach = quick ? SECONDS_EACH.quick : SECONDS_EACH.whole;
  const results = await assignmentBench(() => performance.now(), secondsEach);
  if (!results) {
    say("skipped: the published instances are not beside the project (../shared/checks/gap)");
    return [];
  }
  const missed = results.filter(
    ({ found, optimum }) => !(Math.abs(found - optimum) < SAME * Math.abs(optimum)),
  );
  for (const { name, found, optimum, bound } of missed)
    say(`${name}: found ${found}, optimum ${optimum}, bound ${bound}`);
  const slowestS = Math.max(...results.map(({ seconds }) => seconds));
  return [
    atLeast(
      "instances solved to the published optimum",
      results.length - missed.length,
      `of ${results.length}`,
      results.length,
    ),
    told(`slowest instance, ${secondsEach} s allowed`, slowestS, "s"),
  ];
}
