import { expect, test } from "vitest";
import { minuteOf } from "../../../core/shop/instants.ts";
import { localTime } from "../../../core/shop/local-time.ts";
import { clockText, dateTimeText, durationText } from "../../../core/shop/time-words.ts";

test.each([
  [0, "0 min"],
  [59.4, "59 min"],
  [60, "1 h"],
  [119.6, "2 h"],
  [400, "6 h 40 min"],
  [1439, "23 h 59 min"],
  [1440, "24 h"],
  [1441, "1 d"],
  [1470, "1 d 1 h"],
  [2879, "2 d"],
  [7500, "5 d 5 h"],
  [-30, "\u221230 min"],
  [-3000, "\u22122 d 2 h"],
])("%d min is %s", (minutes, text) => {
  expect(durationText(minutes)).toBe(text);
});

test("a time has its weekday, and the year where it is not the one given", () => {
  const time = localTime(minuteOf("2026-12-07T14:07Z", "UTC"), "Europe/Berlin");
  expect([dateTimeText(time, "2026"), dateTimeText(time, "2027")]).toEqual([
    "Mon 7 Dec 15:07",
    "Mon 7 Dec 2026 15:07",
  ]);
});

test("the hour that comes twice says which of the two it is", () => {
  expect([clock("2026-10-25T00:30Z"), clock("2026-10-25T01:30Z"), clock("2026-10-25T02:30Z")]).toEqual([
    "02:30 (+02:00)",
    "02:30 (+01:00)",
    "03:30",
  ]);
});

function clock(instant: string): string {
  return clockText(localTime(minuteOf(instant, "UTC"), "Europe/Berlin"));
}
