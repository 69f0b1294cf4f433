import { searchSchedule } from "../../core/plan/search/search.ts";
import { jobsProblem } from "../fixtures/jobs-problem.ts";
import { atLeast, atMost, type BenchCall, type BenchRow, told } from "./bench-row.ts";
import { type MakespanInstance, makespanInstances } from "./unrelated-machines.ts";

/** Up to so many jobs the optimum must be reached every time. */
const MUST_REACH_JOBS = 8;
const QUICK_STEP = 16;

/** Optima reached by the search within so many seconds for each instance, and how far it stays above the others. */
export function benchUnrelatedMachines(call: BenchCall, seconds: number): BenchRow[] {
  const all = makespanInstances();
  if (!all) {
    call.say("unrelated machines skipped: the published data is not beside the project");
    return [told("unrelated machines with set-ups: data not there, skipped", 0, "instances")];
  }
  const instances = all.filter((_, index) => !call.quick || index % QUICK_STEP === 0);
  const sizes = [...new Set(instances.map(({ jobCount }) => jobCount))].toSorted((a, b) => a - b);
  return sizes.flatMap((size) =>
    rowsOf(
      instances.filter(({ jobCount }) => jobCount === size),
      size,
      seconds,
    ),
  );
}

function rowsOf(instances: readonly MakespanInstance[], size: number, seconds: number): BenchRow[] {
  let reached = 0;
  let above = 0;
  for (const { name, problem, optimum } of instances) {
    const startMs = performance.now();
    const { cost } = searchSchedule(jobsProblem(problem), null, {
      seed: 1,
      now: () => performance.now(),
      untilMs: startMs + seconds * 1000,
      goodEnough: optimum,
    });
    if (cost < optimum - 1e-6) throw new Error(`${name}: ${cost} is less than the optimum ${optimum}`);
    if (cost <= optimum + 1e-6) reached++;
    above += cost / optimum - 1;
  }
  const name = `${size} jobs on 2 to 5 unrelated machines with set-ups, ${seconds} s each`;
  const gapPct = (above / instances.length) * 100;
  if (size > MUST_REACH_JOBS) {
    return [
      told(`${name}: optimum reached, of ${instances.length}`, reached, "instances"),
      told(`${name}: mean gap`, gapPct, "%"),
    ];
  }
  return [
    atLeast(`${name}: optimum reached, of ${instances.length}`, reached, "instances", instances.length),
    atMost(`${name}: mean gap`, gapPct, "%", 0),
  ];
}
