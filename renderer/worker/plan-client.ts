import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { PlanProgress } from "../../core/plan/plan-week.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { PlanMessage, PlanNews, PlanOptions } from "./messages.ts";

/*
 * How a page plans:
 *   warmUpPlanning();                                       // once, after the first paint
 *   const run = startPlanning(unwrap(shop), { from: "2026-11-30T00:00", days: 7, seconds: 10, seed: 1, gapPct: 0 }, show);
 *   run.stop();                                             // the best plan so far comes as the result, status "stopped"
 *   const plan = await run.result;                          // rejects with PlanningEnded; its message is for the user
 * Entries with errors are set aside as on the command line; orders among them are `unplanned` in the plan.
 */

export type { PlanOptions };

export interface PlanningRun {
  readonly result: Promise<PlanDocument>;
  /** The first call keeps the best plan, as soon as the step in hand is done; a second one ends at once, without a plan. */
  readonly stop: () => void;
}

/** No plan came of it; the message says why in a sentence for people. */
export class PlanningEnded extends Error {}

const STOPPED = "Planning was stopped before there was a plan to keep.";

let warm: Worker | null = null;
let current: WorkerRun | null = null;
let runs = 0;

/** Starts the worker and its engine ahead of the first run. */
export function warmUpPlanning(): void {
  warmWorker();
}

/** Plans the shop in the worker. The shop is plain data (unwrap a store first). A run still going on is ended. */
export function startPlanning(
  shop: Shop,
  options: PlanOptions,
  onProgress: (progress: PlanProgress) => void,
): PlanningRun {
  current?.end("Another planning run was started.");
  const run = new WorkerRun(warmWorker(), onProgress);
  current = run;
  run.send(shop, options);
  return { result: run.result, stop: () => run.stop() };
}

function warmWorker(): Worker {
  warm ??= new Worker(new URL("./plan-worker.ts", import.meta.url), { type: "module" });
  return warm;
}

/** One run in the worker, from its message to its end, however it ends. */
class WorkerRun {
  readonly result: Promise<PlanDocument>;
  private readonly id = ++runs;
  private readonly worker: Worker;
  private readonly over = new AbortController();
  private readonly cell = globalThis.crossOriginIsolated ? new SharedArrayBuffer(4) : null;
  private reject: (reason: PlanningEnded) => void = () => undefined;
  private isAskedToStop = false;

  constructor(worker: Worker, onProgress: (progress: PlanProgress) => void) {
    this.worker = worker;
    this.result = new Promise<PlanDocument>((resolve, reject) => {
      this.reject = reject;
      const { signal } = this.over;
      const hear = ({ data }: MessageEvent<PlanNews>): void => {
        if (data.run !== this.id) return;
        if (data.kind === "progress") return onProgress(data.progress);
        this.finish();
        if (data.kind === "plan") resolve(data.plan);
        else reject(new PlanningEnded(data.sentence));
      };
      worker.addEventListener("message", hear, { signal });
      worker.addEventListener("error", ({ message }) => this.end(`The planning worker failed: ${message}`), {
        signal,
      });
    });
  }

  send(shop: Shop, options: PlanOptions): void {
    this.worker.postMessage({ run: this.id, shop, options, stop: this.cell } satisfies PlanMessage);
  }

  stop(): void {
    // Without shared memory a busy worker cannot be told anything.
    if (this.isAskedToStop || this.cell === null) return this.end(STOPPED);
    this.isAskedToStop = true;
    Atomics.store(new Int32Array(this.cell), 0, 1);
  }

  /** Ends the worker too; a fresh one takes its place, so that the next run is warm. */
  end(sentence: string): void {
    if (this.over.signal.aborted) return;
    this.finish();
    this.worker.terminate();
    if (warm === this.worker) warm = null;
    warmUpPlanning();
    this.reject(new PlanningEnded(sentence));
  }

  private finish(): void {
    this.over.abort();
    if (current === this) current = null;
  }
}
