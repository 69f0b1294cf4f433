import { type Accessor, createMemo } from "solid-js";
import type { Shop } from "../../core/shop/shop.ts";
import type { DateOrder } from "../format/date-reading.ts";
import { type Format, makeFormat } from "../format/format.ts";
import type { Prefs } from "./prefs.ts";

/** Where the answer to "which comes first, the day or the month?" is remembered. */
export const DATE_ORDER_KEY = "date order";

/** The format that everything on the screen reads: one change of units, language or works changes all of it at once. */
export function createFormat(
  shop: Accessor<Shop>,
  { prefs, remembered }: Prefs,
  year: Accessor<string>,
): Accessor<Format> {
  const currency = createMemo(() => shop().currency);
  const timeZone = createMemo(() => shop().timeZone);
  const length = createMemo(() =>
    prefs().units === "shop" ? shop().display.length : isMetric() ? "mm" : "in",
  );
  const mass = createMemo(() => (prefs().units === "shop" ? shop().display.mass : isMetric() ? "kg" : "lb"));
  const language = createMemo(() => prefs().locale ?? systemLanguage());
  const dateOrder = createMemo(() => (remembered(DATE_ORDER_KEY) as DateOrder | null) ?? "dmy");
  function isMetric(): boolean {
    return prefs().units === "metric";
  }
  return createMemo(() =>
    makeFormat({
      currency: currency(),
      timeZone: timeZone(),
      length: length(),
      mass: mass(),
      language: language(),
      dateOrder: dateOrder(),
      year: year(),
    }),
  );
}

/** The machine's own language, or English where a browser names one that Intl does not know. */
function systemLanguage(): string {
  return Intl.NumberFormat.supportedLocalesOf([...navigator.languages])[0] ?? "en-GB";
}
