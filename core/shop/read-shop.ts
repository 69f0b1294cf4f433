import { z } from "zod";
import { ENTRY_SCHEMAS } from "./entry-schemas.ts";
import { about, type Finding, whereOf } from "./finding.ts";
import { type Misfit, misfitsOf, wordsOfIssue } from "./issue-words.ts";
import { findJsonFault } from "./json-fault.ts";
import { migrate, type RawDocument } from "./migrate.ts";
import { orderSchema } from "./order.ts";
import { type Shop, shopSchema } from "./shop.ts";
import { SHOP_LISTS, type ShopList } from "./shop-lists.ts";
import { buildShadows } from "./unreadable-build.ts";

/** What was read, and what somebody should know about it. Null: nothing can be planned from it. */
export interface ReadShop {
  readonly shop: Shop | null;
  readonly findings: Finding[];
  /** copies of orders that were left out, by id, where their quantity could be read */
  readonly unreadCopies: ReadonlyMap<string, number>;
}

/**
 * Reads a shop document. A fault of the whole (not JSON, another version, a wrong field outside the lists) gives no shop and
 * a sentence for each; an entry of a list that does not fit the schema is left out with an error that names it, and all
 * others are kept. What the values mean is not looked at: that is `check-shop`.
 * Example: an order with quantity 0 gives the shop without it and "Order O-17: quantity must be at least 1."
 */
export function readShop(text: string): ReadShop {
  const parsed = parse(text.replace(/^\uFEFF/, ""));
  if ("finding" in parsed) return unread([parsed.finding]);
  const migrated = migrate(parsed.document);
  if ("finding" in migrated) return unread([migrated.finding]);
  return readDocument(migrated.document);
}

/** Far more than any works needs; above it the file is something else. */
const MOST_CHARACTERS = 100_000_000;

type Parsed = { readonly document: RawDocument } | { readonly finding: Finding };

function parse(text: string): Parsed {
  if (text.trim() === "")
    return fault("empty", "The file is empty: choose a shop file, or start from the demo shop.");
  if (text.length > MOST_CHARACTERS) {
    return fault(
      "too-large",
      "The file has more than 100 million characters: that is no shop file; choose another.",
    );
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return notJson(text);
  }
  if (value === null || typeof value !== "object" || Array.isArray(value)) {
    return fault("not-a-record", "The file is JSON but no shop: the outermost brackets must be { and }.");
  }
  return { document: value as RawDocument };
}

function notJson(text: string): Parsed {
  const found = findJsonFault(text);
  if (!found) return fault("not-json", "The file is not JSON: write it anew.");
  const { line, column, expected } = found;
  return fault("not-json", `The file is not JSON: line ${line}, column ${column}, expected ${expected}.`);
}

function fault(code: string, sentence: string): Parsed {
  return { finding: { severity: "error", code, where: "", sentence } };
}

function unread(findings: Finding[]): ReadShop {
  return { shop: null, findings, unreadCopies: new Map() };
}

/** The document with its lists unread: what is wrong in here is wrong with the whole. */
const headSchema = shopSchema.extend({
  calendars: z.array(z.unknown()),
  machines: z.array(z.unknown()),
  feedstocks: z.array(z.unknown()),
  parts: z.array(z.unknown()),
  orders: z.array(z.unknown()),
  builds: z.array(z.unknown()),
  quotes: z.array(z.unknown()).default([]),
  cases: z.array(z.unknown()).default([]),
});

function readDocument(document: RawDocument): ReadShop {
  const head = headSchema.safeParse(document, { error: wordsOfIssue });
  if (!head.success) return unread(misfitsOf(head.error.issues).map(headFinding));
  const findings: Finding[] = [];
  const lists: Record<string, unknown[]> = {};
  const unreadCopies = new Map<string, number>();
  for (const list of SHOP_LISTS) {
    lists[list] = head.data[list].filter((raw, index) => {
      const misfits = entryMisfits(list, raw);
      findings.push(...entryFindings(list, raw, index, misfits));
      const copies = list === "orders" && misfits.length > 0 ? readableQuantity(raw) : null;
      if (copies !== null) unreadCopies.set(readableId(raw) ?? placeName(index), copies);
      return misfits.length === 0;
    });
  }
  // Every entry has passed its own schema, and the head its own.
  return { shop: { ...head.data, ...lists } as Shop, findings, unreadCopies };
}

function entryMisfits(list: ShopList, raw: unknown): Misfit[] {
  const answer = ENTRY_SCHEMAS[list].safeParse(raw, { error: wordsOfIssue });
  return answer.success ? [] : misfitsOf(answer.error.issues);
}

function headFinding({ path, words }: Misfit): Finding {
  const place = path.length === 0 ? "The shop file" : fieldWords(path);
  return {
    severity: "error",
    code: "schema",
    where: whereOf(...path.map(String)),
    sentence: `${place} ${words}.`,
  };
}

function entryFindings(list: ShopList, raw: unknown, index: number, misfits: readonly Misfit[]): Finding[] {
  if (misfits.length === 0) return [];
  const id = readableId(raw);
  const own = misfits.map(({ path, words }) => {
    const field = path.map(String);
    const what = path.length === 0 ? words : `${fieldWords(path)} ${words}`;
    if (id !== null)
      return { ...about(list, id).error("", "schema", what), where: whereOf(list, id, ...field) };
    const place = placeName(index);
    const sentence = `Entry ${index + 1} of the ${list} (no usable id): ${what}.`;
    return { severity: "error" as const, code: "schema", where: whereOf(list, place, ...field), sentence };
  });
  return list === "builds" ? [...own, ...buildShadows(raw, id ?? `number ${index + 1}`)] : own;
}

/** Stands for the id of an entry that has none. */
function placeName(index: number): string {
  return `#${index + 1}`;
}

function readableQuantity(raw: unknown): number | null {
  if (raw === null || typeof raw !== "object" || !("quantity" in raw)) return null;
  return orderSchema.shape.quantity.safeParse(raw.quantity).data ?? null;
}

function readableId(raw: unknown): string | null {
  if (raw === null || typeof raw !== "object" || !("id" in raw)) return null;
  return typeof raw.id === "string" && raw.id !== "" ? raw.id : null;
}

/** A path in words: places in a list count from 1. Example: nozzles, 0, beadWidthMm gives "nozzles 1, beadWidthMm". */
function fieldWords(path: readonly (string | number)[]): string {
  return path
    .map((step, index) => (typeof step === "number" ? ` ${step + 1}` : `${index === 0 ? "" : ", "}${step}`))
    .join("");
}
