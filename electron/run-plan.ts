import { loadGlpk } from "../core/plan/engines/glpk.ts";
import { loadHighs } from "../core/plan/engines/highs.ts";
import type { PlanDocument } from "../core/plan/plan-document.ts";
import { type PlanProgress, planWeek } from "../core/plan/plan-week.ts";
import { minuteOf } from "../core/shop/instants.ts";
import type { Shop } from "../core/shop/shop.ts";
import type { SetAside } from "../core/shop/usable-shop.ts";
import type { PlanCall } from "./plan-call.ts";
import { SearchTeam } from "./search-team.ts";

export interface PlanRun {
  readonly shop: Shop;
  readonly setAside: readonly SetAside[];
  readonly call: PlanCall;
  readonly onProgress: (progress: PlanProgress) => void;
}

/** The clock of a process counts from its start, so reading the shop counts as time used. */
const PROCESS_STARTED_MS = 0;

/** Plans one shop with two searches on threads of their own; Ctrl+C ends the search and keeps the best plan. */
export async function runPlan({ shop, setAside, call, onProgress }: PlanRun): Promise<PlanDocument> {
  const fromMin = startMinute(shop, call.from);
  const request = { fromMin, days: call.days, seed: call.seed, seconds: call.seconds };
  const team = new SearchTeam(shop, request);
  const stop = (): void => team.stop();
  process.once("SIGINT", stop);
  try {
    return await planWeek(shop, request, {
      now: () => performance.now(),
      startedMs: PROCESS_STARTED_MS,
      engines: { glpk: loadGlpk, highs: loadHighs },
      warmUp: () => team.start(),
      setAside,
      onProgress,
      search: (task) => team.search(task),
      stopped: () => team.stopped(),
    });
  } finally {
    process.off("SIGINT", stop);
    await team.close();
  }
}

/** The first minute of the plan: as given, or the next full hour. */
function startMinute(shop: Shop, from: string | null): number {
  if (from !== null) return minuteOf(from, shop.timeZone);
  return Math.ceil(Date.now() / 3_600_000) * 60;
}
