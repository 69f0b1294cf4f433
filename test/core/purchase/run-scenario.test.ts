import { beforeAll, describe, expect, test } from "vitest";
import { type FleetStore, runScenarioJob } from "../../../core/purchase/run-scenario.ts";
import type { ScenarioJob, WeekResult } from "../../../core/purchase/scenario-job.ts";
import type { DemandLine } from "../../../core/purchase/scenarios.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { aStore, MONDAY_MIN, toyJob, toyLine, toyMachine, toyPart, toyWorks } from "./a-toy-works.ts";

let store: FleetStore;
beforeAll(async () => {
  store = await aStore();
});

function weeksOf(job: ScenarioJob): readonly WeekResult[] {
  return runScenarioJob(job, store).weeks;
}

function firstWeek(job: ScenarioJob): WeekResult {
  const [week] = weeksOf(job);
  if (!week) throw new Error("no week");
  return week;
}

function lines(count: number, changes: Partial<DemandLine> = {}): DemandLine[] {
  return Array.from({ length: count }, () => toyLine(changes));
}

function costOf({ costByKind }: WeekResult): number {
  return Object.values(costByKind).reduce((sum, amount) => sum + amount, 0);
}

/** Staffed hours of one build of the toy: set-up, run and unload; and what it costs. */
function oneBuild(shop = toyWorks(1)): { hours: number; cost: number } {
  const week = firstWeek(toyJob(shop, lines(1)));
  return { hours: week.hoursByMachine[0]?.usedH ?? Number.NaN, cost: costOf(week) };
}

describe("one week of a scenario", () => {
  test("with room for everything it costs what the builds cost and brings their price", () => {
    const week = firstWeek(toyJob(toyWorks(1), lines(5)));
    expect(costOf(week)).toBeCloseTo(5 * oneBuild().cost, 6);
    expect(week.revenue).toBeCloseTo(500, 6);
    expect(week.lostOrders + week.lateOrders + week.backlogCopies).toBe(0);
    expect(week.objective).toBeCloseTo(costOf(week), 6);
  });

  test("a full week makes staffed hours over hours of a build, and loses the rest", () => {
    const made = 40 / oneBuild().hours;
    const week = firstWeek(toyJob(toyWorks(1), lines(60)));
    expect(week.revenue).toBeCloseTo(100 * made, 4);
    expect(week.lostOrders).toBeCloseTo(60 - made, 4);
    expect(week.lostRevenue).toBeCloseTo(100 * (60 - made), 4);
    expect(week.hoursByMachine[0]?.usedH).toBeCloseTo(40, 6);
  });

  test("alike machines share the hours evenly", () => {
    const week = firstWeek(toyJob(toyWorks(2), lines(10)));
    const [first, second] = week.hoursByMachine.map(({ usedH }) => usedH);
    expect(first).toBeCloseTo(5 * oneBuild().hours, 6);
    expect(second).toBe(first);
  });

  test("copies due on Monday that do not fit into Monday are late by half the next day", () => {
    const perDay = 8 / oneBuild().hours;
    const week = firstWeek(
      toyJob(toyWorks(1), lines(5, { dueDay: 0, lateCostPerDay: 10 }), { knownWeeksAhead: 0 }),
    );
    expect(week.lateOrders).toBeCloseTo(5 - perDay, 6);
    expect(week.lateCost).toBeCloseTo((5 - perDay) * 10 * 0.5, 6);
  });

  test("a promise that must hold is lost when it cannot be kept, and never late", () => {
    const perDay = 8 / oneBuild().hours;
    const job = toyJob(toyWorks(1), lines(5, { dueDay: 0, allowLate: false }), {
      knownWeeksAhead: 0,
      patienceWeeks: 3,
    });
    const week = firstWeek(job);
    expect(week.lostOrders).toBeCloseTo(5 - perDay, 6);
    expect(week.lateCost).toBe(0);
    expect(week.backlogCopies).toBe(0);
  });

  test("an order is not refused because its price is below its cost", () => {
    const week = firstWeek(toyJob(toyWorks(1), lines(3, { pricePerPiece: 1 })));
    expect(week.lostOrders).toBe(0);
  });

  test("lost copies without a price are told by their least cost", () => {
    const made = 40 / oneBuild().hours;
    const week = firstWeek(toyJob(toyWorks(1), lines(30, { pricePerPiece: null })));
    expect(week.lostRevenue).toBe(0);
    expect(week.lostUnpricedCost).toBeCloseTo((30 - made) * oneBuild().cost, 3);
  });

  test("a part that nothing can make is lost with its price, and is no error", () => {
    const week = firstWeek(toyJob(toyWorks(1), lines(2, { partId: "unknown" })));
    expect(week.lostOrders).toBe(2);
    expect(week.lostRevenue).toBe(200);
    expect(week.backlogCopies).toBe(0);
  });

  test("a works without machines loses everything", () => {
    expect(firstWeek(toyJob(toyWorks(0), lines(2))).lostOrders).toBe(2);
  });

  test("a week without orders costs nothing", () => {
    const week = firstWeek(toyJob(toyWorks(1), []));
    expect(costOf(week)).toBe(0);
    expect(week.hoursByMachine[0]?.staffedH).toBeCloseTo(40, 6);
  });

  test("feedstock is told in kilograms", () => {
    const [one, five] = [1, 5].map(
      (count) => firstWeek(toyJob(toyWorks(1), lines(count))).kgByFeedstock["pla-f"] ?? 0,
    );
    expect(one).toBeGreaterThan(0);
    expect(five).toBeCloseTo(5 * (one ?? 0), 9);
  });
});

describe("limits of a week", () => {
  test("people limit it where machines wait for them", () => {
    const calendars = toyWorks(1).calendars.map((calendar) => ({
      ...calendar,
      shifts: calendar.shifts.map((shift) => ({ ...shift, operators: 0 })),
    }));
    expect(firstWeek(toyJob(toyWorks(1, { calendars }), lines(3))).lostOrders).toBeCloseTo(3, 6);
  });

  test("a closed day takes its share of the week", () => {
    const made = 40 / oneBuild().hours;
    const calendars = toyWorks(1).calendars.map((calendar) => ({
      ...calendar,
      closures: [{ from: "2026-12-01", to: "2026-12-01", reason: "stocktaking" }],
    }));
    const week = firstWeek(toyJob(toyWorks(1, { calendars }), lines(60)));
    expect(week.revenue).toBeCloseTo(100 * made * 0.8, 4);
    expect(week.hoursByMachine[0]?.staffedH).toBeCloseTo(32, 6);
  });

  test("approval to run unattended lets nights print", () => {
    const machines = [{ ...toyMachine("M1"), unattended: true }];
    const day = firstWeek(toyJob(toyWorks(1), lines(60)));
    const night = firstWeek(toyJob(toyWorks(1, { machines }), lines(60)));
    expect(night.revenue).toBeGreaterThan(day.revenue * 1.2);
    expect(night.hoursByMachine[0]?.usedH).toBeGreaterThan(40);
  });

  test("a second shift doubles what a full week makes", () => {
    const shifts = [
      { days: [1, 2, 3, 4, 5], start: "08:00", end: "16:00", operators: 9 },
      { days: [1, 2, 3, 4, 5], start: "16:00", end: "24:00", operators: 9 },
    ];
    const calendars = toyWorks(1).calendars.map((calendar) => ({ ...calendar, shifts }));
    const one = firstWeek(toyJob(toyWorks(1), lines(60))).revenue;
    expect(firstWeek(toyJob(toyWorks(1, { calendars }), lines(60))).revenue).toBeCloseTo(2 * one, 4);
  });

  test("copies are bought out where that is cheaper than losing them", () => {
    const parts = [{ ...toyPart(), buyOut: { pricePerPiece: 60, leadTimeDays: 3 } }];
    const made = 40 / oneBuild().hours;
    const week = firstWeek(toyJob(toyWorks(1, { parts }), lines(30)));
    expect(week.lostOrders).toBe(0);
    expect(week.boughtOutCost).toBeCloseTo(60 * (30 - made), 3);
  });

  test("a supplier who delivers after the patience is no help", () => {
    const parts = [{ ...toyPart(), buyOut: { pricePerPiece: 60, leadTimeDays: 20 } }];
    const week = firstWeek(toyJob(toyWorks(1, { parts }), lines(30)));
    expect(week.boughtOutCost).toBe(0);
    expect(week.lostOrders).toBeGreaterThan(10);
  });

  test("tool paths are paid once in a scenario", () => {
    const parts = [{ ...toyPart(), toolPathsReady: [] }];
    const weeks = weeksOf({
      ...toyJob(toyWorks(1, { parts }), []),
      scenario: { weeks: [{ lines: lines(3) }, { lines: lines(3) }] },
    });
    expect(weeks[0]?.costByKind.engineering).toBeGreaterThan(0);
    expect(weeks[1]?.costByKind.engineering).toBeUndefined();
  });
});

describe("from week to week", () => {
  test("what is open is made later at its late cost, within the patience", () => {
    const perWeek = 40 / oneBuild().hours;
    const over = Math.ceil(perWeek) + 3;
    const scenario = { weeks: [{ lines: lines(over) }, { lines: [] }] };
    const [first, second] = weeksOf({ ...toyJob(toyWorks(1), []), scenario, patienceWeeks: 1 });
    expect(first?.backlogCopies).toBeCloseTo(over - perWeek, 4);
    expect(first?.lostOrders).toBe(0);
    expect(second?.revenue).toBeCloseTo(100 * (over - perWeek), 3);
    expect(second?.backlogCopies).toBe(0);
  });

  test("what is late beyond the patience is lost with its revenue", () => {
    const perWeek = 40 / oneBuild().hours;
    const scenario = { weeks: [{ lines: lines(60) }, { lines: [] }, { lines: [] }] };
    const [first, second, third] = weeksOf({ ...toyJob(toyWorks(1), []), scenario, patienceWeeks: 1 });
    expect(first?.lostOrders).toBe(0);
    expect(second?.lostOrders).toBeCloseTo(60 - 2 * perWeek, 3);
    expect(third?.revenue).toBe(0);
    expect(second?.backlogCopies).toBe(0);
  });

  test("orders are served, open or lost, and nothing else becomes of them", () => {
    const scenario = { weeks: Array.from({ length: 6 }, (_, week) => ({ lines: lines(12 + 3 * week) })) };
    const weeks = weeksOf({ ...toyJob(toyWorks(1), []), scenario, patienceWeeks: 1 });
    const served = weeks.reduce((sum, week) => sum + week.revenue / 100, 0);
    const lost = weeks.reduce((sum, week) => sum + week.lostOrders, 0);
    expect(served + lost + (weeks.at(-1)?.backlogCopies ?? 0)).toBeCloseTo(6 * 12 + 3 * 15, 3);
  });

  test("hours left over in the week before make orders that are known then", () => {
    const scenario = { weeks: [{ lines: [] }, { lines: lines(5, { dueDay: 0, lateCostPerDay: 10 }) }] };
    const job = { ...toyJob(toyWorks(1), []), scenario };
    expect(weeksOf({ ...job, knownWeeksAhead: 1 })[1]?.lateCost).toBe(0);
    expect(weeksOf({ ...job, knownWeeksAhead: 0 })[1]?.lateCost).toBeGreaterThan(0);
  });

  test("hours left over are good for one week only", () => {
    const perWeek = 40 / oneBuild().hours;
    const scenario = { weeks: [{ lines: [] }, { lines: [] }, { lines: lines(90) }] };
    const weeks = weeksOf({ ...toyJob(toyWorks(1), []), scenario });
    expect(weeks[2]?.revenue).toBeCloseTo(100 * 2 * perWeek, 3);
  });
});

/** Two parts on two machines in a growing backlog. */
function mixedJob(): ScenarioJob {
  const shop: Shop = { ...toyWorks(2), parts: [toyPart(), { ...toyPart("P-2"), infillPct: 60 }] };
  const weeks = Array.from({ length: 4 }, (_, week) => ({
    lines: [
      ...lines(9 + week, { dueDay: week }),
      ...lines(8, { partId: "P-2", dueDay: 1, lateCostPerDay: 7 }),
    ],
  }));
  return { ...toyJob(shop, []), scenario: { weeks }, patienceWeeks: 1 };
}

describe("a job is pure", () => {
  test("its JSON gives the same JSON", async () => {
    const job = mixedJob();
    const copy: ScenarioJob = JSON.parse(JSON.stringify(job));
    const other = await aStore();
    expect(JSON.stringify(runScenarioJob(copy, other))).toBe(JSON.stringify(runScenarioJob(job, store)));
    other.close();
  });

  test("other jobs before it change nothing", () => {
    const job = mixedJob();
    const alone = JSON.stringify(runScenarioJob(job, store));
    runScenarioJob({ ...job, scenario: { weeks: job.scenario.weeks.toReversed() }, seed: 5 }, store);
    runScenarioJob(toyJob(toyWorks(1), lines(3)), store);
    expect(JSON.stringify(runScenarioJob(job, store))).toBe(alone);
  });

  test("more fleets than a store keeps are compiled again", () => {
    const first = toyJob(toyWorks(1), lines(4));
    const before = JSON.stringify(runScenarioJob(first, store));
    for (let week = 1; week <= 9; week++)
      runScenarioJob({ ...first, fromMin: MONDAY_MIN + week * 7 * 1440 }, store);
    expect(JSON.stringify(runScenarioJob(first, store))).toBe(before);
  });
});
