import { describe, expect, test } from "vitest";
import { minuteOf } from "../../../core/shop/instants.ts";
import {
  fitted,
  heldTo,
  minuteAt,
  panned,
  shifted,
  xOf,
  zoomed,
} from "../../../renderer/pages/week/time-scale.ts";
import { dayTicks, hourStep, hourTicks } from "../../../renderer/pages/week/time-ticks.ts";
import {
  heldScroll,
  rowAt,
  rowsInSight,
  scrollToRow,
  topOf,
} from "../../../renderer/pages/week/row-places.ts";

const BERLIN = "Europe/Berlin";

describe("the scale of time", () => {
  const scale = { fromMin: 1000, pxPerMin: 2 };

  test("leads from minutes to px and back", () => {
    expect(xOf(scale, 1060)).toBe(120);
    expect(minuteAt(scale, 120)).toBe(1060);
  });

  test("keeps what lies under the pointer when one looks closer", () => {
    const closer = zoomed(scale, 1.5, 300);
    expect(minuteAt(closer, 300)).toBeCloseTo(minuteAt(scale, 300), 9);
    expect(closer.pxPerMin).toBe(3);
  });

  test("has a closest and a farthest look", () => {
    expect(zoomed(scale, 1e9, 0).pxPerMin).toBe(8);
    expect(zoomed(scale, 1e-9, 0).pxPerMin).toBe(0.002);
  });

  test("fits a stretch with air on both sides", () => {
    const fit = fitted({ startMin: 0, endMin: 1000 }, 1040);
    expect(xOf(fit, 0)).toBeCloseTo(20, 9);
    expect(xOf(fit, 1000)).toBeCloseTo(1020, 9);
  });

  test("pushed to the right shows earlier times", () => {
    expect(panned(scale, 100).fromMin).toBe(950);
  });

  test("never leaves the week behind", () => {
    const bounds = { startMin: 0, endMin: 10_000 };
    expect(xOf(heldTo(panned(scale, 1e7), bounds, 1000), 0)).toBeCloseTo(850, 6);
    expect(xOf(heldTo(panned(scale, -1e7), bounds, 1000), 10_000)).toBeCloseTo(150, 6);
    expect(heldTo(scale, bounds, 1000)).toEqual(scale);
  });

  test("moves just so far that a build is in sight", () => {
    expect(shifted(scale, { startMin: 1100, endMin: 1200 }, 1000)).toEqual(scale);
    expect(xOf(shifted(scale, { startMin: 900, endMin: 950 }, 1000), 900)).toBe(24);
    expect(xOf(shifted(scale, { startMin: 1600, endMin: 1700 }, 1000), 1700)).toBe(976);
    expect(xOf(shifted(scale, { startMin: 1600, endMin: 9999 }, 1000), 1600)).toBe(24);
  });
});

describe("ticks on the clock of the works", () => {
  const night = {
    startMin: minuteOf("2026-10-24T12:00", BERLIN),
    endMin: minuteOf("2026-10-26T12:00", BERLIN),
  };

  test("the day on which clocks go back has 25 hours", () => {
    expect(dayTicks(night, BERLIN).map(({ label, hours }) => [label, hours])).toEqual([
      ["Sat 24 Oct", 24],
      ["Sun 25 Oct", 25],
      ["Mon 26 Oct", 24],
    ]);
  });

  test("06:00 of that day is 7 hours after midnight", () => {
    const six = hourTicks(night, BERLIN, 6).find(({ atMin }) => atMin > minuteOf("2026-10-25T01:00", BERLIN));
    expect(six).toEqual({ label: "06", atMin: minuteOf("2026-10-25T00:00", BERLIN) + 7 * 60 });
  });

  test("an hour that the clocks skip has no tick", () => {
    const spring = {
      startMin: minuteOf("2027-03-28T00:00", BERLIN),
      endMin: minuteOf("2027-03-28T06:00", BERLIN),
    };
    expect(hourTicks(spring, BERLIN, 1).map(({ label }) => label)).toEqual(["01", "02", "04", "05", "06"]);
  });

  test("stand where they have room", () => {
    expect(hourStep(1)).toBe(1);
    expect(hourStep(38 / 360)).toBe(6);
    expect(hourStep(38 / 361)).toBe(12);
    expect(hourStep(0.01)).toBeNull();
  });
});

describe("rows", () => {
  const rows = { count: 10, heightPx: 40, scrollPx: 30 };

  test("are found by height and not beyond them", () => {
    expect([rowAt(rows, 0), rowAt(rows, 9), rowAt(rows, 10)]).toEqual([0, 0, 1]);
    expect([rowAt(rows, 369), rowAt(rows, 370), rowAt(rows, -31)]).toEqual([9, null, null]);
    expect(topOf(rows, 2)).toBe(50);
  });

  test("only those in sight are drawn", () => {
    expect(rowsInSight(rows, 100)).toEqual({ first: 0, end: 4 });
    expect(rowsInSight({ ...rows, scrollPx: 360 }, 100)).toEqual({ first: 9, end: 10 });
  });

  test("scroll just so far that one is in sight, and never beyond the last", () => {
    expect(scrollToRow(rows, 0, 100)).toBe(0);
    expect(scrollToRow(rows, 1, 100)).toBe(30);
    expect(scrollToRow(rows, 9, 100)).toBe(300);
    expect(heldScroll({ ...rows, scrollPx: 9999 }, 100)).toBe(300);
    expect(heldScroll({ ...rows, scrollPx: 20 }, 1000)).toBe(0);
  });
});
