import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import { runPlanJob } from "../../core/plan/plan-job.ts";
import { checkShop } from "../../core/shop/check-shop.ts";
import { minuteOf } from "../../core/shop/instants.ts";
import { usableShop } from "../../core/shop/usable-shop.ts";
import type { PlanMessage, PlanNews } from "./messages.ts";
import { startSearchWorker } from "./search-member.ts";

/** Plans off the window's thread, with the job function of the command line. One run at a time. */
self.addEventListener("message", ({ data }: MessageEvent<PlanMessage>) => void plan(data));

// The first solve of a fresh engine is the slow one: it is loaded while nobody waits.
void loadGlpk();

async function plan({ run, shop, options, stop }: PlanMessage): Promise<void> {
  const startedMs = performance.now();
  const tell = (news: Omit<PlanNews, "run">): void => self.postMessage({ run, ...news });
  const findings = checkShop(shop);
  const usable = usableShop(shop, findings);
  if (!usable.shop) {
    const first = findings.find(({ severity }) => severity === "error");
    tell({ kind: "refused", sentence: first?.sentence ?? "The shop cannot be planned." } as PlanNews);
    return;
  }
  try {
    const result = await runPlanJob(
      {
        shop: usable.shop,
        setAside: usable.setAside,
        request: { ...options, fromMin: minuteOf(options.from, shop.timeZone) },
        stop,
        onProgress: (progress) => tell({ kind: "progress", progress } as PlanNews),
      },
      { now: () => performance.now(), startedMs, startMember: startSearchWorker },
    );
    tell({ kind: "plan", plan: result } as PlanNews);
  } catch (fault) {
    tell({ kind: "fault", sentence: `This is a fault of the program: ${String(fault)}` } as PlanNews);
  }
}
