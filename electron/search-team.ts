import { Worker } from "node:worker_threads";
import type { WeekRequest, SearchTask } from "../core/plan/plan-week.ts";
import type { Schedule } from "../core/plan/schedule.ts";
import type { Shop } from "../core/shop/shop.ts";

/** What a search thread is told. */
export interface SearchOrder {
  readonly start: SearchTask["start"];
  readonly seed: number;
  /** seconds from now */
  readonly seconds: number;
  readonly goodEnough: number;
}

/** What it answers: better plans on the way, and the best at the end. */
export interface SearchNews {
  readonly kind: "better" | "done";
  readonly schedule: Schedule;
}

/** What a search thread is given once. */
export interface SearchThreadData {
  readonly shop: Shop;
  readonly request: WeekRequest;
  /** one 32-bit cell; not 0: stop */
  readonly stop: SharedArrayBuffer;
}

const MEMBERS = 2;

/** Searches on threads with different seeds; the best plan wins. The threads warm up while the bound is being proven. */
export class SearchTeam {
  private readonly stopCell = new Int32Array(new SharedArrayBuffer(4));
  private readonly workerData: SearchThreadData;
  private workers: Worker[] = [];

  constructor(shop: Shop, request: WeekRequest) {
    this.workerData = { shop, request, stop: this.stopCell.buffer as SharedArrayBuffer };
  }

  /** Starts the threads; each reads the shop for itself while others work. */
  start(): void {
    const file = new URL("./search-thread.js", import.meta.url);
    const { workerData } = this;
    this.workers = Array.from({ length: MEMBERS }, () => new Worker(file, { workerData }));
  }

  stop(): void {
    Atomics.store(this.stopCell, 0, 1);
  }

  stopped(): boolean {
    return Atomics.load(this.stopCell, 0) !== 0;
  }

  /** Runs every member to the end of the time and gives the cheapest schedule. */
  async search(task: SearchTask): Promise<Schedule> {
    const schedules = await Promise.all(
      this.workers.map((worker, member) => runMember(worker, task, task.seed + member)),
    );
    return schedules.reduce((best, schedule) => (task.better(schedule, best) ? schedule : best));
  }

  async close(): Promise<void> {
    await Promise.all(this.workers.map((worker) => worker.terminate()));
  }
}

function runMember(worker: Worker, task: SearchTask, seed: number): Promise<Schedule> {
  return new Promise((resolve, reject) => {
    worker.once("error", reject);
    worker.on("message", (news: SearchNews) => {
      if (news.kind === "done") resolve(news.schedule);
      else task.onBetter(news.schedule);
    });
    const seconds = Math.max(0, (task.untilMs - performance.now()) / 1000);
    worker.postMessage({
      start: task.start,
      seed,
      seconds,
      goodEnough: task.goodEnough,
    } satisfies SearchOrder);
  });
}
