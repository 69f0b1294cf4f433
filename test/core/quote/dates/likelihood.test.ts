import { describe, expect, test } from "vitest";
import { jointLikelihood, orderDates } from "../../../../core/quote/dates/likelihood.ts";
import { type SimulatedDates, simulate } from "../../../../core/quote/dates/simulate.ts";
import { aTask, MONDAY_MIN } from "../../../fixtures/a-dated-plan.ts";

/** Orders with given finishes by run, min after Monday 00:00. */
function dated(finishes: Readonly<Record<string, readonly number[]>>): SimulatedDates {
  const ids = Object.keys(finishes);
  return {
    startMin: MONDAY_MIN,
    runs: finishes[ids[0] ?? ""]?.length ?? 0,
    seed: 1,
    orders: ids.map((orderId) => ({ orderId, dueMin: 100, missingCopies: 0, boughtOutMin: null })),
    finishedMin: ids.map((id) => Float64Array.from(finishes[id] ?? [])),
    failuresPerRun: 0,
    stopsPerRun: 0,
    notes: [],
  };
}

const hundred = Array.from({ length: 101 }, (_, index) => 100 - index);

describe("dates of one order", () => {
  test("are quantiles of its finishes by type 7, rounded up to whole minutes", () => {
    const dates = orderDates(dated({ A: [1, 2, 3, 4, 10] }), "A", [90]);
    expect(dates).toMatchObject({ status: "dated", kept: [{ likelihoodPct: 90, byMin: MONDAY_MIN + 8 }] });
  });

  test("are told for 50, 80 and 95 % where nothing else is asked", () => {
    const dates = orderDates(dated({ A: hundred }), "A");
    expect(dates.status === "dated" ? dates.kept.map(({ byMin }) => byMin) : []).toEqual(
      [50, 80, 95].map((minute) => MONDAY_MIN + minute),
    );
  });

  test("have a standard error of the likelihood's, in minutes: 0.5 in 101 runs is 0.0498, here 4.98 min", () => {
    const dates = orderDates(dated({ A: hundred }), "A", [50]);
    expect(dates.status === "dated" ? dates.kept[0]?.errorMin : null).toBeCloseTo(4.975, 2);
  });

  test("do not exist where too many runs never finish it: 80 % of 5 runs, one of them never", () => {
    const four = orderDates(dated({ A: [1, 2, 3, 4, Infinity] }), "A", [75, 76]);
    expect(four.status === "dated" ? four.kept.map(({ byMin }) => byMin) : []).toEqual([
      MONDAY_MIN + 4,
      null,
    ]);
  });
});

describe("no date, but the reason, for", () => {
  test("no runs", () => {
    expect(orderDates(dated({ A: [] }), "A")).toEqual({
      status: "undated",
      orderId: "A",
      reasons: ["The simulation made no run, so it knows no date: ask for at least one, 2000 are usual."],
    });
  });

  test("an order that is not in the plan", () => {
    const dates = orderDates(dated({ A: [1] }), "B");
    expect(dates).toMatchObject({
      reasons: ["Order B is not in the plan: plan again with it, then ask for its date."],
    });
  });

  test("an order with copies that have no place", () => {
    const unplanned = [{ orderId: "O-A", copies: 2, reasons: [] }];
    const dates = simulate(aTask({ builds: [{ id: "A", atMin: 0, runMin: 10 }], plan: { unplanned } }), {
      runs: 3,
      seed: 1,
    });
    expect(orderDates(dates, "O-A")).toMatchObject({
      status: "undated",
      reasons: [
        "2 copies of order O-A have no place in the plan, so the order is never whole in it: allow a later date, another machine or feedstock, or a longer plan.",
      ],
    });
    const kept = jointLikelihood(dates, [{ orderId: "O-A", byMin: MONDAY_MIN + 1e6 }]);
    expect(kept).toEqual({ status: "known", likelihood: 0, standardError: 0 });
  });
});

describe("the likelihood that dates are kept", () => {
  const dates = dated({ A: [1, 2, 3, 4], B: [4, 3, 2, 1] });
  const by = (minute: number) => jointLikelihood(dates, [{ orderId: "A", byMin: MONDAY_MIN + minute }]);

  test("is the share of runs in which they are, the minute itself included", () => {
    expect(by(0)).toMatchObject({ likelihood: 0 });
    expect(by(3)).toMatchObject({ likelihood: 0.75, standardError: Math.sqrt((0.75 * 0.25) / 4) });
    expect(by(4)).toMatchObject({ likelihood: 1, standardError: 0 });
  });

  test("of several orders together counts runs that keep all of them, not the product", () => {
    const wanted = [
      { orderId: "A", byMin: MONDAY_MIN + 3 },
      { orderId: "B", byMin: MONDAY_MIN + 3 },
    ];
    expect(jointLikelihood(dates, wanted)).toMatchObject({ likelihood: 0.5 });
  });

  test("is unknown, with reasons, of no order, of unknown orders and without runs", () => {
    expect(jointLikelihood(dates, [])).toMatchObject({ status: "unknown" });
    expect(jointLikelihood(dates, [{ orderId: "C", byMin: 0 }])).toEqual({
      status: "unknown",
      reasons: ["Order C is not in the plan: plan again with it, then ask for its date."],
    });
    expect(jointLikelihood(dated({ A: [] }), [{ orderId: "A", byMin: 0 }])).toMatchObject({
      reasons: ["The simulation made no run, so it knows no date: ask for at least one, 2000 are usual."],
    });
  });
});
