import type { PlanDocument } from "../core/plan/plan-document.ts";
import { runPlanJob } from "../core/plan/plan-job.ts";
import type { PlanProgress } from "../core/plan/plan-week.ts";
import { minuteOf } from "../core/shop/instants.ts";
import { nextFullHour } from "../core/shop/local-time.ts";
import type { Shop } from "../core/shop/shop.ts";
import type { SetAside } from "../core/shop/usable-shop.ts";
import { MS_PER_MIN } from "../core/units/conversions.ts";
import { onInterrupt } from "./interrupt.ts";
import type { PlanCall } from "./plan-call.ts";
import { startThread } from "./search-member.ts";

export interface PlanRun {
  readonly shop: Shop;
  readonly setAside: readonly SetAside[];
  readonly call: Pick<PlanCall, "from" | "days" | "seed" | "seconds" | "gapPct">;
  readonly onProgress: (progress: PlanProgress) => void;
}

/** The clock of a process counts from its start, so reading the shop counts as time used. */
const PROCESS_STARTED_MS = 0;

/** Plans one shop on threads of Node; Ctrl+C ends the search and keeps the best plan. */
export async function runPlan({ shop, setAside, call, onProgress }: PlanRun): Promise<PlanDocument> {
  const request = {
    fromMin: startMinute(shop, call.from),
    days: call.days,
    seed: call.seed,
    seconds: call.seconds,
    ...(call.gapPct === null ? {} : { gapPct: call.gapPct }),
  };
  const stop = new SharedArrayBuffer(4);
  onInterrupt(() => void Atomics.store(new Int32Array(stop), 0, 1));
  try {
    return await runPlanJob(
      { shop, setAside, request, stop, onProgress },
      { now: () => performance.now(), startedMs: PROCESS_STARTED_MS, startMember: startThread },
    );
  } finally {
    onInterrupt(null);
  }
}

/** The first minute of the plan: as given, or the next full hour of the works' own clocks. */
function startMinute(shop: Shop, from: string | null): number {
  if (from !== null) return minuteOf(from, shop.timeZone);
  return nextFullHour(Date.now() / MS_PER_MIN, shop.timeZone);
}
