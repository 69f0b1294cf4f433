import { UsageError } from "./exit-status.ts";
import { wholeNumber } from "./plan-call.ts";
import { readWords } from "./read-words.ts";

/** The words of one `purchase` call, checked. */
export interface PurchaseCall {
  readonly path: string;
  /** a case file, or the id of a case in the shop file */
  readonly caseName: string;
  /** CSV file of past orders that takes the place of the case's demand; null: as the case says */
  readonly demand: string | null;
  /** in place of what the case says; null: as it says */
  readonly weeks: number | null;
  readonly scenarios: number | null;
  readonly outDir: string | null;
  /** true: few scenarios and weeks, no break-evens, no bundle, nothing planned in full */
  readonly quick: boolean;
  readonly json: boolean;
  readonly quiet: boolean;
}

/** As the case document has them. */
const MOST_WEEKS = 520;
const MOST_SCENARIOS = 1000;

/** Reads the words after `purchase`. Throws a UsageError that says which word does not fit. */
export function readPurchaseCall(words: string[]): PurchaseCall {
  const { values, positionals } = readWords(words, OPTIONS);
  const [path, ...more] = positionals;
  if (!path || more.length > 0) throw new UsageError("purchase needs one shop file");
  if (values.case === undefined)
    throw new UsageError("purchase needs --case: a case file, or the id of a case of the shop");
  return {
    path,
    caseName: values.case,
    demand: values.demand ?? null,
    weeks: values.weeks === undefined ? null : wholeNumber("--weeks", values.weeks, 1, MOST_WEEKS),
    scenarios:
      values.scenarios === undefined ? null : wholeNumber("--scenarios", values.scenarios, 1, MOST_SCENARIOS),
    outDir: values.out ?? null,
    quick: values.quick ?? false,
    json: values.json ?? false,
    quiet: values.quiet ?? false,
  };
}

const OPTIONS = {
  case: { type: "string" },
  demand: { type: "string" },
  weeks: { type: "string" },
  scenarios: { type: "string" },
  out: { type: "string" },
  quick: { type: "boolean" },
  json: { type: "boolean" },
  quiet: { type: "boolean" },
} as const;
