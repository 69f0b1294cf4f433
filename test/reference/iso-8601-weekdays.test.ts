import { expect, test } from "vitest";
import { workingTime } from "../../core/plan/time/working-time.ts";
import { minuteOf } from "../../core/shop/instants.ts";

/*
 * Days of the week by ISO 8601-1:2019, Monday 1 to Sunday 7, with the calendar dates of week dates that are often given as
 * examples of the standard (from memory): 2005-01-01 is 2004-W53-6, 2007-12-31 is 2008-W01-1, 2010-01-03 is 2009-W53-7,
 * 2026-01-01 is 2026-W01-4, 2026-12-31 is 2026-W53-4, 2027-01-04 is 2027-W01-1.
 */
test.each([
  ["2005-01-01", 6],
  ["2007-12-31", 1],
  ["2008-12-29", 1],
  ["2010-01-03", 7],
  ["2024-12-30", 1],
  ["2026-01-01", 4],
  ["2026-12-31", 4],
  ["2027-01-03", 7],
  ["2027-01-04", 1],
])("a shift on %s falls on day %d of the week and on no other", (date, weekday) => {
  const midnight = minuteOf(`${date}T00:00Z`, "UTC");
  for (let day = 1; day <= 7; day += 1) {
    const shift = { days: [day], start: "06:00", end: "14:00", operators: 1 };
    const calendar = { id: "c", name: "c", shifts: [shift], closures: [] };
    const { windows } = workingTime(calendar, "UTC", midnight, midnight + 1440);
    expect(windows.length).toBe(day === weekday ? 1 : 0);
  }
});
