import { Worker } from "node:worker_threads";
import type { CaseTools } from "../core/purchase/case-desk.ts";
import type { PurchaseJob, PurchaseNews } from "../core/purchase/job-runner.ts";
import type { SampleWeek } from "../core/purchase/sample-week.ts";
import type { ScenarioResult } from "../core/purchase/scenario-job.ts";

/** Threads of Node that run the jobs of a case. The caller closes them. */
export interface PurchaseThreads {
  readonly runJobs: CaseTools["runJobs"];
  readonly runSamples: NonNullable<CaseTools["runSamples"]>;
  readonly close: () => Promise<void>;
}

/** Short-lived objects of a thread are cleared early, so that several threads stay within a few hundred MB. */
const LIMITS = { maxYoungGenerationSizeMb: 16 };

/** Starts threads; `threadFile` is the built `purchase-thread.js`. Each takes the next job as soon as it is free. */
export function startPurchaseThreads(
  count: number,
  threadFile: URL = new URL("./purchase-thread.js", import.meta.url),
): PurchaseThreads {
  const workers = Array.from({ length: count }, () => new Worker(threadFile, { resourceLimits: LIMITS }));
  const runAll = async (
    orders: readonly PurchaseJob[],
    onNews: (index: number, result: ScenarioResult | SampleWeek) => void,
    stopped: () => boolean,
  ): Promise<void> => {
    const queue = orders.entries();
    const work = async (worker: Worker): Promise<void> => {
      for (const [index, order] of queue) {
        if (stopped()) return;
        onNews(index, await runOn(worker, order));
      }
    };
    await Promise.all(workers.map(work));
  };
  return {
    // A thread answers a job of one kind with a result of that kind.
    runJobs: (jobs, onResult, stopped) =>
      runAll(
        jobs.map((job) => ({ kind: "scenario", job })),
        (index, result) => onResult(index, result as ScenarioResult),
        stopped,
      ),
    runSamples: (jobs, onResult, stopped) =>
      runAll(
        jobs.map((job) => ({ kind: "sample", job })),
        (index, result) => onResult(index, result as SampleWeek),
        stopped,
      ),
    close: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

function runOn(worker: Worker, order: PurchaseJob): Promise<ScenarioResult | SampleWeek> {
  return new Promise((resolve, reject) => {
    worker.once("error", reject);
    worker.once("message", (news: PurchaseNews) => {
      worker.off("error", reject);
      if ("result" in news) resolve(news.result);
      else reject(new Error(`a job of the case failed: ${news.fault}`));
    });
    worker.postMessage(order);
  });
}
