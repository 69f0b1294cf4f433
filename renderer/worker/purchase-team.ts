import type { CaseTools } from "../../core/purchase/case-desk.ts";
import type { PurchaseJob, PurchaseNews } from "../../core/purchase/job-runner.ts";
import type { SampleWeek } from "../../core/purchase/sample-week.ts";
import type { ScenarioResult } from "../../core/purchase/scenario-job.ts";

type Result = ScenarioResult | SampleWeek;

/** Workers of the browser that run the jobs of a case. Each takes the next job as soon as it is free. */
export class PurchaseTeam {
  private readonly members: readonly Worker[];
  private readonly over = new AbortController();

  constructor(count: number) {
    this.members = Array.from(
      { length: count },
      () => new Worker(new URL("./purchase-member.ts", import.meta.url), { type: "module" }),
    );
  }

  /** true: nothing more is run, and what was going on is dropped */
  get isEnded(): boolean {
    return this.over.signal.aborted;
  }

  // A member answers a job of one kind with a result of that kind.
  readonly runJobs: CaseTools["runJobs"] = (jobs, onResult) =>
    this.runAll(
      jobs.map((job) => ({ kind: "scenario", job })),
      (index, result) => onResult(index, result as ScenarioResult),
    );

  readonly runSamples: NonNullable<CaseTools["runSamples"]> = (jobs, onResult) =>
    this.runAll(
      jobs.map((job) => ({ kind: "sample", job })),
      (index, result) => onResult(index, result as SampleWeek),
    );

  /** Ends all members at once: a job takes seconds, and whoever presses Stop does not want to wait for it. */
  end(): void {
    this.over.abort();
    for (const member of this.members) member.terminate();
  }

  private async runAll(
    orders: readonly PurchaseJob[],
    onResult: (index: number, result: Result) => void,
  ): Promise<void> {
    const queue = orders.entries();
    const work = async (member: Worker): Promise<void> => {
      for (const [index, order] of queue) {
        const result = this.isEnded ? null : await this.runOn(member, order);
        if (result === null) return;
        onResult(index, result);
      }
    };
    await Promise.all(this.members.map(work));
  }

  /** Null: the team was ended before the job was done. */
  private runOn(member: Worker, order: PurchaseJob): Promise<Result | null> {
    return new Promise((resolve, reject) => {
      const done = new AbortController();
      const { signal } = done;
      const finish = (settle: () => void): void => {
        done.abort();
        settle();
      };
      this.over.signal.addEventListener("abort", () => finish(() => resolve(null)), { signal });
      const hear = ({ data }: MessageEvent<PurchaseNews>): void =>
        finish(() =>
          "result" in data
            ? resolve(data.result)
            : reject(new Error(`a job of the case failed: ${data.fault}`)),
        );
      member.addEventListener("message", hear, { signal });
      member.addEventListener(
        "error",
        ({ message }) => finish(() => reject(new Error(`a worker of the case failed: ${message}`))),
        { signal },
      );
      member.postMessage(order);
    });
  }
}
