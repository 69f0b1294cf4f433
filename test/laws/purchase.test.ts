import { beforeAll, describe, expect, test } from "vitest";
import { CaseDesk } from "../../core/purchase/case-desk.ts";
import { type FleetStore, runScenarioJob } from "../../core/purchase/run-scenario.ts";
import type { ScenarioJob, WeekResult } from "../../core/purchase/scenario-job.ts";
import type { DemandLine } from "../../core/purchase/scenarios.ts";
import { demandOf } from "../../core/purchase/demand.ts";
import { minuteOf } from "../../core/shop/instants.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { seededRandom } from "../../core/units/random.ts";
import { makeShop } from "../bench/make-shop.ts";
import { makeTinyShop } from "../bench/tiny-shop.ts";
import { pick, wholeBetween } from "../bench/draw.ts";
import { aCase } from "../core/purchase/a-toy-case.ts";
import { aStore, hereTools } from "../core/purchase/a-toy-works.ts";
import { lawSeeds } from "./law-shops.ts";

const FROM_MIN = minuteOf("2026-11-30T00:00", "Europe/Berlin");
/** Solvers stop at 1e-7 of their own scaling. */
const TOLERANCE = 1e-5;

let store: FleetStore;
beforeAll(async () => {
  store = await aStore();
});

/** A random works and one week of random lines that may be too many for it. */
function randomJob(seed: number): ScenarioJob {
  const random = seededRandom(seed * 31 + 7);
  const { shop } = seed % 4 === 0 ? makeShop("S", { seed }) : makeTinyShop(seed);
  const most = seed % 4 === 0 ? 20 : 12;
  const lines = Array.from(
    { length: wholeBetween(random, 1, 5 * most) },
    (): DemandLine => ({
      partId: pick(shop.parts, random).id,
      quantity: wholeBetween(random, 1, most),
      dueDay: wholeBetween(random, 0, 6),
      lateCostPerDay: wholeBetween(random, 0, 300),
      pricePerPiece: random() < 0.2 ? null : wholeBetween(random, 5, 400),
      allowLate: random() < 0.9,
    }),
  );
  return {
    shop,
    scenario: { weeks: [{ lines }] },
    patienceWeeks: wholeBetween(random, 0, 2),
    seed,
    fromMin: FROM_MIN,
    knownWeeksAhead: wholeBetween(random, 0, 1),
  };
}

function objectiveOf(job: ScenarioJob): number {
  return runScenarioJob(job, store).weeks[0]?.objective ?? Number.NaN;
}

function withMachine(shop: Shop, machine: Machine): Shop {
  return { ...shop, machines: [...shop.machines, { ...machine, id: `${machine.id}-more` }] };
}

/** What a scenario brings: revenue less all costs. */
function valueOf(weeks: readonly WeekResult[]): number {
  return weeks.reduce(
    (sum, week) =>
      sum + week.revenue - Object.values(week.costByKind).reduce((costs, cost) => costs + cost, 0),
    0,
  );
}

describe("more capacity never costs more in one week", () => {
  for (const seed of lawSeeds(12)) {
    test(`seed ${seed}: another machine, a longer shift, more people, approval for nights`, () => {
      const job = randomJob(seed);
      const base = objectiveOf(job);
      const { shop } = job;
      const more: Record<string, Shop> = {
        machine: withMachine(shop, pick(shop.machines, seededRandom(seed))),
        shift: withShifts(shop, (shift) => ({ ...shift, end: "23:30" })),
        people: withShifts(shop, (shift) => ({ ...shift, operators: shift.operators + 1 })),
        nights: { ...shop, machines: shop.machines.map((machine) => ({ ...machine, unattended: true })) },
      };
      for (const [name, bigger] of Object.entries(more)) {
        const cost = objectiveOf({ ...job, shop: bigger });
        expect(cost, name).toBeLessThanOrEqual(base * (1 + TOLERANCE) + TOLERANCE);
      }
    });
  }
});

function withShifts(
  shop: Shop,
  change: (shift: Shop["calendars"][number]["shifts"][number]) => typeof shift,
): Shop {
  const calendars = shop.calendars.map((calendar) => ({ ...calendar, shifts: calendar.shifts.map(change) }));
  return { ...shop, calendars };
}

describe("a free machine never lowers the value", () => {
  for (const seed of lawSeeds(5)) {
    test(`seed ${seed}: twelve weeks with one more machine bring at least as much`, () => {
      const { shop } = makeTinyShop(seed);
      const random = seededRandom(seed);
      const weeks = Array.from({ length: 12 }, () => ({
        lines: Array.from(
          { length: wholeBetween(random, 8, 40) },
          (): DemandLine => ({
            partId: pick(shop.parts, random).id,
            quantity: wholeBetween(random, 1, 4),
            dueDay: wholeBetween(random, 0, 4),
            lateCostPerDay: wholeBetween(random, 5, 60),
            pricePerPiece: wholeBetween(random, 100, 400),
            allowLate: true,
          }),
        ),
      }));
      const job = { ...randomJob(1), shop, scenario: { weeks }, patienceWeeks: 1, knownWeeksAhead: 1 };
      const bigger = withMachine(shop, shop.machines[0]!);
      const base = valueOf(runScenarioJob(job, store).weeks);
      const more = valueOf(runScenarioJob({ ...job, shop: bigger }, store).weeks);
      expect(more).toBeGreaterThanOrEqual(base - Math.abs(base) * MYOPIA);
    });
  }
});

/** Weeks are planned one after another without a look ahead, so over many weeks the law holds but for this share. */
const MYOPIA = 0.002;

describe("the same seed gives the same weeks", () => {
  for (const seed of lawSeeds(2)) {
    test(`seed ${seed}: twice the same result, and another one for another seed`, async () => {
      const { shop } = makeShop("S", { seed });
      const results = async (caseSeed: number): Promise<string> => {
        const purchaseCase = aCase({ seed: caseSeed, weeks: 3, scenarios: 2, candidates: [] });
        const desk = new CaseDesk(
          shop,
          purchaseCase,
          demandOf(shop, purchaseCase, new Map()),
          hereTools(store),
        );
        return JSON.stringify(await desk.results([[]], { demandFactor: 0.7 }));
      };
      expect(await results(seed)).toBe(await results(seed));
      expect(await results(seed)).not.toBe(await results(seed + 1));
    });
  }
});

describe("the work grows linearly", () => {
  test("jobs are fleets times scenarios, and a job solves one program for each week", async () => {
    const { shop } = makeTinyShop(3);
    const count = async (weeks: number, scenarios: number): Promise<number> => {
      const jobs: ScenarioJob[] = [];
      const purchaseCase = aCase({ weeks, scenarios, candidates: [] });
      const desk = new CaseDesk(
        shop,
        purchaseCase,
        demandOf(shop, purchaseCase, new Map()),
        hereTools(store, jobs),
      );
      const [results = []] = await desk.results([[]]);
      expect(jobs.length).toBe(scenarios);
      return results.reduce((sum, result) => sum + result.weeks.length, 0);
    };
    const one = await count(2, 2);
    expect(await count(4, 2)).toBe(2 * one);
    expect(await count(2, 6)).toBe(3 * one);
  });
});
