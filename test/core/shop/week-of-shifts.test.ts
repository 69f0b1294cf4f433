import { describe, expect, test } from "vitest";
import type { Shift } from "../../../core/shop/calendar.ts";
import {
  lastsAllDay,
  longestStaffedMin,
  minuteOfDay,
  overlappingShifts,
} from "../../../core/shop/week-of-shifts.ts";
import { aCalendar } from "../../fixtures/a-route.ts";

const of = (...shifts: readonly [start: string, end: string, days: number[], operators?: number][]) =>
  aCalendar({
    shifts: shifts.map(([start, end, days, operators = 1]): Shift => ({ start, end, days, operators })),
  });

describe("shifts overlap", () => {
  test("by a minute, not where they only touch", () => {
    expect(overlappingShifts(of(["06:00", "14:00", [1]], ["13:59", "22:00", [1]]))).toEqual([[0, 1]]);
    expect(overlappingShifts(of(["06:00", "14:00", [1]], ["14:00", "22:00", [1]]))).toEqual([]);
    expect(overlappingShifts(of(["06:00", "14:00", [1]], ["08:00", "10:00", [2]]))).toEqual([]);
  });

  test("past midnight, and past Sunday midnight into Monday", () => {
    expect(overlappingShifts(of(["22:00", "06:00", [1]], ["05:00", "13:00", [2]]))).toEqual([[0, 1]]);
    expect(overlappingShifts(of(["05:00", "13:00", [1]], ["22:00", "06:00", [7]]))).toEqual([[0, 1]]);
    expect(overlappingShifts(of(["06:00", "13:00", [1]], ["22:00", "06:00", [7]]))).toEqual([]);
  });

  test("three together, each pair once however many days", () => {
    const every = [1, 2, 3, 4, 5];
    const pairs = overlappingShifts(
      of(["06:00", "20:00", every], ["08:00", "09:00", every], ["19:00", "22:00", every]),
    );
    expect(pairs).toEqual([
      [0, 1],
      [0, 2],
    ]);
  });

  test("with themselves where a day is named twice, not where they last all day every day", () => {
    expect(overlappingShifts(of(["06:00", "14:00", [1, 1]]))).toEqual([[0, 0]]);
    expect(overlappingShifts(of(["06:00", "06:00", [1, 2, 3, 4, 5, 6, 7]]))).toEqual([]);
  });
});

describe("the longest staffed time of a week", () => {
  test("joins shifts that touch, also over Sunday midnight", () => {
    expect(longestStaffedMin(of(["06:00", "14:00", [1]], ["14:00", "22:00", [1]]))).toBe(960);
    expect(longestStaffedMin(of(["22:00", "24:00", [7]], ["00:00", "03:00", [1]]))).toBe(300);
  });

  test("is without end where somebody is always there, and 0 where nobody ever is", () => {
    expect(longestStaffedMin(of(["06:00", "06:00", [1, 2, 3, 4, 5, 6, 7]]))).toBe(Infinity);
    expect(longestStaffedMin(of(["06:00", "06:00", [1, 2, 3, 4, 5, 6]]))).toBe(6 * 1440);
    expect(longestStaffedMin(of())).toBe(0);
    expect(longestStaffedMin(of(["06:00", "14:00", [1], 0]))).toBe(0);
  });
});

test("a shift that ends when it starts lasts all day", () => {
  const [shift] = of(["06:00", "06:00", [1]]).shifts;
  expect(shift && lastsAllDay(shift)).toBe(true);
});

test("a time of day is minutes from midnight", () => {
  expect([minuteOfDay("00:00"), minuteOfDay("06:30"), minuteOfDay("24:00")]).toEqual([0, 390, 1440]);
});
