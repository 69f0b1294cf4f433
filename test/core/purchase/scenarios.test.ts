import { describe, expect, test } from "vitest";
import { demandMix } from "../../../core/purchase/demand-mix.ts";
import { demandOf, type Demand } from "../../../core/purchase/demand.ts";
import { poissonQuantile } from "../../../core/purchase/poisson.ts";
import { makeScenarios, type ScenarioDemand } from "../../../core/purchase/scenarios.ts";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import { weekOfDay } from "../../../core/shop/week-number.ts";
import { dayNumberOf } from "../../../core/shop/instants.ts";
import { aCase } from "../../fixtures/a-case.ts";
import { anOrder, aPart, aShop } from "../../fixtures/a-route.ts";

const NO_PRICES: ReadonlyMap<string, number> = new Map();

function row(
  dueOn: string,
  quantity = 10,
  partId = "clip",
): { dueOn: string; partId: string; quantity: number } {
  return { dueOn, partId, quantity };
}

/** Past weeks with 1, 2, 3 orders, told apart by their quantities. */
const rows = ["2026-11-02", "2026-11-10", "2026-11-11", "2026-11-18", "2026-11-19", "2026-11-20"].map(
  (dueOn, place) => row(dueOn, 10 + place),
);

function drawn(overrides: Partial<PurchaseCase> = {}, count = 1, factor = 1): ScenarioDemand[] {
  const purchaseCase = aCase({ demand: { kind: "rows", rows }, weeks: 30, ...overrides });
  return makeScenarios(demandOf(aShop(), purchaseCase, NO_PRICES), purchaseCase, count, factor);
}

function countOf(scenarios: readonly ScenarioDemand[]): number {
  return scenarios.flatMap(({ weeks }) => weeks.flatMap(({ lines }) => lines)).length;
}

const sized = (id: string, longestMm: number): ReturnType<typeof aPart> => {
  const { geometry } = aPart();
  const boxMm = { x: longestMm, y: 10, z: 10 };
  return aPart({ id, geometry: { ...geometry, measures: { ...geometry.measures, boxMm } } });
};

describe("the demand of a case", () => {
  test("is past orders by ISO week, weeks without an order between them included", () => {
    const demand = {
      kind: "rows" as const,
      rows: [row("2026-11-30"), row("2026-12-20", 4), row("2026-12-14", 5)],
    };
    const { pastWeeks } = demandOf(aShop(), aCase({ demand }), NO_PRICES);
    expect(pastWeeks.map(({ lines }) => lines.map(({ quantity }) => quantity))).toEqual([[10], [], [4, 5]]);
    expect(pastWeeks.flatMap(({ lines }) => lines.map(({ dueDay }) => dueDay))).toEqual([0, 6, 0]);
    expect(pastWeeks[0]?.week).toBe(weekOfDay(dayNumberOf("2026-11-30")));
  });

  test("takes the shop's orders by their local due date, only those within the days that count", () => {
    // In Berlin the first is due on Monday the 30th at 00:30, in UTC still on Sunday.
    const orders = ["2026-11-29T23:30:00Z", "2026-12-02T12:00:00Z", "2026-12-09T12:00:00Z"].map(
      (dueAt, place) => anOrder({ id: `O-${place}`, dueAt }),
    );
    const demand = { kind: "orders" as const, from: "2026-11-30", to: "2026-12-02" };
    const { pastWeeks } = demandOf(aShop({ orders }), aCase({ demand }), NO_PRICES);
    expect(pastWeeks.map(({ lines }) => lines.map(({ dueDay }) => dueDay))).toEqual([[0, 2]]);
  });

  test("takes an agreed price before the assumed one, and the shop's late cost where none is given", () => {
    const own = { ...row("2026-11-30"), pricePerPiece: 7, lateCostPerDay: 3, allowLate: false };
    const demand = { kind: "rows" as const, rows: [own, row("2026-11-30")] };
    const { pastWeeks } = demandOf(aShop(), aCase({ demand }), new Map([["clip", 5]]));
    expect(pastWeeks[0]?.lines).toMatchObject([
      { pricePerPiece: 7, lateCostPerDay: 3, allowLate: false },
      { pricePerPiece: 5, lateCostPerDay: 50, allowLate: true },
    ]);
  });

  test("leaves out unknown parts and dates that do not exist, and is empty without orders: nothing throws", () => {
    const bad = { kind: "rows" as const, rows: [row("2026-02-30"), row("2026-11-30", 1, "gone")] };
    const demand = demandOf(aShop(), aCase({ demand: bad }), NO_PRICES);
    expect(demand).toEqual({ pastWeeks: [], expected: [] });
    const [scenario] = makeScenarios(demand, aCase({ startsOn: "2026-02-30" }), 1);
    expect(scenario?.weeks.map(({ lines }) => lines)).toEqual([[], [], [], []]);
  });
});

describe("the weekly mix", () => {
  test("adds up orders, copies and volume of a mean week by family and size", () => {
    const shop = aShop({ parts: [aPart({ families: ["PLA"] })] });
    const purchaseCase = aCase({
      demand: { kind: "rows", rows: [row("2026-11-30", 10), row("2026-12-07", 30)] },
    });
    const volumeCm3 = aPart().geometry.measures.volumeMm3 / 1000;
    const [only, ...more] = demandMix(shop, demandOf(shop, purchaseCase, NO_PRICES));
    expect(more).toEqual([]);
    expect(only).toMatchObject({ family: "PLA", ordersPerWeek: 1, copiesPerWeek: 20 });
    expect(only?.volumeCm3PerWeek).toBeCloseTo(20 * volumeCm3, 9);
  });

  test("keeps sizes and families apart, a longest side of 100 mm being small", () => {
    const shop = aShop({
      parts: [sized("a", 100), sized("b", 100.1), { ...sized("c", 20), families: ["PETG"] }],
    });
    const lines = ["a", "b", "c"].map((partId) => ({ partId, ordersPerWeek: 1, quantity: 1 }));
    const mix = demandMix(shop, demandOf(shop, aCase({ demand: { kind: "typed", lines } }), NO_PRICES));
    expect(mix.map(({ size }) => size.upToMm).toSorted((a, b) => a - b)).toEqual([100, 100, 300]);
  });
});

describe("scenarios", () => {
  test("are the same for the same seed, others for another, and differ among themselves", () => {
    expect(drawn({}, 3)).toEqual(drawn({}, 3));
    expect(drawn({ seed: 2 })).not.toEqual(drawn());
    const [first, second] = drawn({}, 2);
    expect(first).not.toEqual(second);
  });

  test("begin with the same weeks when there are more weeks or more scenarios", () => {
    const [short] = drawn({ weeks: 10 });
    const [long] = drawn({ weeks: 30 }, 5);
    expect(long?.weeks.slice(0, 10)).toEqual(short?.weeks);
  });

  test("are whole past weeks: what was ordered together stays together", () => {
    const weeks = drawn({}, 5).flatMap((scenario) => scenario.weeks);
    const kinds = new Set(weeks.map(({ lines }) => lines.map(({ quantity }) => quantity).join()));
    expect([...kinds].toSorted()).toEqual(["10", "11,12", "13,14,15"]);
  });

  test("have the orders of less demand among those of more, and in the mean in proportion", () => {
    for (const [less, more] of [
      [0.5, 1],
      [1, 1.3],
      [1.3, 2],
    ] as const) {
      const few = drawn({}, 20, less);
      const many = drawn({}, 20, more);
      for (const [place, { weeks }] of few.entries()) {
        for (const [index, { lines }] of weeks.entries()) {
          const all = many[place]?.weeks[index]?.lines ?? [];
          expect(
            lines.every(
              (line) => all.filter((other) => other === line || other.quantity === line.quantity).length > 0,
            ),
          ).toBe(true);
          expect(all.length).toBeGreaterThanOrEqual(lines.length);
        }
      }
      expect(Math.abs(countOf(many) / countOf(few) - more / less)).toBeLessThan(0.15);
    }
    expect(countOf(drawn({}, 20, 2))).toBe(2 * countOf(drawn({}, 20)));
    expect(countOf(drawn({}, 20, 0))).toBe(0);
  });

  test("grow by the growth of a year from one year to the next", () => {
    const scenarios = drawn({ weeks: 104, growthPctPerYear: 50 }, 40);
    const year = (from: number): number =>
      countOf(scenarios.map(({ weeks }) => ({ weeks: weeks.slice(from, from + 52) })));
    expect(year(52) / year(0)).toBeGreaterThan(1.4);
    expect(year(52) / year(0)).toBeLessThan(1.6);
  });

  test("follow the season of their month, the past week's own season divided out", () => {
    // All of the past is of November, twice a mean month; March has half of one, July nothing.
    const seasonByMonth = [1, 1, 0.5, 1, 1, 1, 0, 1, 1, 1, 2, 1];
    const inMonth = (startsOn: string): number => countOf(drawn({ seasonByMonth, startsOn, weeks: 3 }, 200));
    const plain = countOf(drawn({ weeks: 3 }, 200));
    expect(inMonth("2027-11-08") / plain).toBeCloseTo(1, 1);
    expect(inMonth("2027-03-08") / plain).toBeCloseTo(0.25, 1);
    expect(inMonth("2027-07-05")).toBe(0);
  });
});

describe("typed demand", () => {
  const typed = aCase({
    demand: { kind: "typed", lines: [{ partId: "clip", ordersPerWeek: 2.5, quantity: 8 }] },
    weeks: 52,
  });
  const demand: Demand = demandOf(aShop(), typed, NO_PRICES);

  test("brings in the mean so many orders a week, with the scatter of a Poisson law", () => {
    const counts = makeScenarios(demand, typed, 40).flatMap(({ weeks }) =>
      weeks.map(({ lines }) => lines.length),
    );
    const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
    const variance = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0) / (counts.length - 1);
    // 2080 weeks: five standard errors of the mean are 0.17.
    expect(Math.abs(mean - 2.5)).toBeLessThan(0.17);
    expect(variance / mean).toBeGreaterThan(0.85);
    expect(variance / mean).toBeLessThan(1.15);
  });

  test("falls due on the five working days alike", () => {
    const days = makeScenarios(demand, typed, 40).flatMap(({ weeks }) =>
      weeks.flatMap(({ lines }) => lines.map(({ dueDay }) => dueDay)),
    );
    for (const day of [0, 1, 2, 3, 4]) {
      expect(days.filter((own) => own === day).length / days.length).toBeCloseTo(0.2, 1);
    }
    expect(Math.max(...days)).toBe(4);
  });

  test("keeps every order when more come", () => {
    const few = makeScenarios(demand, typed, 3, 1);
    const many = makeScenarios(demand, typed, 3, 1.7);
    for (const [place, { weeks }] of few.entries()) {
      for (const [index, { lines }] of weeks.entries())
        expect(many[place]?.weeks[index]?.lines.slice(0, lines.length)).toEqual(lines);
    }
  });
});

describe("a Poisson number", () => {
  // Cumulative Poisson tables (from memory): mean 1: 0.3679, 0.7358, 0.9197, 0.9810; mean 4: P(X <= 4) = 0.6288.
  test.each([
    [1, 0.3678, 0],
    [1, 0.3679, 1],
    [1, 0.7357, 1],
    [1, 0.9198, 3],
    [4, 0.6288, 4],
    [4, 0.629, 5],
    [0, 0.99, 0],
  ])("of mean %d at share %d is %d", (mean, share, number) => {
    expect(poissonQuantile(share, mean)).toBe(number);
  });

  test("of a large mean is near the normal law, and shares outside 0 to 1 are refused", () => {
    expect(Math.abs(poissonQuantile(0.5, 499) - 499)).toBeLessThanOrEqual(1);
    expect(Math.abs(poissonQuantile(0.5, 501) - 501)).toBeLessThanOrEqual(1);
    expect(Math.abs(poissonQuantile(0.975, 500) - poissonQuantile(0.975, 500.0001))).toBeLessThanOrEqual(2);
    expect(() => poissonQuantile(1, 2)).toThrow(RangeError);
    expect(() => poissonQuantile(0.5, -1)).toThrow(RangeError);
  });
});
