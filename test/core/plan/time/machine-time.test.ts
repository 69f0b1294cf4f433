import { describe, expect, test } from "vitest";
import { machineTime } from "../../../../core/plan/time/machine-time.ts";
import type { Stretch, WorkingTime } from "../../../../core/plan/plan-problem.ts";

function stretches(...pairs: readonly [number, number][]): Stretch[] {
  return pairs.map(([startMin, endMin]) => ({ startMin, endMin }));
}

function working(windows: readonly Stretch[], closures: readonly Stretch[] = []): WorkingTime {
  return {
    calendarId: "day",
    windows,
    closures,
    operators: windows.map((window) => ({ ...window, operators: 1 })),
  };
}

const TWO_DAYS = stretches([0, 60], [100, 160]);

function lay(overrides: Partial<Parameters<typeof machineTime>[0]>) {
  return machineTime({
    working: working(TWO_DAYS),
    blocks: [],
    freeFromMin: 0,
    unattendedMaxMin: 0,
    ...overrides,
  });
}

describe("windows", () => {
  test("are the staffed time", () => {
    expect(lay({}).windows).toEqual(TWO_DAYS);
  });

  test("begin when the machine is free: before, at and after the end of one", () => {
    expect(lay({ freeFromMin: 30 }).windows).toEqual(stretches([30, 60], [100, 160]));
    expect(lay({ freeFromMin: 60 }).windows).toEqual(stretches([100, 160]));
    expect(lay({ freeFromMin: 80 }).windows).toEqual(stretches([100, 160]));
    expect(lay({ freeFromMin: 160 }).windows).toEqual([]);
  });

  test("leave out times out of service, in any order and overlapping", () => {
    const blocks = stretches([120, 130], [10, 20], [15, 25], [50, 110]);
    expect(lay({ blocks }).windows).toEqual(stretches([0, 10], [25, 50], [110, 120], [130, 160]));
  });
});

describe("segments of an attended machine", () => {
  test("are its windows", () => {
    const blocks = stretches([10, 20]);
    const { windows, segments } = lay({ blocks, freeFromMin: 5 });
    expect(segments).toEqual(windows);
  });
});

describe("segments of a machine that may run with nobody there", () => {
  test("join windows over a gap below and at the approved time, not above", () => {
    expect(lay({ unattendedMaxMin: 41 }).segments).toEqual(stretches([0, 160]));
    expect(lay({ unattendedMaxMin: 40 }).segments).toEqual(stretches([0, 160]));
    expect(lay({ unattendedMaxMin: 39 }).segments).toEqual(TWO_DAYS);
  });

  test("join any gap where no limit was set, and end with the last window", () => {
    const windows = stretches([0, 60], [100, 160], [5000, 5060]);
    expect(lay({ working: working(windows), unattendedMaxMin: Infinity }).segments).toEqual(
      stretches([0, 5060]),
    );
  });

  test("are cut by a closed day in the gap, and not by one that only touches it elsewhere", () => {
    const closedInGap = working(TWO_DAYS, stretches([70, 90]));
    expect(lay({ working: closedInGap, unattendedMaxMin: Infinity }).segments).toEqual(TWO_DAYS);
    const closedAfter = working(TWO_DAYS, stretches([160, 200]));
    expect(lay({ working: closedAfter, unattendedMaxMin: Infinity }).segments).toEqual(stretches([0, 160]));
  });

  test("are cut by a time out of service in a window and in a gap", () => {
    expect(lay({ blocks: stretches([20, 30]), unattendedMaxMin: Infinity }).segments).toEqual(
      stretches([0, 20], [30, 160]),
    );
    expect(lay({ blocks: stretches([70, 80]), unattendedMaxMin: Infinity }).segments).toEqual(TWO_DAYS);
  });

  test("begin with the first window after the machine is free, not in the gap before", () => {
    expect(lay({ freeFromMin: 70, unattendedMaxMin: Infinity }).segments).toEqual(stretches([100, 160]));
  });

  test("leave both windows unchanged", () => {
    expect(lay({ unattendedMaxMin: Infinity }).windows).toEqual(TWO_DAYS);
  });
});
