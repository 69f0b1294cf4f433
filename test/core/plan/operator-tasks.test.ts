import { expect, test } from "vitest";
import type { Shop } from "../../../core/shop/shop.ts";
import { aCheckedShop, WEEK_SKETCH, writtenPlan } from "../../fixtures/a-checked-week.ts";
import { aFeedstock, aMachine, anOrder, aPart, aShop } from "../../fixtures/a-route.ts";

const TASKS = writtenPlan(aCheckedShop(), WEEK_SKETCH).tasks;

test("tasks are in time order", () => {
  const starts = TASKS.map(({ at }) => at);
  expect(starts).toEqual(starts.toSorted());
});

test("one build: changeover first, then set-up, unloading at the end of waiting, finishing after it", () => {
  const own = TASKS.filter(({ buildId }) => buildId === "B-F1-2").map(({ kind, at, endAt }) => [
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

test("words carry the numbers a person needs", () => {
  expect(text("dry", "B-F1-2")).toBe("Dry 0.104 kg of PETG grey for Filament 1: 2 h at 65 °C.");
  expect(text("changeOver", "B-F1-2")).toBe("Change Filament 1 over to PETG grey with nozzle n04: 20 min.");
  expect(text("setUp", "B-F2-1")).toBe(
    "Set up Filament 2 and start 8 × Clip (O-2) and 2 × Hook (O-3): PLA white, nozzle n04, layer 0.2 mm, bead 0.6 mm, axis z up.",
  );
  expect(text("unload", "B-F2-3")).toBe(
    "Take 35 × Clip (O-6) off Filament 2; printing ends at 2026-12-05 05:25.",
  );
  expect(text("finish", "B-F2-3")).toBe("Finish 35 × Clip (O-6): 3 h 30 min by hand, from then on.");
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

test("feedstock that dries for two machines at the same minute is one task", () => {
  const tasks = writtenPlan(twins(2), twoAtOnce("2026-11-30T10:00", "2026-11-30T10:00")).tasks;
  const dry = tasks.filter(({ kind }) => kind === "dry");
  expect(dry.map((task) => task.text)).toEqual([
    expect.stringContaining("for Filament 1 and Filament 2: 2 h at 50 °C."),
  ]);
  expect(dry[0]?.text).toContain("0.1");
});

test("a minute apart they are two", () => {
  const tasks = writtenPlan(twins(2), twoAtOnce("2026-11-30T10:00", "2026-11-30T10:01")).tasks;
  expect(tasks.filter(({ kind }) => kind === "dry")).toHaveLength(2);
});

test("drying that should have begun before the plan says how much time is left", () => {
  const tasks = writtenPlan(twins(2), twoAtOnce("2026-11-30T07:00", "2026-11-30T10:00")).tasks;
  const [first] = tasks.filter(({ kind }) => kind === "dry");
  expect(first?.at).toBe("2026-11-30T06:00:00+01:00");
  expect(first?.text).toContain("only 1 h are left: use what is dry already");
});

test("drying that must begin when nobody is there says so", () => {
  const tasks = writtenPlan(twins(2), twoAtOnce("2026-12-01T06:00", "2026-12-01T08:00")).tasks;
  const texts = tasks.filter(({ kind }) => kind === "dry").map((task) => task.text);
  expect(texts[0]).toContain("nobody is there when it must begin");
  expect(texts[1]).not.toContain("nobody");
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
  expect(tasks.find(({ kind }) => kind === "finish")?.text).toContain("30 min by hand and 1 h of machining");
});

function text(kind: string, buildId: string): string | undefined {
  return TASKS.find((task) => task.kind === kind && task.buildId === buildId)?.text;
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
