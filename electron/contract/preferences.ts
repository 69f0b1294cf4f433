import { z } from "zod";

const shortText = z.string().max(200);

/** How this person likes the window; nothing of it belongs to the shop. */
export const preferencesSchema = z.strictObject({
  schema: z.literal(1),
  theme: z.enum(["system", "light", "dark"]),
  units: z.enum(["shop", "metric", "inch"]).describe("shop: as the shop document says"),
  locale: z.string().max(35).nullable().describe("BCP 47 tag for numbers and dates; null: the system's"),
  columnMappings: z
    .array(
      z.strictObject({
        name: shortText.describe("what this mapping is for, such as the heads of the file joined"),
        columns: z.record(shortText, shortText).describe("column of the file by field"),
      }),
    )
    .max(50),
  screen: z
    .record(z.string().max(60), z.string().max(2000))
    .describe("anything small that the screen remembers: open page, widths"),
});

export type Preferences = z.infer<typeof preferencesSchema>;

export const DEFAULT_PREFERENCES: Preferences = {
  schema: 1,
  theme: "system",
  units: "shop",
  locale: null,
  columnMappings: [],
  screen: {},
};
