import { readFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { loadGlpk } from "../core/plan/engines/glpk.ts";
import type { CaseTools, ResultCache } from "../core/purchase/case-desk.ts";
import {
  type CaseStudy,
  MOST_BUNDLES,
  SIDE,
  studyCase,
  type StudyTools,
} from "../core/purchase/case-study.ts";
import { type CaseEvaluation, type CaseProgress, evaluateCase } from "../core/purchase/evaluate.ts";
import type { SampleGap } from "../core/purchase/sample-plans.ts";
import type { SampleWeek } from "../core/purchase/sample-week.ts";
import type { ScenarioResult } from "../core/purchase/scenario-job.ts";
import { wholeMoney } from "../core/report/case-view.ts";
import type { PurchaseCase } from "../core/shop/purchase-case.ts";
import type { Shop } from "../core/shop/shop.ts";
import { onInterrupt } from "./interrupt.ts";
import { type PurchaseThreads, startPurchaseThreads } from "./purchase-threads.ts";
import { openResultFiles, type ResultFiles } from "./store/result-files.ts";
import { sha256 } from "./store/sha256.ts";

export interface CaseRun {
  readonly shop: Shop;
  readonly purchaseCase: PurchaseCase;
  /** true: no weeks planned in full, no break-evens, no bundle */
  readonly quick: boolean;
  /** folder of results that are known already */
  readonly resultsFolder: string;
  readonly onProgress: (
    stage: CaseProgress["stage"] | "other demands, prices and bundles",
    done: number,
    all: number | null,
  ) => void;
  readonly onRough: (evaluation: CaseEvaluation) => void;
}

export interface CaseRunAnswer {
  readonly study: CaseStudy;
  readonly gap: SampleGap | null;
  readonly isStopped: boolean;
}

/** More threads than this would hold more memory than they save time. */
const MOST_THREADS = 16;

/**
 * Works out one case on threads of Node; Ctrl+C ends it and keeps what is answered. The answer and the results that it follows from
 * are remembered in files, so that the same question is answered at once and a similar one sooner.
 */
export async function runCase(run: CaseRun): Promise<CaseRunAnswer> {
  const files = openResultFiles(run.resultsFolder, programVersion());
  const key = `answer/${sha256(JSON.stringify([run.shop, run.purchaseCase, run.quick]))}`;
  // Files of this version hold what this version wrote.
  const known = files.get(key) as CaseRunAnswer | undefined;
  if (known) return known;
  const answer = await workOut(run, files);
  if (!answer.isStopped) files.set(key, answer);
  files.trim();
  return answer;
}

async function workOut(run: CaseRun, files: ResultFiles): Promise<CaseRunAnswer> {
  const { shop, purchaseCase, quick } = run;
  const threads = startPurchaseThreads(Math.min(MOST_THREADS, availableParallelism()));
  let isStopped = false;
  onInterrupt(() => void (isStopped = true));
  const tools = toolsOf(threads, files, () => isStopped);
  try {
    const evaluation = await evaluateCase(shop, purchaseCase, {
      ...tools,
      ...(quick ? {} : { runSamples: rememberedSamples(threads.runSamples, files) }),
      onProgress: ({ stage, jobsDone, jobs }) => run.onProgress(stage, jobsDone, jobs),
      onRough: run.onRough,
    });
    const engine = await loadGlpk();
    const ask = (side: StudyTools["side"]): Promise<CaseStudy> =>
      studyCase(shop, purchaseCase, evaluation, {
        ...counted(tools, (done) => run.onProgress("other demands, prices and bundles", done, null)),
        engine,
        gap: evaluation.gap,
        money: wholeMoney(shop.currency),
        side,
        mostBundles: MOST_BUNDLES,
      });
    const study = await ask(quick || isStopped ? null : SIDE);
    // Questions beside the main one that were stopped half-way say nothing.
    return { study: isStopped ? await ask(null) : study, gap: evaluation.gap, isStopped };
  } finally {
    onInterrupt(null);
    await threads.close();
  }
}

/** Built files name what they import by its content, so the hash of these two stands for all code that an answer follows from. */
function programVersion(): string {
  const own = [import.meta.url, new URL("./purchase-thread.js", import.meta.url)];
  return sha256(own.map((url) => readFileSync(new URL(url), "utf8")).join("\n"));
}

function toolsOf(threads: PurchaseThreads, files: ResultFiles, stopped: () => boolean): CaseTools {
  const cache: ResultCache = { get: (key) => files.get(key) as ScenarioResult | undefined, set: files.set };
  return { runJobs: threads.runJobs, hash: sha256, cache, stopped };
}

function rememberedSamples(
  runSamples: PurchaseThreads["runSamples"],
  files: ResultFiles,
): PurchaseThreads["runSamples"] {
  return async (jobs, onResult, stopped) => {
    const missing = jobs.flatMap((job, index) => {
      const key = `sample/${sha256(JSON.stringify(job))}`;
      const known = files.get(key) as SampleWeek | undefined;
      if (known === undefined) return [{ job, index, key }];
      onResult(index, known);
      return [];
    });
    const take = (at: number, result: SampleWeek): void => {
      const { index, key } = missing[at]!;
      files.set(key, result);
      onResult(index, result);
    };
    if (missing.length > 0)
      await runSamples(
        missing.map(({ job }) => job),
        take,
        stopped,
      );
  };
}

/** Tools that tell how many jobs they have run. */
function counted(tools: CaseTools, onDone: (done: number) => void): CaseTools {
  let done = 0;
  return {
    ...tools,
    runJobs: (jobs, onResult, stopped) =>
      tools.runJobs(
        jobs,
        (index, result) => {
          onResult(index, result);
          onDone(++done);
        },
        stopped,
      ),
  };
}
