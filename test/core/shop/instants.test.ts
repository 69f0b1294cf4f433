import { describe, expect, test } from "vitest";
import {
  dayNumberOf,
  instantOf,
  isDay,
  isInstant,
  isTimeZone,
  localDayNumber,
  localReading,
  minuteOf,
  minuteOfLocal,
} from "../../../core/shop/instants.ts";
import { seededRandom } from "../../../core/units/random.ts";

const BERLIN = "Europe/Berlin";

describe("an instant with an offset", () => {
  test("does not depend on the time zone", () => {
    const minute = Date.UTC(2026, 10, 30, 5, 0) / 60_000;
    expect(minuteOf("2026-11-30T06:00:00+01:00", "Asia/Tokyo")).toBe(minute);
    expect(minuteOf("2026-11-30T05:00Z", BERLIN)).toBe(minute);
  });

  test("is rounded down to the minute", () => {
    expect(minuteOf("1970-01-01T00:00:59.999Z", "UTC")).toBe(0);
    expect(minuteOf("1970-01-01T00:01:00Z", "UTC")).toBe(1);
    expect(minuteOf("1969-12-31T23:59:30Z", "UTC")).toBe(-1);
  });

  test("may have a half-hour or negative offset", () => {
    expect(minuteOf("2026-01-01T00:00+05:30", "UTC")).toBe(minuteOf("2025-12-31T18:30Z", "UTC"));
    expect(minuteOf("2026-01-01T00:00-03:30", "UTC")).toBe(minuteOf("2026-01-01T03:30Z", "UTC"));
  });
});

describe("a local time", () => {
  test("is read in the zone with the offset of that day", () => {
    expect(minuteOf("2026-01-15T12:00", BERLIN)).toBe(minuteOf("2026-01-15T11:00Z", BERLIN));
    expect(minuteOf("2026-07-15T12:00", BERLIN)).toBe(minuteOf("2026-07-15T10:00Z", BERLIN));
  });

  test("just before, in and after the skipped hour moves forward by the gap only in it", () => {
    expect(minuteOf("2026-03-29T01:59", BERLIN)).toBe(minuteOf("2026-03-29T00:59Z", BERLIN));
    expect(minuteOf("2026-03-29T02:00", BERLIN)).toBe(minuteOf("2026-03-29T03:00+02:00", BERLIN));
    expect(minuteOf("2026-03-29T02:30", BERLIN)).toBe(minuteOf("2026-03-29T03:30+02:00", BERLIN));
    expect(minuteOf("2026-03-29T03:00", BERLIN)).toBe(minuteOf("2026-03-29T03:00+02:00", BERLIN));
  });

  test("that comes twice is the first of the two", () => {
    expect(minuteOf("2026-10-25T02:30", BERLIN)).toBe(minuteOf("2026-10-25T02:30+02:00", BERLIN));
    expect(minuteOf("2026-10-25T03:00", BERLIN)).toBe(minuteOf("2026-10-25T03:00+01:00", BERLIN));
  });

  test("says whether it is skipped, comes once or twice", () => {
    const readings = ["01:59", "02:00", "02:59", "03:00"].map((time) =>
      localReading(`2026-03-29T${time}`, BERLIN),
    );
    expect(readings).toEqual(["once", "skipped", "skipped", "once"]);
    const back = ["01:59", "02:00", "02:59", "03:00"].map((time) =>
      localReading(`2026-10-25T${time}`, BERLIN),
    );
    expect(back).toEqual(["once", "twice", "twice", "once"]);
    expect(localReading("2026-03-29T02:30+01:00", BERLIN)).toBe("once");
  });

  test("of a midnight that clocks skip is the first minute of that day (Cairo, 24 April 2026)", () => {
    expect(localReading("2026-04-24T00:00", "Africa/Cairo")).toBe("skipped");
    expect(instantOf(minuteOf("2026-04-24T00:00", "Africa/Cairo"), "Africa/Cairo")).toBe(
      "2026-04-24T01:00:00+03:00",
    );
  });

  test("of a whole day that a country left out moves to the next (Samoa, 30 December 2011)", () => {
    expect(localReading("2011-12-30T12:00", "Pacific/Apia")).toBe("skipped");
    expect(instantOf(minuteOf("2011-12-30T12:00", "Pacific/Apia"), "Pacific/Apia")).toBe(
      "2011-12-31T12:00:00+14:00",
    );
  });

  test("moves by half an hour where clocks do (Lord Howe Island, 4 October 2026)", () => {
    expect(instantOf(minuteOf("2026-10-04T02:15", "Australia/Lord_Howe"), "Australia/Lord_Howe")).toBe(
      "2026-10-04T02:45:00+11:00",
    );
  });
});

describe("writing an instant", () => {
  test("shows the zone's own offset, also a negative and a half-hour one", () => {
    const minute = minuteOf("2026-11-30T05:00Z", "UTC");
    expect(instantOf(minute, BERLIN)).toBe("2026-11-30T06:00:00+01:00");
    expect(instantOf(minute, "UTC")).toBe("2026-11-30T05:00:00+00:00");
    expect(instantOf(minute, "America/St_Johns")).toBe("2026-11-30T01:30:00-03:30");
    expect(instantOf(minute, "Asia/Kolkata")).toBe("2026-11-30T10:30:00+05:30");
  });

  test("and reading it back gives the same minute, through every change of clocks of ten years", () => {
    const random = seededRandom(11);
    for (const zone of [BERLIN, "America/New_York", "Australia/Lord_Howe", "Africa/Cairo", "Asia/Tokyo"]) {
      for (let round = 0; round < 300; round += 1) {
        const minute = Math.floor(minuteOf("2020-01-01T00:00Z", "UTC") + random() * 10 * 366 * 1440);
        expect(minuteOf(instantOf(minute, zone), "UTC")).toBe(minute);
      }
    }
  });
});

describe("what is no instant", () => {
  test.each([
    "2026-02-30T08:00Z",
    "2026-13-01T08:00Z",
    "2026-00-10T08:00Z",
    "2027-02-29T08:00",
    "2026-02-28T25:00",
    "2026-02-28T23:60",
    "2026-02-28T24:01",
    "2026-02-28T24:00:01",
    "2026-02-28T12:00:60",
    "2026-04-31T08:00",
    "2026-01-00T08:00",
    "2026-01-01T00:00+24:00",
    "2026-01-01",
    "tomorrow",
    "",
  ])("%j is refused", (text) => {
    expect(isInstant(text)).toBe(false);
    expect(() => minuteOf(text, "UTC")).toThrow(RangeError);
  });

  test("29 February exists in leap years only (2000 was one, 1900 and 2100 not)", () => {
    expect(["2000-02-29", "2028-02-29", "1900-02-29", "2100-02-29", "2026-02-29"].map(isDay)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });

  test("a date exists exactly where it survives a round trip through the language's own calendar (400 years)", () => {
    for (let year = 1899; year <= 2299; year += 1) {
      for (const month of ["02", "04", "12"]) {
        for (const day of ["28", "29", "30", "31", "32"]) {
          const date = `${year}-${month}-${day}`;
          const carried = new Date(Date.UTC(year, Number(month) - 1, Number(day))).toISOString().slice(0, 10);
          expect(isDay(date) === (carried === date), date).toBe(true);
        }
      }
    }
  });

  test("24:00 is the next midnight", () => {
    expect(minuteOf("2026-02-28T24:00Z", "UTC")).toBe(minuteOf("2026-03-01T00:00Z", "UTC"));
  });
});

test("only names of the time zone database are time zones", () => {
  expect(["Europe/Berlin", "UTC", "America/Chicago"].every(isTimeZone)).toBe(true);
  expect(["Berlin", "Europe/Nowhere", "+01:00", ""].some(isTimeZone)).toBe(false);
  expect(() => instantOf(0, "Europe/Nowhere")).toThrow("no such time zone: Europe/Nowhere");
});

test("days count from 1970-01-01 and local ones change at local midnight", () => {
  expect(dayNumberOf("1970-01-08")).toBe(7);
  expect(dayNumberOf("1969-12-31")).toBe(-1);
  expect(localDayNumber(minuteOf("1970-01-01T23:00Z", "UTC") - 1, BERLIN)).toBe(0);
  expect(localDayNumber(minuteOf("1970-01-01T23:00Z", "UTC"), BERLIN)).toBe(1);
  expect(minuteOfLocal(1, 0, BERLIN)).toBe(minuteOf("1970-01-01T23:00Z", "UTC"));
});
