import { CASE_SCHEMA, type PurchaseCase } from "../../../core/shop/purchase-case.ts";
import { readCase } from "../../../core/shop/read-case.ts";
import { chooseFile } from "../../store/download.ts";
import { saveExport } from "../../store/save-export.ts";
import type { Stores } from "../../store/stores.ts";
import { freeCaseId } from "./new-case.ts";
import type { PurchaseState } from "./purchase-state.ts";

const MOST_FAULTS = 3;
const MOST_FILE_CHARS = 40;

/** Takes a case file into the shop, under another id where that is taken; what is wrong with it is said. */
export async function takeInCase(
  { shop, notes }: Pick<Stores, "shop" | "notes">,
  state: PurchaseState,
  chosen?: File,
): Promise<void> {
  const file = chosen ?? (await chooseFile(".json"));
  if (!file) return;
  const { purchaseCase, findings } = readCase(await file.text());
  for (const { sentence } of findings.slice(0, MOST_FAULTS)) notes.alarm(sentence);
  if (!purchaseCase) return;
  state.add({ ...purchaseCase, id: freeCaseId(purchaseCase.id, shop.shop()) }, "case from a file");
  notes.tell("The case was taken in.");
}

/** Gives the case out as a file of its own, as the command takes it. */
export async function giveOutCase({ host, notes }: Stores, purchaseCase: PurchaseCase): Promise<void> {
  const { id, ...others } = purchaseCase;
  const text = `${JSON.stringify({ schema: CASE_SCHEMA, id, ...others }, null, 2)}\n`;
  await saveExport(
    host,
    notes,
    `${fileStem(id)}.case.json`,
    new TextEncoder().encode(text),
    "application/json",
  );
}

/** An id as part of a file name on any system. Example: "a/b c" gives "a-b-c". */
export function fileStem(id: string): string {
  return id.replaceAll(/[^\w-]+/g, "-").slice(0, MOST_FILE_CHARS) || "case";
}
