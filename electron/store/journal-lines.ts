import { z } from "zod";
import { changeSchema } from "../../core/shop/change-schema.ts";
import { sha256 } from "./sha256.ts";

const sha = z.string().regex(/^[0-9a-f]{64}$/);

/**
 * What a journal can say. begin: on which state of the file it starts; edits: made by the user, `version` counts edits;
 * saving: the file is about to get this state, in which the edits up to `version` are.
 */
const entrySchema = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("begin"),
    schema: z.literal(1),
    path: z.string(),
    base: sha,
    at: z.string(),
  }),
  z.strictObject({
    kind: z.literal("edits"),
    version: z.int().min(1),
    at: z.string(),
    changes: z.array(changeSchema),
  }),
  z.strictObject({ kind: z.literal("saving"), version: z.int().min(0), sha, at: z.string() }),
]);

export type JournalEntry = z.infer<typeof entrySchema>;
export type BeginEntry = Extract<JournalEntry, { kind: "begin" }>;

/** One line: the first 16 digits of the SHA-256 of what follows, a space, the entry as JSON. */
export function journalLine(entry: JournalEntry): string {
  const json = JSON.stringify(entry);
  return `${checksum(json)} ${json}\n`;
}

/**
 * The entries of a journal up to the first line that is not whole: a line that was being written when the power went is
 * dropped, and nothing after a damaged one is trusted. Example: two whole lines and a torn third give two entries.
 */
export function readJournalLines(text: string): JournalEntry[] {
  const entries: JournalEntry[] = [];
  for (const line of text.split("\n")) {
    const entry = entryOf(line);
    if (!entry) break;
    entries.push(entry);
  }
  return entries;
}

function entryOf(line: string): JournalEntry | null {
  const json = line.slice(CHECKSUM_DIGITS + 1);
  if (line[CHECKSUM_DIGITS] !== " " || line.slice(0, CHECKSUM_DIGITS) !== checksum(json)) return null;
  return entrySchema.safeParse(JSON.parse(json)).data ?? null;
}

const CHECKSUM_DIGITS = 16;

function checksum(json: string): string {
  return sha256(json).slice(0, CHECKSUM_DIGITS);
}
