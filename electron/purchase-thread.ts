import { parentPort } from "node:worker_threads";
import { JobRunner, type PurchaseJob } from "../core/purchase/job-runner.ts";

const runner = new JobRunner();

parentPort?.on("message", (order: PurchaseJob) => {
  void runner.run(order).then((news) => parentPort?.postMessage(news));
});
