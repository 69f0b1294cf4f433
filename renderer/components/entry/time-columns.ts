import type { Accessor } from "solid-js";
import { isDay } from "../../../core/shop/instants.ts";
import type { Format } from "../../format/format.ts";
import type { ValueColumn } from "./value-columns.ts";

interface TimeOptions<Row> {
  readonly id: string;
  readonly title: string;
  readonly get: (row: Row) => string;
  readonly set: (row: Row, value: string) => Row;
}

/** A date with a time of day; a date alone is its midnight. */
export function instantColumn<Row>(format: Accessor<Format>, options: TimeOptions<Row>): ValueColumn<Row> {
  const { id, title, get, set } = options;
  return {
    id,
    title,
    widthPx: 148,
    kind: "text",
    text: (row) => format().editedDateTime(get(row)),
    put: (row, text) => {
      const instant = format().readInstant(text, "00:00");
      return instant === null
        ? { unfit: `${title}: write a date and a time like 2026-11-30 06:00.` }
        : set(row, instant);
    },
  };
}

/** A local day, read in any order that dates are read in. Example: "5.12.2026" gives "2026-12-05". */
export function dayColumn<Row>(format: Accessor<Format>, options: TimeOptions<Row>): ValueColumn<Row> {
  const { id, title, get, set } = options;
  return {
    id,
    title,
    widthPx: 110,
    kind: "text",
    text: get,
    put: (row, text) => {
      const plain = text.trim();
      if (isDay(plain)) return set(row, plain);
      const instant = format().readInstant(plain, "12:00");
      return instant === null
        ? { unfit: `${title}: write a date like 2026-12-24.` }
        : set(row, format().editedDateTime(instant).slice(0, 10));
    },
  };
}

/** A time of day. Examples: "6", "6:00", "0600" and "6.00" give "06:00"; "24:00" is the end of the day. */
export function clockColumn<Row>({ id, title, get, set }: TimeOptions<Row>): ValueColumn<Row> {
  return {
    id,
    title,
    widthPx: 80,
    kind: "text",
    text: get,
    put: (row, text) => {
      const clock = readClock(text);
      return clock === null
        ? { unfit: `${title}: write a time of day like 06:00, at most 24:00.` }
        : set(row, clock);
    },
  };
}

/** Null: no time of day. */
export function readClock(text: string): string | null {
  const [, hour = "", minute = "00"] = /^\s*(\d{1,2})(?:\s*[:.h]?\s*(\d{2}))?\s*$/i.exec(text) ?? [];
  if (hour === "") return null;
  const clock = `${hour.padStart(2, "0")}:${minute}`;
  return /^([01]\d|2[0-3]):[0-5]\d$|^24:00$/.test(clock) ? clock : null;
}
