import type { Finding } from "./finding.ts";
import { misfitsOf, wordsOfIssue } from "./issue-words.ts";
import { findJsonFault } from "./json-fault.ts";
import { CASE_SCHEMA, caseFileSchema, type PurchaseCase } from "./purchase-case.ts";

/** What was read, and what somebody should know about it. Null: there is no case to work out. */
export interface ReadCase {
  readonly purchaseCase: PurchaseCase | null;
  readonly findings: Finding[];
}

/**
 * Reads a case document (`*.case.json`). What does not fit the schema gives no case and one sentence for each fault; what the
 * values mean in a shop is for `checkCase`. Example: a life of 0 gives "The case: candidates 1, lifeYears must be at least 1 year."
 */
export function readCase(text: string): ReadCase {
  const plain = text.replace(/^\uFEFF/, "");
  if (plain.trim() === "") return unread("empty", "The file is empty: choose a case file.");
  let value: unknown;
  try {
    value = JSON.parse(plain);
  } catch {
    const { line, column, expected } = findJsonFault(plain) ?? NOWHERE;
    return unread("not-json", `The file is not JSON: line ${line}, column ${column}, expected ${expected}.`);
  }
  if (isRecord(value) && typeof value["schema"] === "number" && value["schema"] > CASE_SCHEMA) {
    return unread(
      "schema-newer",
      `The file has schema ${value["schema"]}, this version reads up to ${CASE_SCHEMA}: update the program, or ask for the file in the older form.`,
    );
  }
  const answer = caseFileSchema.safeParse(value, { error: wordsOfIssue });
  if (answer.success) {
    const { schema: _, ...purchaseCase } = answer.data;
    return { purchaseCase, findings: [] };
  }
  return { purchaseCase: null, findings: misfitsOf(answer.error.issues).map(misfitFinding) };
}

const NOWHERE = { line: 1, column: 1, expected: "a value" };

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return value !== null && typeof value === "object" && !Array.isArray(value);
}

function unread(code: string, sentence: string): ReadCase {
  return { purchaseCase: null, findings: [{ severity: "error", code, where: "", sentence }] };
}

function misfitFinding({
  path,
  words,
}: {
  readonly path: readonly (string | number)[];
  readonly words: string;
}): Finding {
  const place = path.map((step) => (typeof step === "number" ? String(step + 1) : step));
  const field = place.join(", ").replaceAll(/, (\d+)/g, " $1");
  const subject = field === "" ? "The case" : `The case: ${field}`;
  return { severity: "error", code: "schema", where: place.join("/"), sentence: `${subject} ${words}.` };
}
