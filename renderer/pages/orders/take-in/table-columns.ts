import { type Accessor, createMemo, createSignal } from "solid-js";
import type { Choice } from "../../../components/select.tsx";
import {
  type DateOrder,
  isAmbiguousDate,
  possibleOrders,
  readInstant,
} from "../../../format/date-reading.ts";
import type { Stores } from "../../../store/stores.ts";
import type { OrderField } from "../order-fields.ts";
import { type ColumnMap, foundColumns, guessColumns, mappingName } from "./guess-columns.ts";
import type { Table } from "./read-table.ts";

/** How a table is to be read: which column is what, whose numbers, whose dates. Guessed first, then as somebody says. */
export interface TableColumns {
  readonly heads: Accessor<readonly string[]>;
  readonly rows: Accessor<readonly (readonly string[])[]>;
  readonly map: Accessor<ColumnMap>;
  readonly setColumn: (field: OrderField, place: number | null) => void;
  /** language whose numbers the table holds */
  readonly language: Accessor<string>;
  readonly setLanguage: (language: string) => void;
  /** true where dates can be read two ways and none says which */
  readonly mustAskOrder: Accessor<boolean>;
  readonly ambiguousDate: Accessor<string>;
  readonly dateOrder: Accessor<DateOrder | null>;
  readonly orderChoices: Accessor<readonly Choice[]>;
  readonly setDateOrder: (order: string) => void;
}

const DATE_FIELDS = ["due", "release"] as const;

export function createTableColumns(table: Table, { prefs, format }: Stores): TableColumns {
  const heads = createMemo(() => table.rows[0] ?? []);
  const rows = createMemo(() => table.rows.slice(1));
  const kept = prefs.prefs().columnMappings.find(({ name }) => name === mappingName(heads()));
  const found = kept && foundColumns(kept.columns, heads());
  const [map, setMap] = createSignal<ColumnMap>(found ?? guessColumns(heads()));
  const [said, setSaid] = createSignal<string | null>(null);
  const guessed = createMemo(() => guessLanguage(rows(), map(), format().language));
  const [asked, setAsked] = createSignal<DateOrder | null>(null);
  const dates = createMemo(() => {
    const places = DATE_FIELDS.flatMap((field) => map()[field] ?? []);
    return places.flatMap((place) => rows().map((row) => row[place] ?? ""));
  });
  const possible = createMemo(() => possibleOrders(dates()));
  const ambiguousDate = createMemo(() => dates().find(isAmbiguousDate) ?? "");
  const mustAskOrder = createMemo(() => possible().length > 1 && ambiguousDate() !== "");
  return {
    heads,
    rows,
    map,
    setColumn: (field, place) =>
      void setMap((before) => {
        const { [field]: _old, ...rest } = before;
        return place === null ? rest : { ...rest, [field]: place };
      }),
    language: createMemo(() => said() ?? guessed()),
    setLanguage: (next) => void setSaid(next),
    mustAskOrder,
    ambiguousDate,
    dateOrder: createMemo(() => (mustAskOrder() ? asked() : (possible()[0] ?? format().dateOrder))),
    orderChoices: createMemo(() => orderChoices(ambiguousDate(), format().timeZone, format().dateTime)),
    setDateOrder: (order) => void setAsked(order === "" ? null : (order as DateOrder)),
  };
}

/** What an unclear date could mean, in words. */
export function orderChoices(text: string, timeZone: string, words: (instant: string) => string): Choice[] {
  return (["dmy", "mdy"] as const).map((order) => {
    const instant = readInstant(text, { order, timeZone, usualTime: "00:00" });
    const title = order === "dmy" ? "day first" : "month first";
    return { value: order, label: instant === null ? title : `${title}: ${words(instant)}` };
  });
}

/** "de-DE" where amounts clearly have decimal commas, "en-GB" where points; else as the screen has it. */
function guessLanguage(rows: readonly (readonly string[])[], map: ColumnMap, usual: string): string {
  const MOST_ROWS = 2000;
  const places = (["price", "lateCost", "quantity"] as const).flatMap((field) => map[field] ?? []);
  const texts = rows.slice(0, MOST_ROWS).flatMap((row) => places.map((place) => row[place]?.trim() ?? ""));
  if (texts.some((text) => /\d,\d{1,2}$|\.\d{3},\d/.test(text))) return "de-DE";
  if (texts.some((text) => /\d\.\d{1,2}$|,\d{3}\.\d/.test(text))) return "en-GB";
  return /^(de-CH|en|ja|zh|ko|th|he|hi)/.test(usual) ? "en-GB" : "de-DE";
}
