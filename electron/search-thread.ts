import { parentPort, workerData } from "node:worker_threads";
import { compileProblem } from "../core/plan/compile/compile-problem.ts";
import type { Schedule } from "../core/plan/schedule.ts";
import { searchSchedule } from "../core/plan/search/search.ts";
import type { SearchNews, SearchOrder, SearchThreadData } from "./search-team.ts";

const { shop, request, stop } = workerData as SearchThreadData;
const stopCell = new Int32Array(stop);
const { problem } = compileProblem(shop, request);

parentPort?.on("message", ({ start, seed, seconds, goodEnough }: SearchOrder) => {
  const schedule = searchSchedule(problem, start, {
    seed,
    now: () => performance.now(),
    untilMs: performance.now() + seconds * 1000,
    goodEnough,
    stopped: () => Atomics.load(stopCell, 0) !== 0,
    onBetter: (better: Schedule) => tell({ kind: "better", schedule: better }),
  });
  tell({ kind: "done", schedule });
});

function tell(news: SearchNews): void {
  parentPort?.postMessage(news);
}
