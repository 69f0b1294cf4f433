import type { LengthUnit } from "../core/geometry/length-unit.ts";
import { MOST_COPIES, readQuantity, readWantedDate, type WrittenLine } from "../core/quote/lines-table.ts";
import { UsageError } from "./exit-status.ts";
import { fromOf, numberIn } from "./plan-call.ts";
import { readWords } from "./read-words.ts";
import { unitOf } from "./unit-word.ts";

/** The words of one `quote` call, checked. */
export interface QuoteCall {
  readonly path: string;
  /** the line of the words themselves; null: all lines are in the table */
  readonly line: WrittenLine | null;
  /** CSV file with more lines */
  readonly csv: string | null;
  /** unit of mesh files; null: their own */
  readonly unit: LengthUnit | null;
  /** plan document against which the quote is made; null: one is made first */
  readonly plan: string | null;
  readonly from: string | null;
  /** for the plan that is made first */
  readonly seconds: number;
  readonly customer: string;
  readonly outDir: string | null;
  /** true: cost, floor, margin and likelihoods on the sheet */
  readonly internal: boolean;
  readonly json: boolean;
}

const MOST_SECONDS = 3600;

/** Reads the words after `quote`. Throws a UsageError that says which word does not fit. */
export function readQuoteCall(words: string[]): QuoteCall {
  const { values, positionals } = readWords(words, OPTIONS);
  const [path, ...more] = positionals;
  if (!path || more.length > 0) throw new UsageError("quote needs one shop file");
  if (values.part === undefined && values.csv === undefined) {
    throw new UsageError("quote needs --part with --quantity, or --csv");
  }
  if (values.internal && values.out === undefined) {
    throw new UsageError("--internal needs --out: it is written beside the customer's sheet");
  }
  return {
    path,
    line: values.part === undefined ? null : lineOf(values),
    csv: values.csv ?? null,
    unit: unitOf(values.unit),
    plan: values.plan ?? null,
    from: fromOf(values.from),
    seconds: numberIn("--seconds", values.seconds ?? "2", 0, MOST_SECONDS),
    customer: values.customer ?? "",
    outDir: values.out ?? null,
    internal: values.internal ?? false,
    json: values.json ?? false,
  };
}

const OPTIONS = {
  part: { type: "string" },
  quantity: { type: "string" },
  by: { type: "string" },
  firm: { type: "boolean" },
  machine: { type: "string" },
  feedstock: { type: "string" },
  csv: { type: "string" },
  unit: { type: "string" },
  plan: { type: "string" },
  from: { type: "string" },
  seconds: { type: "string" },
  customer: { type: "string" },
  out: { type: "string" },
  internal: { type: "boolean" },
  json: { type: "boolean" },
} as const;

interface LineWords {
  readonly part?: string | undefined;
  readonly quantity?: string | undefined;
  readonly by?: string | undefined;
  readonly firm?: boolean | undefined;
  readonly machine?: string | undefined;
  readonly feedstock?: string | undefined;
}

function lineOf({ part = "", quantity, by, firm, machine, feedstock }: LineWords): WrittenLine {
  if (part.trim() === "") throw new UsageError("--part takes an id of the shop or a mesh file");
  if (quantity === undefined) throw new UsageError("--part needs --quantity: how many copies");
  return {
    part,
    quantity: quantityOf(quantity),
    by: by === undefined ? null : dateOf(by),
    allowLate: !firm,
    ...(machine === undefined ? {} : { machineId: machine }),
    ...(feedstock === undefined ? {} : { feedstockId: feedstock }),
  };
}

function quantityOf(text: string): number {
  const quantity = readQuantity(text);
  if (quantity !== null) return quantity;
  throw new UsageError(`--quantity takes a whole number from 1 to ${MOST_COPIES}, not "${text}"`);
}

function dateOf(text: string): string {
  const by = readWantedDate(text);
  if (by !== null) return by;
  throw new UsageError(`--by takes a date like 2026-12-04 or a time like 2026-12-04T12:00, not "${text}"`);
}
