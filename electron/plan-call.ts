import { isInstant } from "../core/shop/instants.ts";
import { UsageError } from "./exit-status.ts";
import { readWords } from "./read-words.ts";

/** The words of one `plan` call, checked. */
export interface PlanCall {
  readonly path: string;
  /** start as given: a date or an instant; none: now */
  readonly from: string | null;
  readonly days: number;
  readonly seconds: number;
  readonly seed: number;
  /** good enough: at most so much left to gain, %; null: search to the end of the time */
  readonly gapPct: number | null;
  readonly outDir: string | null;
  readonly json: boolean;
  readonly quiet: boolean;
}

/** Longest plan: half a year; longest search: an hour. */
const MOST_DAYS = 183;
const MOST_SECONDS = 3600;
/** Of a plan with all of its cost left to gain nothing is proven. */
const MOST_GAP_PCT = 99;

/** Reads the words after `plan`. Throws a UsageError that says which word does not fit. */
export function readPlanCall(words: string[]): PlanCall {
  const { values, positionals } = readWords(words, OPTIONS);
  const [path, ...more] = positionals;
  if (!path || more.length > 0) throw new UsageError("plan needs one shop file");
  return {
    path,
    from: fromOf(values.from),
    days: wholeNumber("--days", values.days ?? "7", 1, MOST_DAYS),
    seconds: numberIn("--seconds", values.seconds ?? "5", 0, MOST_SECONDS),
    seed: wholeNumber("--seed", values.seed ?? "1", 0, 2 ** 31),
    gapPct: values.gap === undefined ? null : numberIn("--gap", values.gap, 0, MOST_GAP_PCT),
    outDir: values.out ?? null,
    json: values.json ?? false,
    quiet: values.quiet ?? false,
  };
}

const OPTIONS = {
  from: { type: "string" },
  days: { type: "string" },
  seconds: { type: "string" },
  seed: { type: "string" },
  gap: { type: "string" },
  out: { type: "string" },
  json: { type: "boolean" },
  quiet: { type: "boolean" },
} as const;

/** A start as given, a date or an instant; null: none was given. Example: "2026-11-30" gives "2026-11-30T00:00". */
export function fromOf(text: string | undefined): string | null {
  if (text === undefined) return null;
  const instant = /^\d{4}-\d{2}-\d{2}$/.test(text) ? `${text}T00:00` : text;
  if (isInstant(instant)) return instant;
  throw new UsageError(`--from takes a date like 2026-11-30 or a time like 2026-11-30T06:00, not "${text}"`);
}

/** A whole number within limits. Throws a UsageError that names the word. Example: "7" between 1 and 183 gives 7. */
export function wholeNumber(flag: string, text: string, least: number, most: number): number {
  const value = numberIn(flag, text, least, most);
  if (!Number.isInteger(value)) throw new UsageError(`${flag} takes a whole number, not "${text}"`);
  return value;
}

/** A number within limits. Throws a UsageError that names the word. Example: "5" between 0 and 60 gives 5. */
export function numberIn(flag: string, text: string, least: number, most: number): number {
  const value = text.trim() === "" ? NaN : Number(text);
  if (value >= least && value <= most) return value;
  throw new UsageError(`${flag} takes a number from ${least} to ${most}, not "${text}"`);
}
