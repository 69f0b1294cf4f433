import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import { type BenchCall, type BenchRow, atMost, told } from "./bench-row.ts";
import { type ProcessEnd, runCommand } from "./run-command.ts";

const FIRST_PLAN_S = 1;
const WHOLE_RUN_S = 6;

/** The demo as a person runs it, `npm run plan`: start of Node and writing of all reports included. */
export async function benchDemo(call: BenchCall): Promise<BenchRow[]> {
  const outDir = mkdtempSync(join(tmpdir(), "demo-week-"));
  try {
    const words = [
      "assets/demo.shop.json",
      "--from",
      "2026-11-30",
      "--days",
      "7",
      "--seconds",
      "5",
      "--out",
      outDir,
    ];
    const end = await runCommand("npm", ["run", "--silent", "plan", "--", ...words], [0, 1]);
    const file = join(outDir, "week.plan.json");
    if (!existsSync(file)) throw new Error(`the program made no plan: ${end.stderr.slice(-1500)}`);
    const plan = JSON.parse(readFileSync(file, "utf8")) as PlanDocument;
    const late = plan.orders.filter(({ lateMin }) => lateMin > 0).length;
    call.say(
      `demo: cost ${plan.cost.total}, gap ${plan.bound.gapPct.toFixed(2)} %, ${late} of ${plan.orders.length} late`,
    );
    return [
      atMost(
        "demo: first valid plan, start included",
        startS(end.told) + plan.elapsed.firstPlanS,
        "s",
        FIRST_PLAN_S,
      ),
      atMost("demo: 5-second plan with reports, start included", end.seconds, "s", WHOLE_RUN_S),
      told("demo: gap of the 5-second plan", plan.bound.gapPct, "%"),
      told("demo: order lines late", late, ""),
      ...plan.handRules.map(({ name, cost }) =>
        told(`demo: cheaper than ${name}`, (1 - plan.cost.total / cost) * 100, "%"),
      ),
    ];
  } finally {
    rmSync(outDir, { recursive: true });
  }
}

/** Seconds from the start of the process to the start of the run: its first progress line tells how old the run is then. */
function startS(heard: ProcessEnd["told"]): number {
  for (const { atS, text } of heard) {
    const progress = text.match(/^([\d.]+) s {2}/m);
    if (progress) return atS - Number(progress[1]);
  }
  throw new Error("the run showed no progress line");
}
