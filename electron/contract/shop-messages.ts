import { z } from "zod";
import { changeSchema } from "../../core/shop/change-schema.ts";
import { shopSchema } from "../../core/shop/shop.ts";
import { fileName } from "./answer.ts";

/** Stands for an open shop. The screen never learns a path and never gives one. */
export const handle = z.string().min(1).max(64);

const finding = z.strictObject({
  severity: z.enum(["error", "warning"]),
  code: z.string(),
  where: z.string(),
  sentence: z.string(),
});

/** Edits of an earlier run that never reached the file. */
export const recoverySchema = z.strictObject({
  edits: z.int().min(1).describe("how many edits were found"),
  lastAt: z.string().describe("when the last of them was made, ISO 8601 in UTC"),
  lines: z.array(z.string()).describe('what is in it, such as "orders: 3 put, 1 removed"'),
  fits: z.boolean().describe("false: the file has changed since, so that not every edit goes on it"),
  sentence: z.string().describe("what was found, where, and what the two choices do"),
});

/** An open shop. `version` counts the edits since it was opened, `stamp` everything worth a look (see `watch`). */
export const openedSchema = z.strictObject({
  status: z.literal("opened"),
  handle,
  fileName: z.string(),
  folder: z.string().describe("where it lies, for people to read"),
  shop: shopSchema,
  findings: z.array(finding).describe("entries that could not be read and were left out of `shop`"),
  version: z.int().min(0),
  stamp: z.int().min(0),
  isDemo: z.boolean(),
  notes: z
    .array(z.string())
    .describe("read-only, open in another window, a copy was kept: sentences to show"),
  recovery: recoverySchema.nullable().describe("ask, then call `recover`; until then nothing is lost"),
});

export const openAnswer = z.discriminatedUnion("status", [
  openedSchema,
  z.strictObject({ status: z.literal("unreadable"), fileName: z.string(), findings: z.array(finding) }),
  z.strictObject({ status: z.literal("cancelled") }),
  z.strictObject({
    status: z.literal("no-dialog"),
    sentence: z.string().describe("this door has no file dialog: take the file by upload instead"),
  }),
]);

/** A random name that each window gives itself at its start, so that `watch` can leave out its own edits. */
export const client = z.string().min(1).max(64);

export const commitInput = z.strictObject({
  handle,
  client,
  baseVersion: z.int().min(0).describe("the version that the changes were made on"),
  changes: z.array(changeSchema).min(1).max(100_000),
});

export const commitAnswer = z.discriminatedUnion("status", [
  z.strictObject({
    status: z.literal("committed"),
    version: z.int().min(0),
    warning: z.string().nullable().describe("the journal could not be written: what to do"),
  }),
  z.strictObject({
    status: z.literal("behind"),
    version: z.int().min(0),
    changes: z
      .array(changeSchema)
      .describe("what another window did since baseVersion: apply, then commit again"),
  }),
  z.strictObject({ status: z.literal("misfit"), sentence: z.string() }),
]);

export const saveInput = z.strictObject({
  handle,
  overwrite: z
    .boolean()
    .describe("true: knowingly write over a file that something else has changed; a backup of it is kept"),
});

export const saveAnswer = z.discriminatedUnion("status", [
  z.strictObject({ status: z.literal("saved"), version: z.int().min(0), savedAt: z.string() }),
  z.strictObject({
    status: z.literal("conflict"),
    reason: z.enum(["changed", "removed"]),
    sentence: z.string(),
    choices: z.array(z.enum(["reload", "save-as", "overwrite"])),
  }),
  z.strictObject({
    status: z.literal("failed"),
    code: z.enum(["disk-full", "read-only", "no-folder", "other"]),
    sentence: z.string(),
  }),
]);

export const saveAsAnswer = z.discriminatedUnion("status", [
  z.strictObject({
    status: z.literal("saved"),
    version: z.int().min(0),
    savedAt: z.string(),
    fileName,
    folder: z.string(),
  }),
  z.strictObject({ status: z.literal("cancelled") }),
  z.strictObject({
    status: z.literal("failed"),
    code: z.enum(["disk-full", "read-only", "no-folder", "other"]),
    sentence: z.string(),
  }),
]);

/** A `watch` is answered after so many seconds even when nothing happened. */
export const WATCH_S = 25;

/** The state of an open shop. It is answered when its stamp is above the one given, or after `WATCH_S` seconds. */
export const watchAnswer = z.strictObject({
  stamp: z.int().min(0),
  version: z.int().min(0),
  changes: z.array(changeSchema).describe("edits of other windows since the version given, in order"),
  savedVersion: z.int().min(-1).describe("edits up to this one are in the file; -1: none"),
  savedAt: z.string().nullable(),
  file: z.enum(["as-saved", "changed", "removed", "read-only", "failed"]),
  sentence: z.string().nullable().describe("what is the matter with the file, and what to do"),
});

export const backupSchema = z.strictObject({
  id: z.string().min(1).max(200),
  at: z.string().describe("when it was kept, ISO 8601 in UTC"),
  bytes: z.int().min(0),
});

export const recentSchema = z.strictObject({
  id: z.string(),
  fileName: z.string(),
  folder: z.string(),
  shopName: z.string(),
  openedAt: z.string(),
  isThere: z.boolean(),
});

export type Opened = z.infer<typeof openedSchema>;
export type OpenAnswer = z.infer<typeof openAnswer>;
export type CommitAnswer = z.infer<typeof commitAnswer>;
export type SaveAnswer = z.infer<typeof saveAnswer>;
export type SaveAsAnswer = z.infer<typeof saveAsAnswer>;
export type WatchAnswer = z.infer<typeof watchAnswer>;
export type Recovery = z.infer<typeof recoverySchema>;
export type Recent = z.infer<typeof recentSchema>;
export type Backup = z.infer<typeof backupSchema>;
