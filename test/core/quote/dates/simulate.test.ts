import { describe, expect, test } from "vitest";
import { USUAL_CHANCES } from "../../../../core/quote/dates/chances.ts";
import { simulate } from "../../../../core/quote/dates/simulate.ts";
import {
  aTask,
  allDay,
  at,
  bareMachine,
  CALM,
  type DatedSketch,
  finishOf,
  oneRun,
  slower,
} from "../../../fixtures/a-dated-plan.ts";
import { aCalendar } from "../../../fixtures/a-route.ts";

const DAY_MIN = 1440;
/** Monday to Friday 06:00 to 14:00, one operator. */
const DAY_SHIFT = [aCalendar()];
const six = 6 * 60;

describe("without chance", () => {
  test("a build ends as planned: set-up 10, print 100 and unload 5 min from 06:00", () => {
    const task = aTask({ calendars: DAY_SHIFT, builds: [{ id: "A", atMin: six, runMin: 100 }] });
    expect(finishOf(oneRun(task), "O-A")).toBe(six + 115);
  });

  test("a print that is over early is taken off early, and the next build waits for its time in the plan", () => {
    const builds = [
      { id: "A", atMin: six, runMin: 100 },
      { id: "B", atMin: six + 115, runMin: 100 },
    ];
    const dates = oneRun(slower(aTask({ calendars: DAY_SHIFT, builds }), 0.5));
    expect(finishOf(dates, "O-A")).toBe(six + 65);
    expect(finishOf(dates, "O-B")).toBe(six + 115 + 65);
  });

  test("the next build may begin early where that was allowed, but not before its order is released", () => {
    const builds = [
      { id: "A", atMin: six, runMin: 100 },
      { id: "B", atMin: six + 130, runMin: 100 },
    ];
    const early = { ...CALM, earlyStartMin: Infinity };
    const sketch: DatedSketch = { calendars: [allDay(2)], builds };
    expect(finishOf(oneRun(aTask(sketch, early)), "O-A")).toBe(115);
    expect(finishOf(oneRun(aTask(sketch, early)), "O-B")).toBe(230);
    expect(finishOf(oneRun(aTask(sketch, { ...CALM, earlyStartMin: 5 })), "O-B")).toBe(six + 125 + 115);
  });

  test("a late print pushes back the next build on its machine, and no other", () => {
    const machines = [bareMachine(), bareMachine({ id: "F2" })];
    const builds = [
      { id: "A", atMin: six, runMin: 100 },
      { id: "B", atMin: six + 115, runMin: 100 },
      { id: "C", machine: "F2", atMin: six + 30, runMin: 100 },
    ];
    const dates = oneRun(slower(aTask({ machines, builds }), 1.5));
    expect(finishOf(dates, "O-A")).toBe(six + 165);
    expect(finishOf(dates, "O-B")).toBe(six + 165 + 165);
    expect(finishOf(dates, "O-C")).toBe(six + 30 + 115);
  });

  test("only deposition takes longer, not warm-up and cool-down", () => {
    const machines = [bareMachine({ warmUpMin: 20, coolDownMin: 20 })];
    const task = aTask({ machines, builds: [{ id: "A", atMin: 0, runMin: 100 }] });
    expect(finishOf(oneRun(slower(task, 1.5)), "O-A")).toBe(10 + 40 + 90 + 5);
  });

  test("an order of several builds is whole when its last copy is off or delivered", () => {
    const builds = [
      { id: "A", orders: ["O-1"], atMin: 0, runMin: 100 },
      { id: "B", orders: ["O-1", "O-2"], atMin: 200, runMin: 100 },
    ];
    const boughtOut = [{ orderId: "O-2", copies: 1, arriveAt: at(DAY_MIN), cost: 1 }];
    const dates = oneRun(aTask({ builds, plan: { boughtOut } }));
    expect(finishOf(dates, "O-1")).toBe(315);
    expect(finishOf(dates, "O-2")).toBe(DAY_MIN);
  });
});

describe("people", () => {
  const machines = [bareMachine(), bareMachine({ id: "F2" })];
  const builds = [
    { id: "A", atMin: six, runMin: 100 },
    { id: "B", machine: "F2", atMin: six + 115, runMin: 100 },
  ];

  test("one operator serves who was ready first: a set-up waits until a late unload is done", () => {
    const task = aTask({ calendars: [allDay(1)], machines, builds });
    const dates = oneRun(slower(task, 1.03));
    expect(finishOf(dates, "O-A")).toBe(six + 118);
    expect(finishOf(dates, "O-B")).toBe(six + 118 + 115);
  });

  test("two operators serve both at once", () => {
    const dates = oneRun(slower(aTask({ calendars: [allDay(2)], machines, builds }), 1.03));
    expect(finishOf(dates, "O-B")).toBe(six + 115 + 115);
  });

  test("an unload that comes early takes nobody from a set-up in the plan", () => {
    const early = [
      { id: "A", atMin: six, runMin: 100 },
      { id: "B", machine: "F2", atMin: six + 95, runMin: 100 },
    ];
    // F1 is over at 97 instead of 110: somebody sets F2 up from 95 to 105.
    const dates = oneRun(slower(aTask({ calendars: [allDay(1)], machines, builds: early }), 0.87));
    expect(finishOf(dates, "O-B")).toBe(six + 95 + 115);
    expect(finishOf(dates, "O-A")).toBe(six + 105 + 5);
  });

  test("a set-up that no longer fits before people leave is done the next morning", () => {
    const late = [
      { id: "A", atMin: six, runMin: 300 },
      { id: "B", atMin: six + 315, runMin: 140 },
    ];
    const dates = oneRun(slower(aTask({ calendars: DAY_SHIFT, builds: late }), 1.2));
    // 06:00 + 10 + 360 + 5 = 12:15; 10 + 140 min would end 14:45, more than half an hour after 14:00.
    expect(finishOf(dates, "O-A")).toBe(six + 375);
    expect(finishOf(dates, "O-B")).toBe(DAY_MIN + six + 10 + 168 + 5);
  });

  test("it is still begun where its estimate ends at most half an hour after people leave", () => {
    const late = [
      { id: "A", atMin: six, runMin: 300 },
      { id: "B", atMin: six + 315, runMin: 125 },
    ];
    const dates = oneRun(slower(aTask({ calendars: DAY_SHIFT, builds: late }), 1.2));
    expect(finishOf(dates, "O-B")).toBe(DAY_MIN + six + 5);
  });
});

describe("a print that takes longer than its estimate", () => {
  const builds = [{ id: "A", atMin: six + 60, runMin: 400 }];

  const alone = (unattendedMaxH: number) =>
    aTask({ calendars: DAY_SHIFT, machines: [bareMachine({ unattended: true, unattendedMaxH })], builds });

  test("is watched by somebody who stays, and taken off the next morning", () => {
    const dates = oneRun(slower(aTask({ calendars: DAY_SHIFT, builds }), 1.25));
    expect(dates.stopsPerRun).toBe(0);
    expect(finishOf(dates, "O-A")).toBe(DAY_MIN + six + 5);
  });

  test("is stopped where nobody stays so long, cleared and set up in the morning, and then fits", () => {
    const task = aTask({ calendars: DAY_SHIFT, builds }, { ...CALM, stayOnMin: 20, overtimeMin: 0 });
    const dates = oneRun(slower(task, 1.15));
    expect(dates.stopsPerRun).toBe(1);
    expect(finishOf(dates, "O-A")).toBe(DAY_MIN + six + 5 + 10 + 460 + 5);
  });

  test("once stopped is set up where it is known to fit with somebody staying, though its estimate said otherwise", () => {
    const task = aTask({ calendars: DAY_SHIFT, builds }, { ...CALM, stayOnMin: 45, overtimeMin: 0 });
    const dates = oneRun(slower(task, 1.25));
    // 500 min from 07:10 would end 15:30; from 06:15 on the next day they end 14:35, and it is off the morning after.
    expect([dates.stopsPerRun, finishOf(dates, "O-A")]).toEqual([1, 2 * DAY_MIN + six + 5]);
  });

  test("is never over where no shift is long enough for it, and the machine goes on with the next", () => {
    const two = [...builds, { id: "B", atMin: DAY_MIN + six, runMin: 10 }];
    const dates = oneRun(slower(aTask({ calendars: DAY_SHIFT, builds: two }), 1.6));
    expect(finishOf(dates, "O-A")).toBe(Infinity);
    expect(finishOf(dates, "O-B")).toBe(DAY_MIN + six + 5 + 10 + 16 + 5);
  });

  test("goes on alone on a machine approved for it, as long as is approved", () => {
    const night = oneRun(slower(alone(16), 2));
    expect([night.stopsPerRun, finishOf(night, "O-A")]).toEqual([0, DAY_MIN + six + 5]);
    // Begun at 07:10 it takes until 20:30; 5 h alone end at 19:00.
    expect(oneRun(slower(alone(5), 2)).stopsPerRun).toBe(1);
  });

  test("never goes on into a closed day", () => {
    const closures = [{ from: "2026-12-01", to: "2026-12-01", reason: "" }];
    const machines = [bareMachine({ unattended: true })];
    const task = aTask({ calendars: [aCalendar({ closures })], machines, builds });
    const before = oneRun(slower(task, 2.4));
    expect([before.stopsPerRun, finishOf(before, "O-A")]).toEqual([0, 2 * DAY_MIN + six + 5]);
    const after = oneRun(slower(task, 2.6));
    expect([after.stopsPerRun, finishOf(after, "O-A")]).toEqual([1, 2 * DAY_MIN + six + 15 + 1040 + 385 + 5]);
  });

  test("never goes on while the machine is out of service, and is taken off after it", () => {
    const outOfService = [{ from: at(six + 500), to: at(six + 600), reason: "" }];
    const task = aTask({ machines: [bareMachine({ outOfService })], builds });
    const over = oneRun(slower(task, 1.07));
    expect([over.stopsPerRun, finishOf(over, "O-A")]).toEqual([0, six + 60 + 10 + 428 + 107]);
    const stopped = oneRun(slower(task, 1.1));
    expect([stopped.stopsPerRun, finishOf(stopped, "O-A")]).toEqual([1, six + 600 + 5 + 10 + 440 + 5]);
  });
});

describe("failures", () => {
  const machines = [bareMachine({ unattended: true, failuresPer1000H: 100 })];
  const builds = [{ id: "A", atMin: six + 400, runMin: 600 }];
  const dates = simulate(aTask({ calendars: DAY_SHIFT, machines, builds }), { runs: 500, seed: 3 });

  test("at night wait until somebody comes: nothing is set up again between 14:00 and 06:00", () => {
    const finishes = [...(dates.finishedMin[0] ?? [])];
    expect(dates.failuresPerRun).toBeGreaterThan(1);
    // A print of 600 min begun in a shift ends in the night, so every build is taken off from 06:00 on or after a failure by day.
    for (const finish of finishes) {
      const minute = finish % DAY_MIN;
      expect(minute).toBeGreaterThanOrEqual(six + 5);
      expect(minute).toBeLessThanOrEqual(14 * 60);
    }
    // Failed in the night: cleared 06:05, set up 06:15, over 16:15, off the next morning but one.
    expect(finishes).toContain(2 * DAY_MIN + six + 5);
  });

  test("of every start never let a build end: it is given up", () => {
    const never = aTask({ builds }, { ...CALM, startFailureShare: 1 });
    expect(finishOf(oneRun(never), "O-A")).toBe(Infinity);
  });
});

describe("what is there before the plan", () => {
  test("a committed build begins as it stands, even where nobody is there", () => {
    const builds = [{ id: "A", atMin: 60, runMin: 100, state: "committed" as const, unloadAtMin: 300 }];
    expect(finishOf(oneRun(aTask({ calendars: DAY_SHIFT, builds })), "O-A")).toBe(305);
  });

  test("a running build is known to be running still, so a long one is never over before the plan begins", () => {
    const builds = [{ id: "A", atMin: -600, runMin: 500, state: "running" as const }];
    const dates = simulate(aTask({ builds }, USUAL_CHANCES), { runs: 1000, seed: 1 });
    const finishes = dates.finishedMin[0] ?? [];
    expect(Math.min(...finishes)).toBeGreaterThanOrEqual(5);
    expect(Math.max(...finishes)).toBeLessThan(200);
  });

  test("finished builds are left out", () => {
    const builds = [{ id: "A", atMin: 0, runMin: 100, state: "done" as const }];
    expect(aTask({ builds }).builds.ids).toEqual([]);
  });

  test("a build whose feedstock comes too late waits until it is there and dry, and is said to", () => {
    const feedstockNeeds = [
      {
        feedstockId: "pla-white",
        needKg: 2,
        stockKg: 0,
        buyKg: 2,
        packs: 2,
        orderBy: at(-DAY_MIN),
        arriveAt: at(2 * DAY_MIN),
        tooEarly: ["A"],
        note: "",
      },
    ];
    const task = aTask({ builds: [{ id: "A", atMin: 0, runMin: 100 }], plan: { feedstockNeeds } });
    expect(finishOf(oneRun(task), "O-A")).toBe(2 * DAY_MIN + 4 * 60 + 115);
    expect(task.notes).toEqual([
      "A waits for pla-white, which is there and dry on Wed 2 Dec 04:00: a faster delivery would bring dates forward.",
    ]);
  });
});

describe("luck", () => {
  const machines = [bareMachine({ failuresPer1000H: 20 }), bareMachine({ id: "F2", failuresPer1000H: 20 })];
  const others = [
    { id: "A", atMin: 0, runMin: 600 },
    { id: "B", atMin: 700, runMin: 600 },
    { id: "C", machine: "F2", atMin: 0, runMin: 600 },
  ];
  const more = [...others, { id: "D", machine: "F2", atMin: 700, runMin: 600 }];
  const control = { runs: 200, seed: 5 };
  const without = simulate(aTask({ machines, builds: others }, USUAL_CHANCES), control);
  const withLine = simulate(aTask({ machines, builds: more }, USUAL_CHANCES), control);

  test("of the other builds is the same with one more line in the plan", () => {
    for (const orderId of ["O-A", "O-B", "O-C"]) {
      for (const run of [0, 7, 199])
        expect(finishOf(withLine, orderId, run)).toBe(finishOf(without, orderId, run));
    }
  });

  test("is the same for the same seed, and another for another", () => {
    const again = simulate(aTask({ machines, builds: others }, USUAL_CHANCES), control);
    expect(again.finishedMin).toEqual(without.finishedMin);
    const other = simulate(aTask({ machines, builds: others }, USUAL_CHANCES), { ...control, seed: 6 });
    expect(other.finishedMin).not.toEqual(without.finishedMin);
  });

  test("of two equal builds of one order differs", () => {
    const twice = [
      { id: "A", orders: ["O-1"], atMin: 0, runMin: 600 },
      { id: "B", orders: ["O-1"], atMin: 5000, runMin: 600 },
    ];
    const task = aTask({ builds: twice }, USUAL_CHANCES);
    expect(task.builds.keyA[0]).not.toBe(task.builds.keyA[1]);
  });

  test("is the same where only some orders are asked for", () => {
    const calendars = [allDay(2), allDay(2, { id: "night" })];
    const apart = [machines[0] ?? bareMachine(), bareMachine({ id: "F2", calendarId: "night" })];
    const task = aTask({ calendars, machines: apart, builds: more }, USUAL_CHANCES);
    const all = simulate(task, control);
    const some = simulate(task, { ...control, orderIds: ["O-D"] });
    expect(some.orders.map(({ orderId }) => orderId)).toEqual(["O-D"]);
    expect(finishOf(some, "O-D", 17)).toBe(finishOf(all, "O-D", 17));
  });
});

describe("what cannot be simulated", () => {
  const builds = [{ id: "A", atMin: 0, runMin: 100 }];

  test("no runs and no builds give empty answers", () => {
    expect(simulate(aTask({ builds }), { runs: 0, seed: 1 }).finishedMin[0]).toHaveLength(0);
    expect(simulate(aTask({ builds }), { runs: Number.NaN, seed: 1 }).runs).toBe(0);
    expect(simulate(aTask({ builds: [] }), { runs: 3, seed: 1 }).orders).toEqual([]);
  });

  test("a build on a machine that the shop has not is left out, and its order is never whole", () => {
    const task = aTask({
      builds: [...builds, { id: "B", machine: "F9", orders: ["O-A"], atMin: 0, runMin: 9 }],
    });
    expect(task.notes).toEqual([
      "The shop has no machine with a calendar for build B of the plan: plan again with the shop as it is now.",
    ]);
    expect(finishOf(oneRun(task), "O-A")).toBe(Infinity);
  });

  test("a calendar on which nobody is ever there finishes nothing", () => {
    const dates = oneRun(aTask({ builds, calendars: [aCalendar({ shifts: [] })] }));
    expect(finishOf(dates, "O-A")).toBe(Infinity);
  });

  test("stopping keeps the runs made so far", () => {
    let asked = 0;
    const dates = simulate(aTask({ builds }), { runs: 1000, seed: 1, stopped: () => ++asked > 2 });
    expect(dates.runs).toBe(64);
    expect(dates.finishedMin[0]).toHaveLength(64);
  });
});
