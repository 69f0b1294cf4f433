import { describe, expect, test } from "vitest";
import { workingTime } from "../../../../core/plan/time/working-time.ts";
import type { Stretch } from "../../../../core/plan/plan-problem.ts";
import type { Calendar, Shift } from "../../../../core/shop/calendar.ts";
import { instantOf, minuteOf } from "../../../../core/shop/instants.ts";
import { seededRandom } from "../../../../core/units/random.ts";
import { aCalendar } from "../../../fixtures/a-route.ts";

const BERLIN = "Europe/Berlin";
const EVERY_DAY = [1, 2, 3, 4, 5, 6, 7];
const at = (local: string): number => minuteOf(local, BERLIN);

function aShift(start: string, end: string, operators = 1, days = EVERY_DAY): Shift {
  return { days, start, end, operators };
}

function lay(calendar: Calendar, from: string, to: string) {
  return workingTime(calendar, BERLIN, at(from), at(to));
}

function texts(stretches: readonly Stretch[]): string[] {
  return stretches.map(
    ({ startMin, endMin }) =>
      `${instantOf(startMin, BERLIN).slice(5, 16)} ${instantOf(endMin, BERLIN).slice(5, 16)}`,
  );
}

function hours(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, { startMin, endMin }) => sum + endMin - startMin, 0) / 60;
}

describe("windows", () => {
  test("of one shift on working days are five a week", () => {
    const { windows, calendarId } = lay(aCalendar(), "2026-11-30T00:00", "2026-12-07T00:00");
    expect(calendarId).toBe("day");
    expect(texts(windows)).toEqual([
      "11-30T06:00 11-30T14:00",
      "12-01T06:00 12-01T14:00",
      "12-02T06:00 12-02T14:00",
      "12-03T06:00 12-03T14:00",
      "12-04T06:00 12-04T14:00",
    ]);
  });

  test("of shifts that touch are joined, of shifts with a minute between are not", () => {
    const touching = aCalendar({ shifts: [aShift("06:00", "14:00"), aShift("14:00", "22:00")] });
    expect(texts(lay(touching, "2026-11-30T00:00", "2026-12-01T00:00").windows)).toEqual([
      "11-30T06:00 11-30T22:00",
    ]);
    const apart = aCalendar({ shifts: [aShift("06:00", "14:00"), aShift("14:01", "22:00")] });
    expect(lay(apart, "2026-11-30T00:00", "2026-12-01T00:00").windows).toHaveLength(2);
  });

  test("pass midnight with a shift that ends before it starts", () => {
    const night = aCalendar({ shifts: [aShift("22:00", "06:00", 1, [1])] });
    expect(texts(lay(night, "2026-11-30T00:00", "2026-12-07T00:00").windows)).toEqual([
      "11-30T22:00 12-01T06:00",
    ]);
  });

  test("begin with the rest of a shift of the evening before", () => {
    const night = aCalendar({ shifts: [aShift("22:00", "06:00", 1, [7])] });
    expect(texts(lay(night, "2026-11-30T02:00", "2026-12-01T00:00").windows)).toEqual([
      "11-30T02:00 11-30T06:00",
    ]);
  });

  test("are clipped to the time asked for", () => {
    expect(texts(lay(aCalendar(), "2026-11-30T08:00", "2026-12-01T07:30").windows)).toEqual([
      "11-30T08:00 11-30T14:00",
      "12-01T06:00 12-01T07:30",
    ]);
    expect(lay(aCalendar(), "2026-11-30T14:00", "2026-12-01T06:00").windows).toEqual([]);
  });

  test("reach to 24:00 and start there", () => {
    const late = aCalendar({ shifts: [aShift("16:00", "24:00", 1, [1]), aShift("24:00", "02:00", 1, [1])] });
    expect(texts(lay(late, "2026-11-30T00:00", "2026-12-07T00:00").windows)).toEqual([
      "11-30T16:00 12-01T02:00",
    ]);
  });

  test("last a whole day where a shift ends when it starts", () => {
    const whole = aCalendar({ shifts: [aShift("06:00", "06:00", 1, [1])] });
    expect(texts(lay(whole, "2026-11-30T00:00", "2026-12-07T00:00").windows)).toEqual([
      "11-30T06:00 12-01T06:00",
    ]);
  });

  test("are none without shifts", () => {
    expect(lay(aCalendar({ shifts: [] }), "2026-11-30T00:00", "2026-12-07T00:00").windows).toEqual([]);
  });
});

describe("operators", () => {
  test("cut the same time where their number changes", () => {
    const calendar = aCalendar({ shifts: [aShift("06:00", "14:00", 2), aShift("14:00", "22:00", 1)] });
    const { operators } = lay(calendar, "2026-11-30T00:00", "2026-12-01T00:00");
    expect(operators.map((stretch) => stretch.operators)).toEqual([2, 1]);
    expect(texts(operators)).toEqual(["11-30T06:00 11-30T14:00", "11-30T14:00 11-30T22:00"]);
  });

  test("are one stretch where the number stays", () => {
    const calendar = aCalendar({ shifts: [aShift("06:00", "14:00", 1), aShift("14:00", "22:00", 1)] });
    expect(texts(lay(calendar, "2026-11-30T00:00", "2026-12-01T00:00").operators)).toEqual([
      "11-30T06:00 11-30T22:00",
    ]);
  });

  test("may be none in a stretch that still counts as staffed", () => {
    const calendar = aCalendar({ shifts: [aShift("06:00", "14:00", 1), aShift("14:00", "22:00", 0)] });
    const { windows, operators } = lay(calendar, "2026-11-30T00:00", "2026-12-01T00:00");
    expect(windows).toHaveLength(1);
    expect(operators.map((stretch) => stretch.operators)).toEqual([1, 0]);
  });

  test("of overlapping shifts are the larger number, not the sum, in any order of the list", () => {
    const shifts = [aShift("06:00", "14:00", 2), aShift("13:00", "22:00", 1), aShift("08:00", "09:00", 3)];
    for (const order of [shifts, shifts.toReversed()]) {
      const { windows, operators } = lay(
        aCalendar({ shifts: order }),
        "2026-11-30T00:00",
        "2026-12-01T00:00",
      );
      expect(texts(windows)).toEqual(["11-30T06:00 11-30T22:00"]);
      expect(operators.map((stretch) => stretch.operators)).toEqual([2, 3, 2, 1]);
    }
  });
});

describe("closed days", () => {
  const closures = [{ from: "2026-12-02", to: "2026-12-03", reason: "stock-taking" }];

  test("are whole local days, the last included", () => {
    const { closures: closed, windows } = lay(
      aCalendar({ closures }),
      "2026-11-30T00:00",
      "2026-12-07T00:00",
    );
    expect(texts(closed)).toEqual(["12-02T00:00 12-04T00:00"]);
    expect(texts(windows)).toEqual([
      "11-30T06:00 11-30T14:00",
      "12-01T06:00 12-01T14:00",
      "12-04T06:00 12-04T14:00",
    ]);
  });

  test("cut a shift that passes midnight on either side", () => {
    const night = aCalendar({ shifts: [aShift("22:00", "06:00")], closures });
    expect(texts(lay(night, "2026-12-01T12:00", "2026-12-04T12:00").windows)).toEqual([
      "12-01T22:00 12-02T00:00",
      "12-04T00:00 12-04T06:00",
    ]);
  });

  test("that touch or overlap are one closure, outside the time asked for none", () => {
    const more = [
      { from: "2026-12-03", to: "2026-12-04", reason: "b" },
      { from: "2026-12-05", to: "2026-12-05", reason: "c" },
      { from: "2025-01-01", to: "2025-01-01", reason: "past" },
    ];
    const calendar = aCalendar({ closures: [...more, ...closures] });
    expect(texts(lay(calendar, "2026-11-30T00:00", "2026-12-07T00:00").closures)).toEqual([
      "12-02T00:00 12-06T00:00",
    ]);
  });

  test("are 23 h and 25 h long where the clocks change", () => {
    const days = [
      { from: "2026-03-29", to: "2026-03-29", reason: "" },
      { from: "2026-10-25", to: "2026-10-25", reason: "" },
    ];
    const { closures: closed } = lay(aCalendar({ closures: days }), "2026-01-01T00:00", "2027-01-01T00:00");
    expect(closed.map((day) => day.endMin - day.startMin)).toEqual([23 * 60, 25 * 60]);
  });
});

describe("weeks in which the clocks change", () => {
  test("have 167 and 169 hours of round-the-clock work, others 168", () => {
    const always = aCalendar({ shifts: [aShift("00:00", "24:00")] });
    const weekOf = (from: string, to: string): number => hours(lay(always, from, to).windows);
    expect(weekOf("2026-03-23T00:00", "2026-03-30T00:00")).toBe(167);
    expect(weekOf("2026-10-19T00:00", "2026-10-26T00:00")).toBe(169);
    expect(weekOf("2026-11-30T00:00", "2026-12-07T00:00")).toBe(168);
    expect(lay(always, "2026-03-23T00:00", "2026-03-30T00:00").windows).toHaveLength(1);
  });

  test("make the night shift 7 h and 9 h long, on other nights 8 h", () => {
    const night = aCalendar({ shifts: [aShift("22:00", "06:00")] });
    const nightFrom = (day: string, next: string): number =>
      hours(lay(night, `${day}T12:00`, `${next}T12:00`).windows);
    expect(nightFrom("2026-03-27", "2026-03-28")).toBe(8);
    expect(nightFrom("2026-03-28", "2026-03-29")).toBe(7);
    expect(nightFrom("2026-10-24", "2026-10-25")).toBe(9);
  });

  test("move a shift that starts in the skipped hour forward", () => {
    const early = aCalendar({ shifts: [aShift("02:30", "06:00", 1, [7])] });
    expect(texts(lay(early, "2026-03-28T12:00", "2026-03-29T12:00").windows)).toEqual([
      "03-29T03:30 03-29T06:00",
    ]);
  });

  test("move a shift that ends in the skipped hour forward, so that it keeps its length", () => {
    const early = aCalendar({ shifts: [aShift("01:00", "02:30", 1, [7])] });
    const { windows } = lay(early, "2026-03-28T12:00", "2026-03-29T12:00");
    expect(windows.map((window) => window.endMin - window.startMin)).toEqual([90]);
  });

  test("drop a shift of which nothing is left", () => {
    const gone = aCalendar({ shifts: [aShift("02:30", "03:10", 1, [7])] });
    expect(lay(gone, "2026-03-28T12:00", "2026-03-29T12:00").windows).toEqual([]);
  });

  test("start a shift at the first of two equal local times", () => {
    const early = aCalendar({ shifts: [aShift("02:30", "06:00", 1, [7])] });
    const { windows } = lay(early, "2026-10-24T12:00", "2026-10-25T12:00");
    expect(windows.map((window) => window.endMin - window.startMin)).toEqual([4.5 * 60]);
  });
});

test("a calendar agrees with a minute-by-minute count on random shifts and closures", () => {
  const random = seededRandom(5);
  const clock = (): string =>
    `${String(Math.floor(random() * 24)).padStart(2, "0")}:${random() < 0.5 ? "00" : "30"}`;
  for (let round = 0; round < 40; round += 1) {
    const shifts = Array.from({ length: 1 + Math.floor(random() * 4) }, () =>
      aShift(clock(), clock(), Math.floor(random() * 3), EVERY_DAY.filter(() => random() < 0.6).concat(1)),
    );
    const closures = random() < 0.5 ? [{ from: "2026-03-26", to: "2026-03-27", reason: "" }] : [];
    const from = at("2026-03-24T00:00");
    const to = at("2026-04-01T00:00");
    const laid = workingTime(aCalendar({ shifts, closures }), BERLIN, from, to);
    for (let minute = from; minute < to; minute += 30) {
      const expected = operatorsByHand(shifts, closures.length > 0, minute);
      const stretch = laid.operators.find(({ startMin, endMin }) => startMin <= minute && minute < endMin);
      expect(stretch?.operators ?? null, instantOf(minute, BERLIN)).toBe(expected);
      const isStaffed = laid.windows.some(({ startMin, endMin }) => startMin <= minute && minute < endMin);
      expect(isStaffed).toBe(expected !== null);
    }
  }
});

const text = (d: Date): string => d.toISOString().slice(0, 10);

/** Walks over shifts the plain way: which of them has begun by the clock today or yesterday and not yet ended? */
function operatorsByHand(shifts: readonly Shift[], isClosed26And27: boolean, minute: number): number | null {
  const date = instantOf(minute, BERLIN).slice(0, 10);
  if (isClosed26And27 && (date === "2026-03-26" || date === "2026-03-27")) return null;
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const there = shifts.filter((shift) =>
    [0, -1].some((back) => {
      const day = new Date(midnight + back * 86_400_000);
      const next = new Date(midnight + (back + 1) * 86_400_000);
      if (!shift.days.includes(day.getUTCDay() || 7)) return false;
      const start = minuteOf(`${text(day)}T${shift.start}`, BERLIN);
      const end = minuteOf(`${text(shift.end <= shift.start ? next : day)}T${shift.end}`, BERLIN);
      return start <= minute && minute < end;
    }),
  );
  return there.length === 0 ? null : Math.max(...there.map((shift) => shift.operators));
}

test("four hundred days of three shifts are laid out in a blink", () => {
  const shifts = [aShift("06:00", "14:00", 2), aShift("14:00", "22:00", 1), aShift("22:00", "06:00", 0)];
  const start = performance.now();
  const { operators } = lay(aCalendar({ shifts }), "2026-11-30T00:00", "2028-01-04T00:00");
  expect(operators.length).toBeGreaterThan(1190);
  expect(performance.now() - start).toBeLessThan(1000);
});
