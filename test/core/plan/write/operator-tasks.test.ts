import { describe, expect, test } from "vitest";
import type { Shop } from "../../../../core/shop/shop.ts";
import { aCheckedShop, WEEK_SKETCH, writtenPlan } from "../../../fixtures/a-checked-week.ts";
import { aFeedstock, aMachine, anOrder, aPart, aShop } from "../../../fixtures/a-route.ts";

const TASKS = writtenPlan(aCheckedShop(), WEEK_SKETCH).tasks;

test("tasks are in time order", () => {
  const starts = TASKS.map(({ at }) => at);
  expect(starts).toEqual(starts.toSorted());
});

test("one build: changeover first, then set-up, unloading at the end of waiting, finishing after it", () => {
  const own = TASKS.filter(({ buildId }) => buildId === "26W49-F1-2").map(({ kind, at, endAt }) => [
    kind,
    at.slice(11, 16),
    endAt.slice(11, 16),
  ]);
  expect(own).toEqual([
    ["dry", "07:00", "09:00"],
    ["changeOver", "09:00", "09:20"],
    ["setUp", "09:20", "09:30"],
    ["unload", "11:07", "11:12"],
    ["finish", "11:12", "11:48"],
  ]);
});

test("words are short and carry the numbers a person needs: kind, machine and time stand beside them", () => {
  expect(text("dry", "26W49-F1-2")).toBe("0.132 kg of PETG grey for Filament 1: 2 h at 65 °C");
  expect(text("changeOver", "26W49-F1-2")).toBe("to PETG grey with nozzle n04");
  expect(text("setUp", "26W49-F2-1")).toBe(
    "8 × Clip (O-2) and 2 × Hook (O-3): PLA white, nozzle n04, layer 0.2 mm, z up",
  );
  expect(text("unload", "26W49-F1-1")).toBe("10 × Clip (O-1)");
  expect(text("finish", "26W49-F2-3")).toBe("35 × Clip (O-6): 3.5 h by hand");
  for (const task of TASKS) expect(task.text.length, task.text).toBeLessThan(90);
});

test("a build that waits for somebody says since when", () => {
  expect(text("unload", "26W49-F2-3")).toBe("35 × Clip (O-6), printed by Sat 5 Dec 05:25");
});

test("a committed build that lies ahead has its tasks too", () => {
  const kinds = TASKS.filter(({ buildId }) => buildId === "C-1").map(({ kind }) => kind);
  expect(kinds).toEqual(["setUp", "unload", "finish"]);
});

test("a running build is only taken off and finished", () => {
  const shop = aCheckedShop();
  const builds = shop.builds.map((build) => ({
    ...build,
    state: "running" as const,
    setUpStart: "2026-11-30T05:40:00+01:00",
    printStart: "2026-11-30T05:50:00+01:00",
  }));
  const kinds = writtenPlan({ ...shop, builds }, WEEK_SKETCH)
    .tasks.filter(({ buildId }) => buildId === "C-1")
    .map(({ kind }) => kind);
  expect(kinds).toEqual(["unload", "finish"]);
});

describe("drying", () => {
  test("builds of one feedstock in one shift are one task, at the earliest of their starts, for all of them", () => {
    const [task, ...more] = dryings("2026-11-30T10:00", "2026-11-30T12:00");
    expect(more).toEqual([]);
    expect([task?.at, task?.endAt]).toEqual(["2026-11-30T08:00:00+01:00", "2026-11-30T10:00:00+01:00"]);
    expect([task?.buildId, task?.alsoFor]).toEqual(["26W49-F1-1", ["26W49-F2-1"]]);
    expect(task?.text).toMatch(/^0\.19\d* kg of PLA white for Filament 1 and Filament 2: 2 h at 50 °C$/);
  });

  test("in two shifts they are two", () => {
    expect(dryings("2026-11-30T10:00", "2026-12-01T09:00").map(({ at }) => at)).toEqual([
      "2026-11-30T08:00:00+01:00",
      "2026-12-01T07:00:00+01:00",
    ]);
  });

  test("that would begin before anybody comes begins a quarter of an hour before people leave the last time", () => {
    const [early] = dryings("2026-12-01T07:59", "2026-12-04T10:00");
    const [inTime] = dryings("2026-12-01T08:00", "2026-12-04T10:00");
    expect([early?.at, inTime?.at]).toEqual(["2026-11-30T13:45:00+01:00", "2026-12-01T06:00:00+01:00"]);
  });

  test("shares the last minutes of a shift with what begins earlier in it", () => {
    const [task, ...more] = dryings("2026-11-30T11:00", "2026-12-01T06:30");
    expect(more).toEqual([]);
    expect([task?.at, task?.alsoFor]).toEqual(["2026-11-30T09:00:00+01:00", ["26W49-F2-1"]]);
  });

  test("that should have begun before the plan says how much time is left, apart from what dries long enough", () => {
    const [short, long] = dryings("2026-11-30T07:00", "2026-11-30T08:00");
    expect([short?.at, short?.endAt]).toEqual(["2026-11-30T06:00:00+01:00", "2026-11-30T07:00:00+01:00"]);
    expect(short?.text).toContain("Filament 1: only 1 h for 2 h at 50 °C, use what is dry");
    expect(long?.at).toBe("2026-11-30T06:00:00+01:00");
    expect(long?.text).toMatch(/°C$/);
    expect(dryings("2026-11-30T06:00", "2026-11-30T08:00")[0]?.text).toContain(
      "no time for 2 h at 50 °C, use what is dry",
    );
  });

  test("around the clock is a task a day, not one a week", () => {
    const shifts = [{ days: [1, 2, 3, 4, 5, 6, 7], start: "00:00", end: "24:00", operators: 2 }];
    const shop = twins(2);
    const allDay = { ...shop, calendars: shop.calendars.map((calendar) => ({ ...calendar, shifts })) };
    const count = (second: string) => dryings("2026-12-01T10:00", second, allDay).length;
    expect([count("2026-12-01T23:00"), count("2026-12-02T10:00")]).toEqual([1, 2]);
  });
});

test("feedstock that needs no drying and parts that need no finishing have no task for it", () => {
  const shop = {
    ...twins(0),
    parts: [aPart({ finishing: { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 0 } })],
  };
  const kinds = writtenPlan(shop, twoAtOnce("2026-11-30T10:00", "2026-11-30T10:00")).tasks.map(
    ({ kind }) => kind,
  );
  expect(new Set(kinds)).toEqual(new Set(["changeOver", "setUp", "unload"]));
});

test("machining is told beside work by hand", () => {
  const finishing = { labourMin: 6, machiningMin: 12, machiningPerH: 50, allowanceMm: 0 };
  const tasks = writtenPlan(
    { ...twins(0), parts: [aPart({ finishing })] },
    twoAtOnce("2026-11-30T10:00", "2026-11-30T10:00"),
  ).tasks;
  expect(tasks.find(({ kind }) => kind === "finish")?.text).toContain("30 min by hand and 1 h machining");
});

function text(kind: string, buildId: string): string | undefined {
  return TASKS.find((task) => task.kind === kind && task.buildId === buildId)?.text;
}

function dryings(first: string, second: string, shop = twins(2)) {
  return writtenPlan(shop, twoAtOnce(first, second)).tasks.filter(({ kind }) => kind === "dry");
}

function twins(dryH: number): Shop {
  const calendars = aShop().calendars.map((calendar) => ({
    ...calendar,
    shifts: calendar.shifts.map((shift) => ({ ...shift, operators: 2 })),
  }));
  return aShop({
    calendars,
    machines: [aMachine(), aMachine({ id: "F2", name: "Filament 2" })],
    feedstocks: [aFeedstock({ dryH })],
    orders: [anOrder({ quantity: 5 }), anOrder({ id: "O-2", quantity: 5 })],
  });
}

function twoAtOnce(first: string, second: string) {
  return {
    builds: [
      { machineId: "F1", feedstockId: "pla-white", items: [["O-1", 5] as const], setUpAt: first },
      { machineId: "F2", feedstockId: "pla-white", items: [["O-2", 5] as const], setUpAt: second },
    ],
  };
}
