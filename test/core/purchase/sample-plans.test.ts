import { describe, expect, test } from "vitest";
import { COST_KINDS, type CostKind } from "../../../core/cost/cost-line.ts";
import { loadGlpk } from "../../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../../core/plan/engines/highs.ts";
import { lineSizes } from "../../../core/purchase/line-sizes.ts";
import { correctedResults, drawWeeks, sampleGap } from "../../../core/purchase/sample-plans.ts";
import { runSampleJob, type SampleWeek } from "../../../core/purchase/sample-week.ts";
import type { ScenarioResult } from "../../../core/purchase/scenario-job.ts";
import { aStore, MONDAY_MIN, toyLine, toyWorks } from "./a-toy-works.ts";

function kinds(costs: Partial<Record<CostKind, number>>): Record<CostKind, number> {
  return Object.fromEntries(COST_KINDS.map((kind) => [kind, costs[kind] ?? 0])) as Record<CostKind, number>;
}

function aWeek(plan: number, program: number, changes: Partial<SampleWeek> = {}): SampleWeek {
  return {
    plan: kinds({ machine: plan }),
    program: kinds({ machine: program }),
    planTotal: plan,
    programTotal: program,
    isComparable: true,
    ...changes,
  };
}

describe("the gap between weekly programs and real plans", () => {
  test("is the cost of all plans over that of all programs", () => {
    const gap = sampleGap([[aWeek(110, 100), aWeek(230, 200)], [aWeek(105, 100)]]);
    expect(gap.gapPct).toBeCloseTo((445 / 400 - 1) * 100, 9);
    expect(gap.gapPctByFleet[0]).toBeCloseTo((340 / 300 - 1) * 100, 9);
    expect(gap.gapPctByFleet[1]).toBeCloseTo(5, 9);
    expect([gap.lowestPct, gap.highestPct].map(Math.round)).toEqual([5, 15]);
    expect(gap.factors.machine).toBeCloseTo(445 / 400, 9);
    expect(gap.sentence).toContain("11.3 % more");
  });

  test("leaves weeks out in which copies are left out", () => {
    const gap = sampleGap([[aWeek(100, 100), aWeek(1, 100, { isComparable: false })]]);
    expect(gap).toMatchObject({ weeks: 1, leftOut: 1, gapPct: 0 });
  });

  test("is not known without a week", () => {
    const gap = sampleGap([[aWeek(1, 2, { isComparable: false })]]);
    expect(gap.gapPctByFleet).toEqual([null]);
    expect(gap.factors.machine).toBe(1);
    expect(gap.sentence).toContain("No week could be planned in full");
  });

  test("a factor from few weeks is held between a half and three", () => {
    expect(sampleGap([[aWeek(1000, 100)]])).toMatchObject({
      factors: { machine: 3 },
      heldKinds: ["machine"],
    });
    expect(sampleGap([[aWeek(299, 100)]]).heldKinds).toEqual([]);
    expect(sampleGap([[aWeek(10, 100)]]).factors.machine).toBe(0.5);
  });
});

test("large corrections of lateness and changeovers are told", () => {
  const week = {
    ...aWeek(0, 0),
    plan: kinds({ late: 90, changeover: 20 }),
    program: kinds({ late: 9, changeover: 10 }),
  };
  const { sentence } = sampleGap([[week]]);
  expect(sentence).toContain("lateness by a factor of 3.0, changeovers by 2.0. Corrections are held at that");
  expect(sampleGap([[aWeek(110, 100)]]).sentence).toMatch(/what the plans showed\.$/);
});

describe("correcting results", () => {
  test("multiplies each kind of cost, and lateness beside it, and nothing else", () => {
    const week: SampleWeek = {
      ...aWeek(0, 0),
      plan: kinds({ changeover: 30, late: 8, machine: 90 }),
      program: kinds({ changeover: 15, late: 4, machine: 100 }),
      planTotal: 128,
      programTotal: 119,
    };
    const result: ScenarioResult = {
      weeks: [
        {
          costByKind: { changeover: 10, late: 5, machine: 200, engineering: 7, buyOut: 3 },
          lateCost: 5,
          orders: 1,
          lateOrders: 1,
          lostOrders: 0,
          lostRevenue: 0,
          lostUnpricedCost: 0,
          boughtOutCost: 3,
          revenue: 400,
          hoursByMachine: [],
          kgByFeedstock: {},
          backlogCopies: 0,
          objective: 1,
        },
      ],
    };
    const [corrected] = correctedResults([result], sampleGap([[week]]));
    expect(corrected?.weeks[0]).toMatchObject({
      costByKind: { changeover: 20, late: 10, machine: 180, engineering: 7, buyOut: 3 },
      lateCost: 10,
      boughtOutCost: 3,
      revenue: 400,
    });
  });
});

describe("drawing weeks", () => {
  const weeks = Array.from({ length: 9 }, (_, index) => ({
    lines: index === 4 ? [] : [toyLine({ quantity: index + 1 })],
  }));

  test("takes each week once and none without orders", () => {
    const drawn = drawWeeks([{ weeks }], 20, 1);
    expect(drawn).toHaveLength(8);
    expect(new Set(drawn).size).toBe(8);
  });

  test("depends on the seed alone", () => {
    expect(drawWeeks([{ weeks }], 3, 5)).toEqual(drawWeeks([{ weeks }], 3, 5));
    expect([1, 2, 3, 4].map((seed) => drawWeeks([{ weeks }], 1, seed))).not.toEqual(
      Array(4).fill(drawWeeks([{ weeks }], 1, 1)),
    );
  });
});

describe("a week planned in full", () => {
  test("of the toy costs in the plan what it costs in the program, twice the same", async () => {
    const store = await aStore();
    const lines = Array.from({ length: 8 }, () => toyLine());
    const job = {
      shop: toyWorks(1),
      week: { lines },
      fromMin: MONDAY_MIN,
      seed: 1,
      lineSizes: lineSizes(lines),
    };
    const engines = { glpk: loadGlpk, highs: loadHighs };
    const week = await runSampleJob(job, store, engines);
    expect(week.isComparable).toBe(true);
    // A plan is rounded to cents.
    expect(week.planTotal).toBeCloseTo(week.programTotal, 1);
    expect(await runSampleJob(job, store, engines)).toEqual(week);
  });
});
