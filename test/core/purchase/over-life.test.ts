import { describe, expect, test } from "vitest";
import { changeOf, meanMoney, operatingYears, totalOf } from "../../../core/purchase/operating-money.ts";
import { changeAtDemand, changesOverLife } from "../../../core/purchase/over-life.ts";
import { someMoney, someWeeks } from "../../fixtures/some-weeks.ts";

describe("running money of a year", () => {
  test("is what 52 weeks bring less what they cost, each kind once", () => {
    const costByKind = { feedstock: 30, machine: 5, buyOut: 7, late: 2, overhead: 99 };
    const [year, ...more] = operatingYears(someWeeks(52, { costByKind, boughtOutCost: 7, lateCost: 2 }));
    expect(more).toEqual([]);
    expect(year).toMatchObject({ revenue: 5200, feedstock: -1560, machine: -260, buyOut: -364, late: -104 });
    expect(totalOf(year ?? someMoney({}))).toBe(52 * (100 - 30 - 5 - 7 - 2));
  });

  test("is scaled from fewer weeks, and whole years alone are taken from more", () => {
    expect(operatingYears(someWeeks(26))[0]?.revenue).toBe(5200);
    expect(operatingYears(someWeeks(103)).map(({ revenue }) => revenue)).toEqual([5200]);
    expect(operatingYears(someWeeks(104)).map(({ revenue }) => revenue)).toEqual([5200, 5200]);
    expect(operatingYears(someWeeks(0))[0]?.revenue).toBe(0);
  });

  test("changes by what is saved and won, and the mean over scenarios is taken row by row", () => {
    const saved = changeOf(someMoney({ feedstock: -80, revenue: 10 }), someMoney({ feedstock: -100 }));
    expect(saved).toMatchObject({ feedstock: 20, revenue: 10, late: 0 });
    const [mean] = meanMoney([[someMoney({ late: -10 })], [someMoney({ late: -30, revenue: 4 })]]);
    expect(mean).toMatchObject({ late: -20, revenue: 2 });
  });
});

describe("the gain at other demands", () => {
  const points = [
    { demandFactor: 2, change: someMoney({ late: 100, feedstock: -10 }) },
    { demandFactor: 1, change: someMoney({ late: 0 }) },
    { demandFactor: 0.5, change: someMoney({ late: -20 }) },
  ];

  test.each([
    [0.5, -20],
    [0.75, -10],
    [1, 0],
    [1.5, 50],
    [2, 100],
  ])("is linear between the points: at %d it is %d", (factor, late) => {
    expect(changeAtDemand(points, factor).late).toBeCloseTo(late, 12);
  });

  test("is held beyond the last ones", () => {
    expect(changeAtDemand(points, 0.1)).toEqual(points[2]?.change);
    expect(changeAtDemand(points, 9)).toEqual(points[0]?.change);
  });
});

describe("the gain over a life", () => {
  const points = [
    { demandFactor: 1, change: someMoney({ late: 50 }) },
    { demandFactor: 1.21, change: someMoney({ late: 71 }) },
  ];

  test("follows growth along the points and stays level beyond the largest", () => {
    const planned = [someMoney({ late: 60 })];
    const lates = changesOverLife(planned, 4, 10, points).map(({ late }) => late);
    expect(lates[0]).toBe(60);
    expect(lates[1]).toBeCloseTo(70, 9);
    expect(lates[2]).toBeCloseTo(81, 9);
    expect(lates[3]).toBeCloseTo(81, 9);
  });

  test("stays as the last year planned without growth or without points", () => {
    const planned = [someMoney({ late: 60 }), someMoney({ late: 65 })];
    expect(changesOverLife(planned, 4, 10, []).map(({ late }) => late)).toEqual([60, 65, 65, 65]);
    expect(changesOverLife(planned, 3, 0, points).map(({ late }) => late)).toEqual([60, 65, 65]);
    expect(changesOverLife(planned, 1, 10, points).map(({ late }) => late)).toEqual([60]);
  });

  test("adds growth to the last year planned, not to the first", () => {
    const planned = [someMoney({ late: 60 }), someMoney({ late: 80 })];
    const [, , third] = changesOverLife(planned, 3, 10, points);
    // 80 in year 2 (factor 1.1), and 11 more by the points from 1.1 to 1.21.
    expect(third?.late).toBeCloseTo(91, 9);
  });
});
