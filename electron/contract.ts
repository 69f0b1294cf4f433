import { z } from "zod";
import { planSchema } from "../core/plan/plan-document.ts";
import { shopSchema } from "../core/shop/shop.ts";
import { type Answer, bytes, fileName } from "./contract/answer.ts";
import { preferencesSchema } from "./contract/preferences.ts";
import {
  backupSchema,
  client,
  commitAnswer,
  commitInput,
  handle,
  openAnswer,
  recentSchema,
  saveAnswer,
  saveAsAnswer,
  saveInput,
  watchAnswer,
} from "./contract/shop-messages.ts";

/**
 * Every call that the screen can make of the outside, the same through every door. The screen calls them through
 * `renderer/host.ts`: `const answer = await host.call("commit", { handle, client, baseVersion, changes })`. Only plain data crosses
 * (unwrap stores first), handles stand for files, errors are data. Input and output are both held to these schemas.
 * `bytes` says where a call carries bytes: such calls travel as a frame over the loopback.
 */
export interface MethodShape {
  readonly input: z.ZodType;
  readonly output: z.ZodType;
  readonly bytes?: "in" | "out";
}

const nothing = z.strictObject({});
const ofShop = z.strictObject({ handle });
const failed = z.strictObject({ status: z.literal("failed"), sentence: z.string() });
const cancelled = z.strictObject({ status: z.literal("cancelled") });
const written = z.strictObject({ status: z.literal("written"), fileName: z.string(), folder: z.string() });
const notHere = z.strictObject({ status: z.literal("not-here"), sentence: z.string() });

export const METHODS = {
  /** Which door this is, and why. `can` says what the door has: file dialogs of the system, PDF without a print dialog. */
  appInfo: {
    input: nothing,
    output: z.strictObject({
      door: z.enum(["window", "browser"]),
      reason: z.string(),
      version: z.string(),
      platform: z.string(),
      can: z.strictObject({ dialogs: z.boolean(), pdf: z.boolean() }),
    }),
  },

  /** At the start: the shop named at the launch, else the last one, else the demo shop. */
  openFirst: { input: nothing, output: openAnswer },
  openDemo: { input: nothing, output: openAnswer },
  listRecent: { input: nothing, output: z.strictObject({ recent: z.array(recentSchema) }) },
  openRecent: { input: z.strictObject({ id: z.string() }), output: openAnswer },
  /** Asks with the system's dialog; "no-dialog" in the browser, which uploads instead. */
  openDialog: { input: nothing, output: openAnswer },
  /** A file chosen in the browser: kept in the program's own folder under its name, never over another. */
  openUpload: { input: z.strictObject({ fileName, text: z.string() }), output: openAnswer },
  newShop: {
    input: z.strictObject({
      name: shopSchema.shape.name,
      timeZone: shopSchema.shape.timeZone,
      currency: shopSchema.shape.currency,
      display: shopSchema.shape.display,
    }),
    output: openAnswer,
  },

  /** Edits in order; all are taken or none. They are in the journal when this answers, and in the file soon after. */
  commit: { input: commitInput, output: commitAnswer },
  /** Long poll: answers when something is new; call it again with the stamp it gave and the version the screen is at. */
  watch: {
    input: z.strictObject({ handle, client, stamp: z.int().min(-1), version: z.int().min(0) }),
    output: watchAnswer,
  },
  save: { input: saveInput, output: saveAnswer },
  /** Asks where (window), or keeps it under `fileName` in the program's own folder (browser). The handle goes on. */
  saveAs: { input: z.strictObject({ handle, fileName }), output: saveAsAnswer },
  /** Reads the file again. Edits that were not saved are set aside, not destroyed; the answer's notes say so. */
  reload: { input: ofShop, output: openAnswer },
  /** Answer to `recovery`: keep puts the edits found on the shop, drop sets them aside. */
  recover: { input: z.strictObject({ handle, choice: z.enum(["keep", "drop"]) }), output: openAnswer },
  /** Saves what is not saved and lets go of the file. */
  close: { input: ofShop, output: saveAnswer },
  /** The document as text, to download. */
  shopText: { input: ofShop, output: z.strictObject({ fileName: z.string(), text: z.string() }) },
  listBackups: { input: ofShop, output: z.strictObject({ backups: z.array(backupSchema) }) },
  /** Opens a backup as a shop of its own in the program's folder; the shop it was of stays as it is. */
  openBackup: { input: z.strictObject({ handle, id: z.string().max(200) }), output: openAnswer },

  /** The plan that was accepted last, kept beside the shop as *.plan.json. */
  readPlan: { input: ofShop, output: z.strictObject({ plan: planSchema.nullable() }) },
  /** Null: no plan is accepted any more, and the file beside the shop goes. */
  keepPlan: {
    input: z.strictObject({ handle, plan: planSchema.nullable() }),
    output: z.discriminatedUnion("status", [z.strictObject({ status: z.literal("kept") }), failed]),
  },

  /** The mesh file of a part. `sameAsMeasured` false: the file is not the one that was measured. */
  readMesh: {
    input: z.strictObject({ handle, partId: z.string() }),
    output: z.discriminatedUnion("status", [
      z.strictObject({
        status: z.literal("read"),
        fileName: z.string(),
        sameAsMeasured: z.boolean(),
        bytes,
      }),
      failed,
    ]),
    bytes: "out",
  },
  /** Keeps a dropped mesh beside the shop; `file` and `sha256` belong into the part's geometry. */
  storeMesh: {
    input: z.strictObject({ handle, fileName, bytes }),
    output: z.discriminatedUnion("status", [
      z.strictObject({ status: z.literal("stored"), file: z.string(), sha256: z.string() }),
      failed,
    ]),
    bytes: "in",
  },
  /** Writes a report where the person says; "not-here" in the browser, where the screen downloads it itself. */
  writeExport: {
    input: z.strictObject({ fileName, bytes }),
    output: z.discriminatedUnion("status", [written, cancelled, notHere, failed]),
    bytes: "in",
  },
  /** PDF of a sheet (`html`), or of the window when null; "not-here" in the browser: use window.print(). */
  printPdf: {
    input: z.strictObject({ fileName, html: z.string().nullable(), landscape: z.boolean() }),
    output: z.discriminatedUnion("status", [written, cancelled, notHere, failed]),
  },

  readPreferences: { input: nothing, output: z.strictObject({ preferences: preferencesSchema }) },
  writePreferences: {
    input: z.strictObject({ preferences: preferencesSchema }),
    output: z.discriminatedUnion("status", [z.strictObject({ status: z.literal("kept") }), failed]),
  },
} as const satisfies Readonly<Record<string, MethodShape>>;

export type MethodName = keyof typeof METHODS;
export type Input<Name extends MethodName> = z.input<(typeof METHODS)[Name]["input"]>;
export type Output<Name extends MethodName> = z.output<(typeof METHODS)[Name]["output"]>;

/** What the screen holds: one function for every method, whichever door it came through. */
export interface Host {
  call<Name extends MethodName>(name: Name, input: Input<Name>): Promise<Answer<Output<Name>>>;
}

/** Where the preload script puts the window's door; absent in a browser. */
export const BRIDGE = "hopperSpool";
/** Where the browser's door keeps its token once it has been taken off the address. */
export const TOKEN_KEY = "token";
export const TOKEN_HEADER = "x-launch-token";
/** Paths of the loopback server: JSON, and frames with bytes. */
export const CALL_PATH = "/call/";
export const BYTES_PATH = "/bytes/";
