import { describe, expect, test } from "vitest";
import { checkCase } from "../../../core/shop/check-case.ts";
import { outlayOf } from "../../../core/shop/check-case-money.ts";
import type { Candidate, PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { PurchaseChange } from "../../../core/shop/purchase-change.ts";
import type { Finding } from "../../../core/shop/finding.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { aCase } from "../../fixtures/a-case.ts";
import { aMachine, aShop } from "../../fixtures/a-route.ts";
import { aCandidate } from "../../fixtures/some-weeks.ts";

/** A rate by its inputs, a machine of 4000, so that nothing of the small case is remarkable but few scenarios and weeks. */
const shop = aShop({
  machines: [
    aMachine({
      hourRate: {
        purchasePrice: 4000,
        residualValue: 500,
        lifeYears: 5,
        floorM2: 1,
        powerKW: 0.2,
        maintenancePctPerYear: 5,
        plannedHoursPerYear: 2000,
      },
    }),
  ],
});
const calm: Partial<PurchaseCase> = { weeks: 52, scenarios: 20 };

function found(overrides: Partial<PurchaseCase> = {}, of: Shop = shop): Finding[] {
  return checkCase(of, aCase({ ...calm, ...overrides }));
}

function codes(overrides: Partial<PurchaseCase> = {}, of: Shop = shop): string[] {
  return found(overrides, of).map(({ severity, code }) => `${severity} ${code}`);
}

function candidates(...changes: PurchaseChange[]): { candidates: Candidate[] } {
  return { candidates: [aCandidate({ price: 4000, changes })] };
}

const alike: PurchaseChange = { kind: "add-alike", alike: "F1", id: "F2", name: "Second" };
const shift = { days: [6], start: "06:00", end: "12:00", operators: 1 };

test("a case whose names and numbers hold has no finding", () => {
  expect(found()).toEqual([]);
});

test("every finding is a sentence about its case, placed in it", () => {
  const [finding] = found({ candidates: [] });
  expect(finding?.where).toBe("cases/second-machine/candidates");
  expect(finding?.sentence).toMatch(/^Case second-machine: .*\.$/);
});

const weeks = (count: number): Partial<PurchaseCase> => ({
  demand: {
    kind: "rows",
    rows: Array.from({ length: count }, (_, week) => ({
      dueOn: new Date(Date.UTC(2026, 0, 5 + 7 * week)).toISOString().slice(0, 10),
      partId: "clip",
      quantity: 1,
    })),
  },
});

const priced = (overrides: Partial<Candidate>): Partial<PurchaseCase> => ({
  candidates: [aCandidate({ price: 4000, changes: [alike], ...overrides })],
});

describe("the demand of a case", () => {
  test("without history is an error that says what else can be done", () => {
    const [none] = found({ demand: { kind: "orders" } }, { ...shop, orders: [] });
    expect(none).toMatchObject({ severity: "error", code: "no-history" });
    expect(none?.sentence).toContain("type the demand");
    expect(codes({ demand: { kind: "rows", rows: [] } })).toEqual(["error no-history"]);
    expect(codes({ demand: { kind: "typed", lines: [] } })).toEqual(["error no-demand"]);
  });

  test("of 11 weeks is a warning, of 12 none", () => {
    expect(codes(weeks(11))).toEqual(["warning short-history"]);
    expect(codes(weeks(12))).toEqual([]);
  });

  test.each([
    [
      "a part that is not there",
      { demand: { kind: "typed", lines: [{ partId: "gone", ordersPerWeek: 1, quantity: 1 }] } },
      "unknown-part",
    ],
    ["a start that does not exist", { startsOn: "2026-02-30" }, "no-such-date"],
    ["a first date that does not exist", { demand: { kind: "orders", from: "2026-13-01" } }, "no-such-date"],
    [
      "a last date before the first",
      { demand: { kind: "orders", from: "2026-12-02", to: "2026-12-01" } },
      "ends-before-start",
    ],
    ["months without any orders", { seasonByMonth: Array.from({ length: 12 }, () => 0) }, "no-demand"],
  ] as [string, Partial<PurchaseCase>, string][])("with %s is an error", (_, overrides, code) => {
    expect(codes(overrides)).toContain(`error ${code}`);
  });

  test("that grows out of all bounds, or has a season that is not 1 in the mean, is a warning", () => {
    expect(codes({ growthPctPerYear: 51 })).toEqual(["warning unusual"]);
    expect(codes({ growthPctPerYear: 50 })).toEqual([]);
    expect(codes({ seasonByMonth: Array.from({ length: 12 }, () => 1.2) })).toEqual([
      "warning season-not-one",
    ]);
  });
});

describe("candidates", () => {
  test("must be at least one, each with an id of its own", () => {
    expect(codes({ candidates: [] })).toEqual(["error no-candidate"]);
    const twice = [
      aCandidate({ price: 4000, changes: [alike] }),
      aCandidate({
        changes: [{ kind: "add-shift", calendarId: "day", shift, premiumPct: 0, otherWorkPct: 0 }],
      }),
    ];
    expect(codes({ candidates: twice })).toContain("error duplicate-id");
  });

  test.each([
    ["a machine like one that is not there", { ...alike, alike: "X" }, "unknown-machine"],
    ["people that are not there", { ...alike, calendarId: "X" }, "unknown-calendar"],
    ["the id of a machine there is", { ...alike, id: "F1" }, "duplicate-id"],
    ["a sale of what is not there", { kind: "sell-machine", machineId: "X", proceeds: 1 }, "unknown-machine"],
    ["an approval of what is not there", { kind: "approve-unattended", machineId: "X" }, "unknown-machine"],
    [
      "a shift of what is not there",
      { kind: "add-shift", calendarId: "X", shift, premiumPct: 0, otherWorkPct: 0 },
      "unknown-calendar",
    ],
    [
      "a part that is not there",
      { kind: "buy-out", partId: "X", pricePerPiece: 1, leadTimeDays: 1 },
      "unknown-part",
    ],
  ] as [string, PurchaseChange, string][])("with %s are an error", (_, change, code) => {
    expect(codes(candidates(change))).toContain(`error ${code}`);
  });

  test("that change one thing twice are an error within one, a warning between two", () => {
    const sale: PurchaseChange = { kind: "sell-machine", machineId: "F1", proceeds: 100 };
    expect(codes(candidates(sale, sale))).toContain("error twice");
    const two = [aCandidate({ id: "a", changes: [sale] }), aCandidate({ id: "b", changes: [sale] })];
    const [overlap] = found({ candidates: two }).filter(({ code }) => code === "overlap");
    expect(overlap?.sentence).toContain("candidates a and b both change machine F1");
  });

  test("hold a new machine to what every machine is held to", () => {
    const machine = { ...shop.machines[0]!, id: "new", edgeMarginMm: 500 };
    const [finding] = found(candidates({ kind: "add-machine", machine })).filter(
      ({ code }) => code === "no-platform-left",
    );
    expect(finding).toMatchObject({ severity: "error", where: "cases/second-machine/candidates/some" });
  });

  test("that would run with nobody there say who decides, and never that it may be", () => {
    const [finding, ...more] = found(candidates({ kind: "approve-unattended", machineId: "F1", mostH: 8 }));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: "warning", code: "unattended" });
    expect(finding?.sentence).toContain("person responsible");
    expect(finding?.sentence).toContain("this program does not judge it");
  });

  test("that approve what is approved already change nothing, which is said", () => {
    const approved = { ...shop, machines: [{ ...shop.machines[0]!, unattended: true }] };
    expect(codes(candidates({ kind: "approve-unattended", machineId: "F1" }), approved)).toContain(
      "warning no-effect",
    );
  });
});

describe("the money of a case", () => {
  test.each([
    ["a machine for nothing", priced({ price: 0 }), "costs-nothing"],
    ["a residual above the price", priced({ residualValue: 4001 }), "residual-above-price"],
    ["a life of 21 years", priced({ lifeYears: 21 }), "unusual"],
    ["a price that its machine-hour rate does not know", priced({ price: 5100 }), "two-prices"],
    [
      "a sale above the price when new",
      candidates({ kind: "sell-machine", machineId: "F1", proceeds: 4001 }),
      "absurd-proceeds",
    ],
    [
      "a discount rate of 31 %",
      { financing: { discountPctPerYear: 31, taxPct: 0, depreciation: "none" } },
      "unusual",
    ],
    [
      "tax without depreciation",
      { financing: { discountPctPerYear: 8, taxPct: 25, depreciation: "none" } },
      "no-depreciation",
    ],
    ["a budget below the cheapest", { budget: 4199 }, "budget-too-small"],
    ["half a year", { weeks: 26 }, "part-of-year"],
    ["a year and a half", { weeks: 78 }, "part-of-year"],
    ["nine scenarios", { scenarios: 9 }, "few-scenarios"],
  ] as [string, Partial<PurchaseCase>, string][])("with %s is a warning", (_, overrides, code) => {
    expect(codes(overrides)).toContain(`warning ${code}`);
  });

  test("is right at the edges: residual = price, 20 years, 30 %, budget = outlay, 10 scenarios", () => {
    expect(codes(priced({ residualValue: 4000, lifeYears: 20 }))).toEqual([]);
    const financing = { discountPctPerYear: 30, taxPct: 25, depreciation: "straight-line" as const };
    expect(codes({ financing, budget: 4200, scenarios: 10, weeks: 104 })).toEqual([]);
  });

  test("says which rates are one number and so tell no cash, unless the case says the share", () => {
    const given = { ...shop, machines: [aMachine({ hourRate: 12 })] };
    const [finding] = found({}, given);
    expect(finding).toMatchObject({ severity: "warning", code: "rate-not-split" });
    expect(finding?.sentence).toContain("F1");
    expect(found({ givenRateCashPct: 0 }, given)).toEqual([]);
  });

  test("counts installation, training and sales in what is paid at the start", () => {
    const changes = [{ kind: "sell-machine" as const, machineId: "F1", proceeds: 15_000 }];
    expect(outlayOf(aCandidate({ price: 90_000, installation: 6000, training: 4000, changes }))).toBe(85_000);
  });
});
