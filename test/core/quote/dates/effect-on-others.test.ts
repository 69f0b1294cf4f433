import { describe, expect, test } from "vitest";
import { USUAL_CHANCES } from "../../../../core/quote/dates/chances.ts";
import { effectOnOthers } from "../../../../core/quote/dates/effect-on-others.ts";
import { simulate } from "../../../../core/quote/dates/simulate.ts";
import { allDay, aTask, bareMachine, CALM, MONDAY_MIN } from "../../../fixtures/a-dated-plan.ts";

const control = { runs: 400, seed: 2 };

describe("one more line", () => {
  test("that takes the machine first makes the order behind it later, by as much in every run without chance", () => {
    const before = aTask({ builds: [{ id: "A", atMin: 0, runMin: 100 }] }, CALM);
    const after = aTask(
      {
        builds: [
          { id: "N", atMin: 0, runMin: 45 },
          { id: "A", atMin: 60, runMin: 100 },
        ],
      },
      CALM,
    );
    expect(effectOnOthers(simulate(after, control), simulate(before, control))).toEqual([
      {
        orderId: "O-A",
        laterMin: 60,
        errorMin: 0,
        wasByMin: MONDAY_MIN + 115,
        isByMin: MONDAY_MIN + 175,
        wasInTime: 1,
        isInTime: 1,
      },
    ]);
  });

  test("on another machine that shares no people changes nothing at all", () => {
    const machines = [bareMachine(), bareMachine({ id: "F2", calendarId: "night" })];
    const calendars = [allDay(1), allDay(1, { id: "night" })];
    const own = [{ id: "A", atMin: 0, runMin: 6000 }];
    const before = aTask({ machines, calendars, builds: own }, USUAL_CHANCES);
    const builds = [...own, { id: "N", machine: "F2", atMin: 0, runMin: 6000 }];
    const after = aTask({ machines, calendars, builds }, USUAL_CHANCES);
    const [effect] = effectOnOthers(simulate(after, control), simulate(before, control));
    expect(effect).toMatchObject({ orderId: "O-A", laterMin: 0, errorMin: 0 });
    expect(effect?.wasInTime).toBe(effect?.isInTime);
    expect(effect?.wasInTime).toBeLessThan(1);
  });

  test("that shares one operator costs minutes, known far better than by two separate simulations", () => {
    const machines = [bareMachine({ unloadMin: 30 }), bareMachine({ id: "F2", unloadMin: 30 })];
    const own = [{ id: "A", atMin: 0, runMin: 3000 }];
    const calendars = [allDay(1)];
    const before = simulate(aTask({ machines, calendars, builds: own }, USUAL_CHANCES), control);
    const builds = [...own, { id: "N", machine: "F2", atMin: 10, runMin: 2990 }];
    const after = simulate(aTask({ machines, calendars, builds }, USUAL_CHANCES), control);
    const [effect] = effectOnOthers(after, before);
    expect(effect?.laterMin).toBeGreaterThan(0);
    const spreadMin = 0.1 * 3000 * Math.sqrt(2 / control.runs);
    expect(effect?.errorMin).toBeLessThan(spreadMin / 10);
  });
});

test("effects of different seeds are refused, of no runs are none", () => {
  const task = aTask({ builds: [{ id: "A", atMin: 0, runMin: 100 }] });
  const one = simulate(task, { runs: 5, seed: 1 });
  expect(() => effectOnOthers(one, simulate(task, { runs: 5, seed: 2 }))).toThrow(RangeError);
  expect(effectOnOthers(one, simulate(task, { runs: 0, seed: 1 }))).toEqual([]);
});
