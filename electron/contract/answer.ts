import { z } from "zod";

/**
 * Why a call could not be answered. gone: the handle is not known any more, open the shop again; file: the disk said no, the
 * sentence says what to do; refused: the input does not fit the contract, which is a fault of the caller; fault: a fault of
 * the program.
 */
export const troubleSchema = z.strictObject({
  code: z.enum(["gone", "file", "refused", "fault"]),
  sentence: z.string(),
});

export type Trouble = z.infer<typeof troubleSchema>;

/** Errors are data: a call never throws for what happened on the other side. */
export type Answer<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly trouble: Trouble };

/** Bytes of a file. They travel as they are: by structured clone in the window, as a frame over the loopback. */
export const bytes = z.instanceof(Uint8Array);

/** A name for a file that somebody may choose to write: never a path. */
export const fileName = z
  .string()
  .min(1)
  .max(200)
  .regex(/^[^/\\\0]+$/, "must be a name without folders");
