import { readFile } from "node:fs/promises";
import { type PlanDocument, planSchema } from "../core/plan/plan-document.ts";
import { listed } from "../core/shop/finding.ts";
import type { Shop } from "../core/shop/shop.ts";
import type { Finding } from "../core/units/finding.ts";
import { fileFinding, readingWords } from "./file-finding.ts";

/** Reads a plan document of a shop. Nothing throws for a bad file: it comes back as a finding that says what to do. */
export async function readPlanFile(path: string, shop: Shop): Promise<PlanDocument | Finding> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    return fileFinding(path, readingWords(error, "the plan file"));
  }
  const plan = planOf(text);
  if (!plan) return fileFinding(path, NO_PLAN);
  const unknown = unknownNames(plan, shop);
  if (unknown.length === 0 && plan.timeZone === shop.timeZone && plan.currency === shop.currency) return plan;
  const what = unknown.length > 0 ? `: the shop has no ${listed(unknown)}` : "";
  return fileFinding(path, `this is a plan of another shop${what}. Plan this shop first.`);
}

function planOf(text: string): PlanDocument | null {
  try {
    return planSchema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

function unknownNames({ builds }: PlanDocument, { machines, feedstocks }: Shop): string[] {
  const unknownMachines = builds.flatMap(({ machineId }) =>
    machines.some(({ id }) => id === machineId) ? [] : [`machine ${machineId}`],
  );
  const unknownGrades = builds.flatMap(({ feedstockId }) =>
    feedstocks.some(({ id }) => id === feedstockId) ? [] : [`feedstock ${feedstockId}`],
  );
  return [...new Set([...unknownMachines, ...unknownGrades])];
}

const NO_PLAN = "this is no plan document. Name the week.plan.json that `npm run plan` wrote.";
