import type { Finding } from "../units/finding.ts";
import { ENTRY_WORD, type ShopList } from "./shop-lists.ts";

export type { Finding };

/** Makes findings about one entry of a list. */
export interface EntryFindings {
  readonly error: (field: string, code: string, what: string) => Finding;
  readonly warning: (field: string, code: string, what: string) => Finding;
}

/**
 * Starts the findings about one entry: each sentence begins with what it is about.
 * Example: about("orders", "O-17").error("dueAt", "x", "y") is at "orders/O-17/dueAt" and says "Order O-17: y."
 */
export function about(list: ShopList, id: string): EntryFindings {
  const subject = `${capital(ENTRY_WORD[list])} ${id}`;
  const make = (severity: Finding["severity"]) => (field: string, code: string, what: string) => ({
    severity,
    code,
    where: whereOf(list, id, ...field.split("/")),
    sentence: `${subject}: ${what}.`,
  });
  return { error: make("error"), warning: make("warning") };
}

/** Joins the steps to a place. Empty steps are left out. Example: "orders", "A/1" gives "orders/A~1". */
export function whereOf(...steps: readonly string[]): string {
  return steps
    .filter((step) => step !== "")
    .map((step) => step.replaceAll("~", "~0").replaceAll("/", "~1"))
    .join("/");
}

/** The steps of a place, as `whereOf` got them. Example: "orders/A~1" gives "orders", "A/1". */
export function stepsOf(where: string): string[] {
  return where.split("/").map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));
}

/** Errors first, otherwise in the order given. */
export function errorsFirst(findings: readonly Finding[]): Finding[] {
  const ofSeverity = (severity: Finding["severity"]): Finding[] =>
    findings.filter((finding) => finding.severity === severity);
  return [...ofSeverity("error"), ...ofSeverity("warning")];
}

/** The first letter as a capital. Example: "order" gives "Order". */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Names in a sentence, at most six of them. Example: "a", "b", "c" gives "a, b and c". */
export function listed(names: readonly string[]): string {
  const shown = names.slice(0, MOST_LISTED);
  const hidden = names.length - shown.length;
  const words = hidden > 0 ? [...shown, `${hidden} more`] : shown;
  if (words.length <= 1) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

const MOST_LISTED = 6;
