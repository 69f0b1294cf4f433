import type { FormatRules } from "../../renderer/format/format.ts";

/** How a works in Berlin with metric units writes for a British reader. */
export const BRITISH_RULES: FormatRules = {
  currency: "EUR",
  timeZone: "Europe/Berlin",
  length: "mm",
  mass: "kg",
  language: "en-GB",
  dateOrder: "dmy",
  year: "2026",
};
