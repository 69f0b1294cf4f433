import { describe, expect, test } from "vitest";
import { lengthText, localDaysBefore, localText } from "../../../core/plan/local-moments.ts";
import { instantOf, minuteOf } from "../../../core/shop/instants.ts";

const BERLIN = "Europe/Berlin";

test("a minute is shown as the clock on the wall", () => {
  expect(localText(minuteOf("2026-11-30T05:40Z", BERLIN), BERLIN)).toBe("2026-11-30 06:40");
});

describe("local days earlier", () => {
  test("the same time of day", () => {
    expect(before("2026-11-30T06:00", 3)).toBe("2026-11-27T06:00:00+01:00");
    expect(before("2026-11-30T06:00", 0)).toBe("2026-11-30T06:00:00+01:00");
  });

  test("also over the night in which clocks go forward, and back", () => {
    expect(before("2026-03-30T06:00", 2)).toBe("2026-03-28T06:00:00+01:00");
    expect(before("2026-10-26T06:00", 2)).toBe("2026-10-24T06:00:00+02:00");
  });

  test("half a day is taken off in hours", () => {
    expect(before("2026-11-30T06:00", 1.5)).toBe("2026-11-28T18:00:00+01:00");
  });
});

test("lengths of time in hours and minutes", () => {
  expect([0, 7, 60, 119.6, 400].map(lengthText)).toEqual(["0 min", "7 min", "1 h", "2 h", "6 h 40 min"]);
});

function before(instant: string, days: number): string {
  return instantOf(localDaysBefore(minuteOf(instant, BERLIN), days, BERLIN), BERLIN);
}
