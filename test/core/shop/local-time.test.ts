import { describe, expect, it } from "vitest";
import {
  dayAndMonth,
  daysBetween,
  isoWeek,
  localDays,
  localTime,
  nextFullHour,
  weekdayName,
  weekdayOf,
} from "../../../core/shop/local-time.ts";
import { minuteOf } from "../../../core/shop/instants.ts";

describe("weeks and weekdays", () => {
  // ISO 8601-1:2019: week 1 holds the year's first Thursday. Dates and weeks as published in examples of that standard.
  it.each([
    ["2005-01-01", 2004, 53, 6],
    ["2007-12-31", 2008, 1, 1],
    ["2008-12-29", 2009, 1, 1],
    ["2010-01-03", 2009, 53, 7],
    ["2024-12-30", 2025, 1, 1],
    ["2026-01-01", 2026, 1, 4],
    ["2026-12-31", 2026, 53, 4],
    ["2027-01-03", 2026, 53, 7],
    ["2027-01-04", 2027, 1, 1],
  ])("%s is in week %i-W%i, day %i", (date, year, week, day) => {
    expect(isoWeek(date)).toEqual({ year, week });
    expect(weekdayOf(date)).toBe(day);
  });

  it("counts backwards before 1970 as well", () => {
    // 4 October 1957 was a Friday (common knowledge).
    expect(weekdayName("1957-10-04")).toBe("Friday");
  });

  it("writes day and month in words", () => {
    expect(dayAndMonth("2026-11-05")).toBe("5 November");
    expect(daysBetween("2026-11-30", "2026-12-02")).toBe(2);
  });
});

describe("local days", () => {
  it.each([
    ["2026-10-24T09:00", 24],
    ["2026-10-25T09:00", 25],
    ["2026-03-29T09:00", 23],
  ])("the day of %s in Berlin has %i hours", (from, hours) => {
    const [day] = localDays(minuteOf(from, "Europe/Berlin"), 1, "Europe/Berlin");
    expect(((day?.endMin ?? 0) - (day?.startMin ?? 0)) / 60).toBe(hours);
  });

  it("follow each other without a gap over a change of clocks", () => {
    const days = localDays(minuteOf("2026-10-20T00:00", "Europe/Berlin"), 10, "Europe/Berlin");
    for (const [index, day] of days.slice(1).entries()) expect(day.startMin).toBe(days[index]?.endMin);
    expect(days.at(-1)?.date).toBe("2026-10-29");
  });
});

describe("local time", () => {
  it("says which of two equal clock times is meant on the night on which clocks go back", () => {
    const first = minuteOf("2026-10-25T00:30Z", "UTC");
    expect(localTime(first, "Europe/Berlin")).toEqual({
      date: "2026-10-25",
      clock: "02:30",
      whichOfTwo: "+02:00",
    });
    expect(localTime(first + 60, "Europe/Berlin").whichOfTwo).toBe("+01:00");
  });

  it("says nothing of the kind at any other time", () => {
    expect(localTime(minuteOf("2026-10-25T02:00Z", "UTC"), "Europe/Berlin").whichOfTwo).toBe("");
    expect(localTime(minuteOf("2026-10-24T23:30Z", "UTC"), "Europe/Berlin").whichOfTwo).toBe("");
  });
});

describe("the next full hour of local clocks", () => {
  it.each([
    ["2026-11-30T05:10Z", "Europe/Berlin", "2026-11-30T06:00Z"],
    ["2026-11-30T05:00Z", "Europe/Berlin", "2026-11-30T05:00Z"],
    ["2026-11-30T05:10Z", "Asia/Kolkata", "2026-11-30T05:30Z"],
    ["2026-11-30T05:30Z", "Asia/Kolkata", "2026-11-30T05:30Z"],
    ["2026-11-30T05:10Z", "Asia/Kathmandu", "2026-11-30T05:15Z"],
    // Clocks go from 02:00 to 02:30: the next full hour is 03:00.
    ["2026-10-03T15:20Z", "Australia/Lord_Howe", "2026-10-03T16:00Z"],
  ])("after %s in %s it is %s", (now, zone, next) => {
    expect(nextFullHour(minuteOf(now, "UTC"), zone)).toBe(minuteOf(next, "UTC"));
  });

  it("is not one that began within the minute", () => {
    expect(nextFullHour(minuteOf("2026-11-30T05:00Z", "UTC") + 0.5, "Europe/Berlin")).toBe(
      minuteOf("2026-11-30T06:00Z", "UTC"),
    );
  });
});
