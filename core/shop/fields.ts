import { z } from "zod";

/** Small building blocks of the shop schema: each says in words what it accepts, so that findings read as sentences. */
export const id = z
  .string()
  .min(1, "is empty: an id needs at least one character")
  .max(64, "is longer than 64 characters");

export const name = z.string().min(1, "is empty").max(10_000, "is longer than 10,000 characters");

export const positive = z.number().positive("must be above 0");

export const notNegative = z.number().nonnegative("must not be negative");

export const percent = z.number().min(0, "must be from 0 to 100").max(100, "must be from 0 to 100");

/** A local date, "2026-11-30". */
export const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'must be a date like "2026-11-30"');

/** A time of day, "06:00" to "24:00". */
export const timeOfDay = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'must be a time of day like "06:00"');

/** An instant: with an offset or Z, or a local time without one, which is read in the shop's time zone. */
export const instant = z
  .string()
  .regex(
    /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})?$/,
    'must be a date and time like "2026-11-30T16:00:00+01:00"',
  );

const axisRange = z.strictObject({ min: positive, max: positive });

/** A range of positive numbers; `check-shop` says when min is above max. */
export const range = axisRange;

export const box = z.strictObject({ x: positive, y: positive, z: positive });

/** From and to, both local dates, the last day included. */
export const closedDays = z.strictObject({
  from: day.describe("first closed day, local date"),
  to: day.describe("last closed day, local date, included"),
  reason: z.string().describe("why, as shown to people"),
});
