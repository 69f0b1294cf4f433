import { expect, test } from "vitest";
import { JobRunner } from "../../../core/purchase/job-runner.ts";
import { lineSizes } from "../../../core/purchase/line-sizes.ts";
import { runScenarioJob } from "../../../core/purchase/run-scenario.ts";
import { aStore, MONDAY_MIN, toyJob, toyLine, toyWorks } from "./a-toy-works.ts";

test("a runner answers each kind of job with its kind of result", async () => {
  const runner = new JobRunner();
  const lines = [toyLine(), toyLine()];
  const job = toyJob(toyWorks(1), lines);
  expect(await runner.run({ kind: "scenario", job })).toEqual({
    result: runScenarioJob(job, await aStore()),
  });
  const sample = {
    shop: toyWorks(1),
    week: { lines },
    fromMin: MONDAY_MIN,
    seed: 1,
    lineSizes: lineSizes(lines),
  };
  expect(await runner.run({ kind: "sample", job: sample })).toMatchObject({ result: { isComparable: true } });
});

test("what goes wrong in a job is news, and the next job runs", async () => {
  const runner = new JobRunner();
  const job = toyJob(toyWorks(1), [toyLine()]);
  const broken = { ...job, shop: { ...job.shop, timeZone: "Nowhere/Land" } };
  expect(await runner.run({ kind: "scenario", job: broken })).toHaveProperty("fault");
  expect(await runner.run({ kind: "scenario", job })).toHaveProperty("result");
});
