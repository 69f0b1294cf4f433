import { describe, expect, test } from "vitest";
import { USUAL_CHANCES } from "../../../../core/quote/dates/chances.ts";
import { dateDrivers } from "../../../../core/quote/dates/date-drivers.ts";
import { allDay, aTask, bareMachine, MONDAY_MIN } from "../../../fixtures/a-dated-plan.ts";

const control = { runs: 200, seed: 4 };

describe("what drives a date", () => {
  test("is first of all the print time of an order with one long print and people all day: 10 % each way are about 20 h of 100", () => {
    const task = aTask({ builds: [{ id: "A", atMin: 0, runMin: 6000 }] }, USUAL_CHANCES);
    const { drivers, byMin } = dateDrivers(task, "O-A", control);
    expect(drivers[0]?.input).toBe("print times on F1");
    expect((drivers[0]?.swingMin ?? 0) / 60).toBeGreaterThan(19);
    expect((drivers[0]?.swingMin ?? 0) / 60).toBeLessThan(24);
    expect(drivers[0]?.low.byMin).toBeLessThan(byMin ?? 0);
    expect(drivers[0]?.high.byMin).toBeGreaterThan(byMin ?? 0);
    expect(drivers.map(({ input }) => input)).not.toContain("failed prints on F1");
  });

  test("is failures where a machine often fails, by none or twice as many", () => {
    const machines = [bareMachine({ failuresPer1000H: 15 })];
    const task = aTask({ machines, builds: [{ id: "A", atMin: 0, runMin: 6000 }] }, USUAL_CHANCES);
    expect(dateDrivers(task, "O-A", control).drivers[0]?.input).toBe("failed prints on F1");
  });

  test("is people where one operator serves many machines", () => {
    const machines = Array.from({ length: 8 }, (_, index) =>
      bareMachine({ id: `F${index}`, setUpMin: 60, unloadMin: 60 }),
    );
    const builds = machines.flatMap(({ id }, index) =>
      [0, 1].map((turn) => ({
        id: `${id}-${turn}`,
        machine: id,
        atMin: 480 * turn + 60 * index,
        setUpMin: 60,
        runMin: 250,
      })),
    );
    const task = aTask({ machines, calendars: [allDay(1)], builds }, USUAL_CHANCES);
    const inputs = dateDrivers(task, "O-F7-1", control).drivers.map(({ input }) => input);
    expect(inputs.slice(0, 2)).toContain("people who set up and unload");
  });

  test("is told for five inputs at most, the largest swing first", () => {
    const machines = ["F1", "F2", "F3"].map((id) => bareMachine({ id, failuresPer1000H: 5 }));
    const builds = machines.map(({ id }) => ({ id, machine: id, orders: ["O-1"], atMin: 0, runMin: 3000 }));
    const { drivers } = dateDrivers(aTask({ machines, builds }, USUAL_CHANCES), "O-1", control);
    expect(drivers.length).toBe(5);
    expect(drivers.map(({ swingMin }) => swingMin)).toEqual(
      drivers.map(({ swingMin }) => swingMin).toSorted((a, b) => b - a),
    );
  });
});

describe("nothing drives", () => {
  test("a date that does not exist; the reasons say why", () => {
    const task = aTask({ builds: [{ id: "A", atMin: 0, runMin: 60 }] });
    expect(dateDrivers(task, "O-9", control)).toEqual({
      orderId: "O-9",
      likelihoodPct: 80,
      byMin: null,
      reasons: ["Order O-9 is not in the plan: plan again with it, then ask for its date."],
      drivers: [],
    });
    expect(dateDrivers(task, "O-A", { ...control, runs: 0 }).reasons).toHaveLength(1);
  });

  test("a delivery from elsewhere, which is taken as sure", () => {
    const boughtOut = [{ orderId: "O-1", copies: 1, arriveAt: "2026-12-02T00:00:00Z", cost: 1 }];
    const task = aTask({ builds: [{ id: "A", atMin: 0, runMin: 60 }], plan: { boughtOut } });
    expect(dateDrivers(task, "O-1", control)).toMatchObject({ byMin: MONDAY_MIN + 2880, drivers: [] });
  });
});
