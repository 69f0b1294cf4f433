import type { EngineLoaders } from "../plan/engines/choose-engine.ts";
import { loadGlpk } from "../plan/engines/glpk.ts";
import { loadHighs } from "../plan/engines/highs.ts";
import { loadWarmHighs } from "../plan/engines/warm-highs.ts";
import { FleetStore, runScenarioJob } from "./run-scenario.ts";
import { runSampleJob, type SampleJob, type SampleWeek } from "./sample-week.ts";
import type { ScenarioJob, ScenarioResult } from "./scenario-job.ts";

/** A scenario to run, or a week to plan in full. */
export type PurchaseJob =
  | { readonly kind: "scenario"; readonly job: ScenarioJob }
  | { readonly kind: "sample"; readonly job: SampleJob };

/** Its result, of the kind that was asked for, or what went wrong. */
export type PurchaseNews = { readonly result: ScenarioResult | SampleWeek } | { readonly fault: string };

/** Runs jobs on one thread, whatever kind of thread it is: keeps the solvers and the fleets between them. */
export class JobRunner {
  private readonly store = remember(async () => new FleetStore(await loadWarmHighs()));
  private readonly engines: EngineLoaders = { glpk: remember(loadGlpk), highs: remember(loadHighs) };

  /** Starts to load the solver at once, while others still read the case; a fault is told by the first job. */
  constructor() {
    this.store().catch(() => {});
  }

  /** The result of a job, as news; it never throws. Example: a scenario of 52 weeks gives 52 week results. */
  async run(order: PurchaseJob): Promise<PurchaseNews> {
    try {
      const fleets = await this.store();
      if (order.kind === "scenario") return { result: runScenarioJob(order.job, fleets) };
      return { result: await runSampleJob(order.job, fleets, this.engines) };
    } catch (fault) {
      return { fault: String(fault) };
    }
  }
}

/** Loads once, when it is first asked for. */
function remember<T>(load: () => Promise<T>): () => Promise<T> {
  let loaded: Promise<T> | null = null;
  return () => (loaded ??= load());
}
