import { searchSchedule } from "../../core/plan/search/search.ts";
import { jobsProblem } from "../fixtures/jobs-problem.ts";
import { atLeast, type BenchCall, type BenchRow, told } from "./bench-row.ts";
import { tardinessInstances } from "./weighted-tardiness.ts";

/** Instances of 125 on which the listed total must be reached. */
const MUST_REACH = { 40: 120, 50: 115 } as const;
/** Quick runs take every so many-th instance. */
const QUICK_STEP = 25;

/** Listed totals reached by the search within so many seconds for each instance; it ends early where it reaches one. */
export function benchWeightedTardiness(call: BenchCall, seconds: number): BenchRow[] {
  return ([40, 50] as const).flatMap((size) => {
    const all = tardinessInstances(size);
    if (!all) return [skipped(call, size)];
    const instances = all.filter((_, index) => !call.quick || index % QUICK_STEP === 0);
    let reached = 0;
    let worst = 0;
    for (const { name, jobs, listed } of instances) {
      const startMs = performance.now();
      const { cost } = searchSchedule(jobsProblem({ jobs }), null, {
        seed: 1,
        now: () => performance.now(),
        untilMs: startMs + seconds * 1000,
        goodEnough: listed,
      });
      if (cost < listed - 1e-6) throw new Error(`${name}: ${cost} is less than the listed ${listed}`);
      if (cost <= listed + 1e-6) reached++;
      else worst = Math.max(worst, cost / Math.max(1, listed) - 1);
    }
    const share = (MUST_REACH[size] * instances.length) / all.length;
    return [
      atLeast(
        `wt${size}, ${seconds} s each: listed total reached, of ${instances.length}`,
        reached,
        "instances",
        Math.floor(share),
      ),
      told(`wt${size}: worst above the listed total`, worst * 100, "%"),
    ];
  });
}

function skipped(call: BenchCall, size: number): BenchRow {
  call.say(`wt${size} skipped: the published data is not beside the project`);
  return told(`wt${size}: data not there, skipped`, 0, "instances");
}
