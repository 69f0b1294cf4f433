import { rm } from "node:fs/promises";
import { join } from "node:path";
import type { PlanDocument } from "../core/plan/plan-document.ts";
import { csvFiles } from "../core/report/csv.ts";
import { weekSheet } from "../core/report/html-sheet.ts";
import { weekCalendar } from "../core/report/icalendar.ts";
import { weekSummary } from "../core/report/week-summary.ts";
import { weekText } from "../core/report/week-text.ts";
import type { Shop } from "../core/shop/shop.ts";
import { MS_PER_MIN } from "../core/units/conversions.ts";
import { EXIT } from "./exit-status.ts";
import { folderTrouble, makeFolder, writeFiles } from "./out-folder.ts";
import { type PlanCall, readPlanCall } from "./plan-call.ts";
import { printFindings } from "./print-findings.ts";
import { progressLine } from "./progress-line.ts";
import { readShopFile } from "./read-shop-file.ts";
import { runPlan } from "./run-plan.ts";
import { bodyFileFindings } from "./shop-bodies.ts";

/** `plan SHOP.json ...`: plans, prints the week or the document, and writes the reports. */
export async function planCommand(words: string[]): Promise<number> {
  const call = readPlanCall(words);
  const { shop, setAside, findings } = await readShopFile(call.path);
  printFindings(findings, call.quiet ? ["error"] : undefined);
  if (!shop) return EXIT.badInput;
  if (call.outDir) await makeFolder(call.outDir);
  // The files are read while the plan is made; what is said of them does not change it.
  const bodies = call.quiet ? [] : bodyFileFindings(call.path, shop);
  const progress = progressLine(shop.currency, call.quiet || call.json);
  const plan = await runPlan({ shop, setAside, call, onProgress: progress.show });
  progress.clear();
  printFindings(await bodies);
  if (call.json) console.log(JSON.stringify(plan, null, 2));
  else if (!call.quiet) console.log(weekSummary(shop, plan).trimEnd());
  if (call.outDir) await writeReports(call, shop, plan);
  return exitStatus(plan);
}

async function writeReports(call: PlanCall, shop: Shop, plan: PlanDocument): Promise<void> {
  const outDir = call.outDir ?? ".";
  const writtenMin = Math.floor(Date.now() / MS_PER_MIN);
  const files = [
    { name: "week.plan.json", text: JSON.stringify(plan, null, 2) },
    { name: "week.txt", text: weekText(shop, plan) },
    { name: "week.html", text: weekSheet(shop, plan) },
    ...(plan.builds.length > 0 ? [{ name: CALENDAR, text: weekCalendar(shop, plan, writtenMin) }] : []),
    ...csvFiles(shop, plan),
  ];
  try {
    if (plan.builds.length === 0) await rm(join(outDir, CALENDAR), { force: true });
  } catch (error) {
    throw folderTrouble(outDir, error);
  }
  await writeFiles(outDir, files);
  if (call.quiet || call.json) return;
  const without = plan.builds.length > 0 ? "" : ` (no ${CALENDAR}: the plan has no builds)`;
  console.log(`\nWritten to ${outDir}: ${files.map((file) => file.name).join(", ")}${without}`);
}

/** Not written where the plan has no builds: a calendar needs an event. One of an earlier plan is taken away then. */
const CALENDAR = "week.ics";

function exitStatus(plan: PlanDocument): number {
  if (plan.status === "stopped") return EXIT.stopped;
  const late = plan.orders.some((order) => order.lateMin > 0);
  return late || plan.unplanned.length > 0 ? EXIT.lateOrUnplanned : EXIT.planned;
}
