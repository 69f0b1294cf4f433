import { JobRunner, type PurchaseJob } from "../../core/purchase/job-runner.ts";

/** Runs the jobs of a purchase case one after the other, as a thread of the command line does. */
const runner = new JobRunner();

self.addEventListener("message", ({ data }: MessageEvent<PurchaseJob>) => {
  void runner.run(data).then((news) => self.postMessage(news));
});
