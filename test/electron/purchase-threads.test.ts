import { existsSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { lineSizes } from "../../core/purchase/line-sizes.ts";
import { runScenarioJob } from "../../core/purchase/run-scenario.ts";
import type { ScenarioResult } from "../../core/purchase/scenario-job.ts";
import { startPurchaseThreads } from "../../electron/purchase-threads.ts";
import { aStore, MONDAY_MIN, toyJob, toyLine, toyWorks } from "../core/purchase/a-toy-works.ts";

const BUILT = new URL("../../dist/purchase-thread.js", import.meta.url);
const JOBS = [3, 5, 8, 30].map((count) =>
  toyJob(
    toyWorks(1),
    Array.from({ length: count }, () => toyLine()),
  ),
);
const never = (): boolean => false;

/** Threads run the built file: `npm run build` makes it, and without it there is nothing to test. */
describe.skipIf(!existsSync(BUILT))("threads for the jobs of a case", () => {
  test("give what the same jobs give here, each once", async () => {
    const threads = startPurchaseThreads(2, BUILT);
    const results: ScenarioResult[] = [];
    let count = 0;
    await threads.runJobs(
      JOBS,
      (index, result) => {
        results[index] = result;
        count++;
      },
      never,
    );
    await threads.close();
    const store = await aStore();
    expect(results).toEqual(JOBS.map((job) => runScenarioJob(job, store)));
    expect(count).toBe(JOBS.length);
  });

  test("plan sampled weeks too", async () => {
    const threads = startPurchaseThreads(1, BUILT);
    const lines = [toyLine()];
    const job = {
      shop: toyWorks(1),
      week: { lines },
      fromMin: MONDAY_MIN,
      seed: 1,
      lineSizes: lineSizes(lines),
    };
    const found: boolean[] = [];
    await threads.runSamples([job], (_, { isComparable }) => found.push(isComparable), never);
    await threads.close();
    expect(found).toEqual([true]);
  });

  test("start no further job once somebody stops", async () => {
    const threads = startPurchaseThreads(1, BUILT);
    let done = 0;
    await threads.runJobs(
      JOBS,
      () => done++,
      () => done >= 2,
    );
    await threads.close();
    expect(done).toBe(2);
  });

  test("a job that fails fails the run, in words", async () => {
    const threads = startPurchaseThreads(1, BUILT);
    const broken = { ...JOBS[0]!, shop: { ...toyWorks(1), timeZone: "Nowhere/Land" } };
    await expect(threads.runJobs([broken], () => {}, never)).rejects.toThrow("a job of the case failed");
    await threads.close();
  });
});
