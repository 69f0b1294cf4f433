import { searchSchedule } from "../../core/plan/search/search.ts";
import { jobsProblem } from "../fixtures/jobs-problem.ts";
import { type BenchCall, type BenchRow, told } from "./bench-row.ts";
import { setUpInstances } from "./weighted-tardiness-setups.ts";

const QUICK_INSTANCES = 2;

/** Totals that the search reaches within so many seconds each; the data lists none to compare with. */
export function benchWeightedTardinessSetUps(call: BenchCall, seconds: number): BenchRow[] {
  const all = setUpInstances();
  if (!all) {
    call.say("weighted tardiness with set-ups skipped: the published data is not beside the project");
    return [told("weighted tardiness with set-ups: data not there, skipped", 0, "instances")];
  }
  return all.slice(0, call.quick ? QUICK_INSTANCES : all.length).map(({ number, problem }) => {
    const startMs = performance.now();
    const { cost } = searchSchedule(jobsProblem(problem), null, {
      seed: 1,
      now: () => performance.now(),
      untilMs: startMs + seconds * 1000,
      goodEnough: 0,
    });
    return told(`60 jobs with set-ups, instance ${number}, ${seconds} s: weighted tardiness`, cost, "");
  });
}
