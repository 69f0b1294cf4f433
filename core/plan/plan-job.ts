import type { Shop } from "../shop/shop.ts";
import type { SetAside } from "../shop/usable-shop.ts";
import { loadGlpk } from "./engines/glpk.ts";
import { loadHighs } from "./engines/highs.ts";
import type { PlanDocument } from "./plan-document.ts";
import { type PlanProgress, planWeek, type WeekRequest } from "./plan-week.ts";
import { SearchTeam, type TeamTools } from "./search-team.ts";

/** One planning run, wherever it runs: on the command line or in the worker of the screen. */
export interface PlanJob {
  readonly shop: Shop;
  readonly setAside: readonly SetAside[];
  readonly request: WeekRequest;
  /** one 32-bit cell, not 0: stop and keep the best plan; null where threads cannot share memory */
  readonly stop: SharedArrayBuffer | null;
  readonly onProgress: (progress: PlanProgress) => void;
}

/** The clock of a place, and when the run began on it. */
export interface JobTools extends TeamTools {
  readonly startedMs: number;
}

/** Plans one shop with a team of searches on threads of their own, and lets the threads go. */
export async function runPlanJob(job: PlanJob, tools: JobTools): Promise<PlanDocument> {
  const { shop, setAside, request, stop, onProgress } = job;
  const team = new SearchTeam({ shop, request, stop }, tools);
  try {
    return await planWeek(shop, request, {
      now: tools.now,
      startedMs: tools.startedMs,
      engines: { glpk: loadGlpk, highs: loadHighs },
      warmUp: () => team.start(),
      setAside,
      onProgress,
      search: (task) => team.search(task),
      stopped: team.stopped,
    });
  } finally {
    await team.close();
  }
}
