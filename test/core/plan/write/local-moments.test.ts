import { describe, expect, test } from "vitest";
import { localDaysBefore } from "../../../../core/plan/write/local-moments.ts";
import { instantOf, minuteOf } from "../../../../core/shop/instants.ts";

const BERLIN = "Europe/Berlin";

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

function before(instant: string, days: number): string {
  return instantOf(localDaysBefore(minuteOf(instant, BERLIN), days, BERLIN), BERLIN);
}
