import { join } from "node:path";
import type { CaseEvaluation, CaseProgress } from "../core/purchase/evaluate.ts";
import { assumptionsOf, NOT_CONSIDERED } from "../core/purchase/purchase-words.ts";
import { cashCsv } from "../core/report/case-cash.ts";
import { roughText } from "../core/report/case-rough.ts";
import { caseSheet } from "../core/report/case-sheet.ts";
import { caseText } from "../core/report/case-text.ts";
import type { CaseReport } from "../core/report/case-view.ts";
import { EXIT } from "./exit-status.ts";
import { makeFolder, writeFiles } from "./out-folder.ts";
import { printFindings } from "./print-findings.ts";
import { type PurchaseCall, readPurchaseCall } from "./purchase-call.ts";
import { readCaseFile } from "./read-case-file.ts";
import { readShopFile } from "./read-shop-file.ts";
import { runCase } from "./run-case.ts";
import { statusLine } from "./status-line.ts";
import { dataFolder } from "./store/data-folder.ts";

/**
 * `purchase SHOP.json --case CASE.json ...`: what each candidate of a case is worth in this shop. Status 0; 2 for what cannot be
 * used; 3 where it was stopped.
 */
export async function purchaseCommand(words: string[]): Promise<number> {
  const call = readPurchaseCall(words);
  const file = await readShopFile(call.path);
  printFindings(file.findings, file.shop || call.quiet ? ["error"] : undefined);
  if (!file.shop) return EXIT.badInput;
  const { purchaseCase, findings } = await readCaseFile(call, file.shop);
  printFindings(findings, call.quiet ? ["error"] : undefined);
  if (!purchaseCase) return EXIT.badInput;
  if (call.outDir) await makeFolder(call.outDir);
  const line = statusLine(call.quiet || call.json);
  const { shop } = file;
  const startedMs = performance.now();
  const { study, gap, isStopped } = await runCase({
    shop,
    purchaseCase,
    quick: call.quick,
    resultsFolder: join(dataFolder(), "purchase-results"),
    onProgress: (stage, done, all) => line.show(stage, progressText(stage, done, all, startedMs)),
    onRough: (evaluation: CaseEvaluation) => line.say(roughText(shop, purchaseCase, evaluation)),
  });
  line.clear();
  const status = call.quick && study.status === "complete" ? "rough" : study.status;
  const report = { shop, purchaseCase, study: { ...study, status }, gap, findings };
  if (call.json) console.log(caseJson(report));
  else if (!call.quiet) console.log(caseText(report).trimEnd());
  if (call.outDir) await writeReports(call, call.outDir, report);
  return isStopped ? EXIT.stopped : EXIT.planned;
}

function progressText(
  stage: CaseProgress["stage"] | "other demands, prices and bundles",
  done: number,
  all: number | null,
  startedMs: number,
): string {
  const seconds = ((performance.now() - startedMs) / 1000).toFixed(1);
  const jobs = all === 0 ? "" : all === null ? `  ${done} jobs done` : `  ${done} of ${all} jobs done`;
  return `${seconds} s  ${stage}${jobs}`;
}

/** The study as plain data; a payback that never comes is null. */
function caseJson({ purchaseCase, study, gap, findings }: CaseReport): string {
  const assumptions = assumptionsOf(purchaseCase);
  const document = { case: purchaseCase, study, gap, findings, assumptions, notConsidered: NOT_CONSIDERED };
  return JSON.stringify(document, null, 2);
}

async function writeReports(call: PurchaseCall, outDir: string, report: CaseReport): Promise<void> {
  const files = [
    { name: "case.html", text: caseSheet(report) },
    { name: "case.txt", text: caseText(report) },
    { name: "case.json", text: caseJson(report) },
    { name: "cash.csv", text: cashCsv(report) },
  ];
  await writeFiles(outDir, files);
  if (!call.quiet && !call.json)
    console.log(`\nWritten to ${outDir}: ${files.map(({ name }) => name).join(", ")}`);
}
