import { z } from "zod";
import { closedDays, id, name, timeOfDay } from "./fields.ts";

/** One regular stretch of staffed time. It may pass midnight: end is then on the next day. */
export const shiftSchema = z.strictObject({
  days: z
    .array(z.int().min(1, "must be from 1 (Monday) to 7").max(7, "must be from 1 (Monday) to 7"))
    .min(1, "names no day")
    .describe("days on which the shift starts, ISO 8601: Monday 1 to Sunday 7"),
  start: timeOfDay.describe("start, local time of day"),
  end: timeOfDay.describe("end, local time of day; at or before start means the next day"),
  operators: z
    .int()
    .min(0, "must not be negative")
    .describe("how many set-ups and unloads can go on at once"),
});

/** When people are there. */
export const calendarSchema = z.strictObject({
  id: id.describe("id, unique in the list"),
  name: name.describe("name, as shown"),
  shifts: z.array(shiftSchema).describe("regular shifts of a week"),
  closures: z
    .array(closedDays)
    .describe("days on which the works is shut: nobody is there and no machine runs"),
});

export type Shift = z.infer<typeof shiftSchema>;
export type Calendar = z.infer<typeof calendarSchema>;
