import { describe, expect, test } from "vitest";
import { dayNumberOf } from "../../../core/shop/instants.ts";
import { isoWeek, weekdayOf } from "../../../core/shop/local-time.ts";
import { dayOfIsoWeek, dayOfWeek, monthOfWeek, weekOfDay } from "../../../core/shop/week-number.ts";

describe("weeks by number", () => {
  test("begin on Monday, also before 1970", () => {
    expect(weekOfDay(dayNumberOf("1970-01-04"))).toBe(0);
    expect(weekOfDay(dayNumberOf("1970-01-05"))).toBe(1);
    expect(weekOfDay(dayNumberOf("1969-12-28"))).toBe(-1);
    expect(dayOfWeek(dayNumberOf("1969-12-29"))).toBe(0);
    expect(dayOfWeek(dayNumberOf("2026-11-29"))).toBe(6);
  });

  test("are in the month of their Thursday", () => {
    expect(monthOfWeek(weekOfDay(dayNumberOf("2026-11-30")))).toBe(11);
    expect(monthOfWeek(weekOfDay(dayNumberOf("2026-04-29")))).toBe(3);
    expect(monthOfWeek(weekOfDay(dayNumberOf("2027-01-01")))).toBe(11);
  });

  test("of a year are those of ISO 8601, every day of 20 years", () => {
    for (let day = dayNumberOf("2015-12-20"); day < dayNumberOf("2036-01-10"); day++) {
      const date = new Date(day * 86_400_000).toISOString().slice(0, 10);
      const { year, week } = isoWeek(date);
      expect(dayOfIsoWeek(year, week, weekdayOf(date) - 1)).toBe(date);
    }
  });

  test("that a year does not have are none", () => {
    expect(dayOfIsoWeek(2026, 53, 0)).toBe("2026-12-28");
    expect(dayOfIsoWeek(2027, 53, 0)).toBeNull();
    expect(dayOfIsoWeek(2027, 0, 0)).toBeNull();
    expect(dayOfIsoWeek(2027, 54, 0)).toBeNull();
  });
});
