import { describe, expect, test } from "vitest";
import {
  type DateOrder,
  isAmbiguousDate,
  possibleOrders,
  readInstant,
} from "../../../renderer/format/date-reading.ts";

function read(text: string, order: DateOrder = "dmy"): string | null {
  return readInstant(text, { order, timeZone: "Europe/Berlin", usualTime: "16:00" });
}

describe("a typed date", () => {
  test.each([
    ["2026-11-30T06:00:00+01:00", "2026-11-30T06:00:00+01:00"],
    ["2026-11-30T05:00:00Z", "2026-11-30T06:00:00+01:00"],
    ["2026-11-30 06:40", "2026-11-30T06:40:00+01:00"],
    ["2026-11-30", "2026-11-30T16:00:00+01:00"],
    ["2026/11/30 6:40", "2026-11-30T06:40:00+01:00"],
    ["1.12.2026", "2026-12-01T16:00:00+01:00"],
    ["01.12.26 8:30", "2026-12-01T08:30:00+01:00"],
    ["1. Dec 2026", "2026-12-01T16:00:00+01:00"],
    ["1 December 2026 8:30 pm", "2026-12-01T20:30:00+01:00"],
    ["Dec 1, 2026", "2026-12-01T16:00:00+01:00"],
    ["Mon 30 Nov 2026 06:40", "2026-11-30T06:40:00+01:00"],
    ["12 am 2026", null],
    ["30/11/2026", "2026-11-30T16:00:00+01:00"],
    ["46356", "2026-11-30T16:00:00+01:00"],
    ["2026-06-30 12:00 am", "2026-06-30T00:00:00+02:00"],
    ["2026-06-30 12:00 pm", "2026-06-30T12:00:00+02:00"],
  ])("%s is %s", (text, instant) => {
    expect(read(text)).toBe(instant);
  });

  test("with slashes follows the order, with points it never does", () => {
    expect(read("3/4/2026", "dmy")).toBe("2026-04-03T16:00:00+02:00");
    expect(read("3/4/2026", "mdy")).toBe("2026-03-04T16:00:00+01:00");
    expect(read("3.4.2026", "mdy")).toBe("2026-04-03T16:00:00+02:00");
  });

  test.each([
    "",
    "soon",
    "30.2.2026",
    "31/13/2026",
    "2026-11-31",
    "2026-11-30 25:00",
    "2026-11-30 13:00 pm",
    "1.12.202",
    "5",
    "1/2",
  ])("is none where the text is %j", (text) => {
    expect(read(text)).toBeNull();
  });
});

describe("the order of day and month", () => {
  test("is unclear only where both could be either", () => {
    expect(isAmbiguousDate("03/04/2026")).toBe(true);
    expect(isAmbiguousDate("3-4-26 8:00")).toBe(true);
    expect(isAmbiguousDate("04/04/2026")).toBe(false);
    expect(isAmbiguousDate("13/04/2026")).toBe(false);
    expect(isAmbiguousDate("3.4.2026")).toBe(false);
    expect(isAmbiguousDate("2026-03-04")).toBe(false);
  });

  test("is known from one date that says it", () => {
    expect(possibleOrders(["03/04/2026", "13/04/2026"])).toEqual(["dmy"]);
    expect(possibleOrders(["03/04/2026", "04/13/2026"])).toEqual(["mdy"]);
    expect(possibleOrders(["03/04/2026", "05/06/2026"])).toEqual(["dmy", "mdy"]);
    expect(possibleOrders(["13/04/2026", "04/13/2026"])).toEqual([]);
  });
});
