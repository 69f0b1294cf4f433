import { expect, test } from "vitest";
import { workingTime } from "../../core/plan/time/working-time.ts";
import { instantOf, localReading, minuteOf } from "../../core/shop/instants.ts";

/*
 * When clocks change, by law:
 * European Union: Directive 2000/84/EC of the European Parliament and of the Council on summer-time arrangements (2001):
 *   at 01:00 UTC on the last Sundays of March and October.
 * United States: Energy Policy Act of 2005, section 110: at 02:00 local time on the second Sunday of March and the first
 *   Sunday of November.
 * Japan and Arizona do not change. Dates of 2026 counted by hand from these rules. All from memory.
 */
const RULES = [
  { zone: "Europe/Berlin", forward: "2026-03-29T01:00Z", back: "2026-10-25T01:00Z" },
  { zone: "Europe/Lisbon", forward: "2026-03-29T01:00Z", back: "2026-10-25T01:00Z" },
  { zone: "America/New_York", forward: "2026-03-08T07:00Z", back: "2026-11-01T06:00Z" },
  { zone: "America/Los_Angeles", forward: "2026-03-08T10:00Z", back: "2026-11-01T09:00Z" },
] as const;

const ALWAYS = {
  id: "always",
  name: "Round the clock",
  shifts: [{ days: [1, 2, 3, 4, 5, 6, 7], start: "00:00", end: "24:00", operators: 1 }],
  closures: [],
};

/** Hours of round-the-clock work in the week from a Monday to the next. */
function weekHours(zone: string, monday: string, nextMonday: string): number {
  const { windows } = workingTime(
    ALWAYS,
    zone,
    minuteOf(`${monday}T00:00`, zone),
    minuteOf(`${nextMonday}T00:00`, zone),
  );
  return windows.reduce((sum, { startMin, endMin }) => sum + endMin - startMin, 0) / 60;
}

/** By how many minutes the clock on the wall moves in the minute that ends at an instant. */
function wallStepMin(instant: string, zone: string): number {
  const wallMin = (minute: number): number => Date.parse(`${instantOf(minute, zone).slice(0, 19)}Z`) / 60_000;
  const minute = minuteOf(instant, "UTC");
  return wallMin(minute) - wallMin(minute - 1);
}

test.each(RULES)(
  "clocks in $zone jump an hour at the minute that the law says",
  ({ zone, forward, back }) => {
    expect(wallStepMin(forward, zone)).toBe(61);
    expect(wallStepMin(back, zone)).toBe(-59);
    expect(localReading(instantOf(minuteOf(back, "UTC"), zone).slice(0, 16), zone)).toBe("twice");
  },
);

test("the weeks of the changes have 167 and 169 hours, where clocks do not change always 168", () => {
  expect(weekHours("Europe/Berlin", "2026-03-23", "2026-03-30")).toBe(167);
  expect(weekHours("Europe/Berlin", "2026-10-19", "2026-10-26")).toBe(169);
  expect(weekHours("America/New_York", "2026-03-02", "2026-03-09")).toBe(167);
  expect(weekHours("America/New_York", "2026-10-26", "2026-11-02")).toBe(169);
  for (const zone of ["Asia/Tokyo", "America/Phoenix", "UTC"]) {
    expect(weekHours(zone, "2026-03-23", "2026-03-30")).toBe(168);
    expect(weekHours(zone, "2026-10-19", "2026-10-26")).toBe(168);
  }
});
