import { readFile } from "node:fs/promises";
import Papa from "papaparse";
import { readDemandTable } from "../core/purchase/demand-table.ts";
import { idleCandidates } from "../core/purchase/idle-candidate.ts";
import { checkCase } from "../core/shop/check-case.ts";
import type { Finding } from "../core/shop/finding.ts";
import type { PurchaseCase } from "../core/shop/purchase-case.ts";
import { type ReadCase, readCase } from "../core/shop/read-case.ts";
import type { Shop } from "../core/shop/shop.ts";
import { fileFinding, readingWords } from "./file-finding.ts";
import type { PurchaseCall } from "./purchase-call.ts";

/** Scenarios and weeks of `--quick`: half a year of a few futures. */
const QUICK = { scenarios: 4, weeks: 26 } as const;

/**
 * Reads and checks the case of a call, with the demand, weeks and scenarios of the call put into it. Nothing throws for bad files:
 * they come back as findings. The case is null where it cannot be worked out.
 */
export async function readCaseFile(call: PurchaseCall, shop: Shop): Promise<ReadCase> {
  const file =
    shop.cases.find(({ id }) => id === call.caseName) ?? (await fileText(call.caseName, "the case file"));
  if (isFinding(file)) return { purchaseCase: null, findings: [file] };
  const { purchaseCase, findings } =
    typeof file === "string" ? readCase(file) : { purchaseCase: file, findings: [] };
  if (!purchaseCase) return { purchaseCase, findings };
  const demand = await demandOfCall(call, purchaseCase);
  if (isFinding(demand)) return { purchaseCase: null, findings: [demand] };
  const { weeks, scenarios } = { ...purchaseCase, ...(call.quick ? QUICK : {}) };
  const own = {
    ...purchaseCase,
    demand: demand.demand,
    weeks: call.weeks ?? weeks,
    scenarios: call.scenarios ?? scenarios,
  };
  const checked = checkCase(shop, own);
  const isUsable = !checked.some(({ severity }) => severity === "error");
  const idle = isUsable ? idleCandidates(shop, own) : [];
  return { purchaseCase: isUsable ? own : null, findings: [...demand.findings, ...checked, ...idle] };
}

interface CallDemand {
  readonly demand: PurchaseCase["demand"];
  readonly findings: readonly Finding[];
}

/** Past orders from the CSV file of a call, which is UTF-8 with any usual separator; else what the case says. */
async function demandOfCall(
  { demand: path }: PurchaseCall,
  { demand }: PurchaseCase,
): Promise<CallDemand | Finding> {
  if (path === null) return { demand, findings: [] };
  const text = await fileText(path, "the table of past orders");
  if (isFinding(text)) return text;
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), {
    delimitersToGuess: [",", ";", "\t", "|"],
    skipEmptyLines: "greedy",
  });
  const { rows, findings } = readDemandTable(data);
  return {
    demand: { kind: "rows", rows },
    findings: findings.map((finding) => ({ ...finding, sentence: `${path}: ${finding.sentence}` })),
  };
}

async function fileText(path: string, what: string): Promise<string | Finding> {
  try {
    return await readFile(path, "utf8");
  } catch (error) {
    return fileFinding(path, readingWords(error, what));
  }
}

function isFinding(value: unknown): value is Finding {
  return typeof value === "object" && value !== null && "sentence" in value;
}
