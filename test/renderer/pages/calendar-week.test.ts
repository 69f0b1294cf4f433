import { describe, expect, test } from "vitest";
import type { Calendar } from "../../../core/shop/calendar.ts";
import { staffedHours, staffedPieces } from "../../../renderer/pages/machines/calendar-week.ts";

function calendar(...shifts: Calendar["shifts"]): Calendar {
  return { id: "c", name: "c", shifts, closures: [] };
}

function pieces(...shifts: Calendar["shifts"]): string[] {
  return staffedPieces(calendar(...shifts)).map(
    ({ day, fromMin, toMin, operators, shifts: places }) =>
      `${day} ${fromMin}-${toMin} ${operators} of ${places.join("+")}`,
  );
}

describe("a week of shifts", () => {
  test("goes on over midnight into the next day, and from Sunday into Monday", () => {
    expect(pieces({ days: [3], start: "22:00", end: "06:00", operators: 1 })).toEqual([
      "3 1320-1440 1 of 0",
      "4 0-360 1 of 0",
    ]);
    expect(pieces({ days: [7], start: "22:00", end: "06:00", operators: 1 })).toEqual([
      "1 0-360 1 of 0",
      "7 1320-1440 1 of 0",
    ]);
  });

  test("counts the larger number of operators where shifts overlap, not the sum", () => {
    expect(
      pieces(
        { days: [1], start: "06:00", end: "14:00", operators: 2 },
        { days: [1], start: "12:00", end: "20:00", operators: 3 },
      ),
    ).toEqual(["1 360-720 2 of 0", "1 720-840 3 of 0+1", "1 840-1200 3 of 1"]);
  });

  test("that end when they start last 24 hours; those without operators are not staffed", () => {
    const all = staffedPieces(calendar({ days: [2], start: "06:00", end: "06:00", operators: 1 }));
    expect(staffedHours(all)).toBe(24);
    expect(
      staffedHours(staffedPieces(calendar({ days: [2], start: "06:00", end: "14:00", operators: 0 }))),
    ).toBe(0);
  });

  test("adds up to the hours of the shifts, midnight at the end included", () => {
    const all = staffedPieces(
      calendar({ days: [1, 2, 3, 4, 5], start: "06:00", end: "24:00", operators: 1 }),
    );
    expect(staffedHours(all)).toBe(90);
  });
});
