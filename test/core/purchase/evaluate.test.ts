import { beforeAll, describe, expect, test } from "vitest";
import type { CaseTools } from "../../../core/purchase/case-desk.ts";
import { type CaseEvaluation, type CaseProgress, evaluateCase } from "../../../core/purchase/evaluate.ts";
import { type FleetStore, runScenarioJob } from "../../../core/purchase/run-scenario.ts";
import type { ScenarioJob, ScenarioResult } from "../../../core/purchase/scenario-job.ts";
import type { Order } from "../../../core/shop/order.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { aCase, oneMore } from "./a-toy-case.ts";
import { aStore, hereTools, toyWorks } from "./a-toy-works.ts";

let store: FleetStore;
beforeAll(async () => {
  store = await aStore();
});

const WORKS: Shop = {
  ...toyWorks(1),
  orders: [3, 9, 20].flatMap((count, week) =>
    Array.from(
      { length: count },
      (_, index): Order => ({
        id: `O-${week}-${index}`,
        customer: "",
        partId: "P-1",
        quantity: 1 + (index % 2),
        releaseAt: "2026-11-01T00:00",
        dueAt: `2026-11-${String(4 + 7 * week).padStart(2, "0")}T12:00`,
        pricePerPiece: 100,
        allowLate: true,
        perPiece: false,
        note: "",
      }),
    ),
  ),
};
const CASE = aCase({ candidates: [oneMore()], weeks: 20, scenarios: 3 });

function withoutDesk({ desk: _, ...rest }: CaseEvaluation): string {
  return JSON.stringify(rest);
}

describe("evaluating a case", () => {
  test("gives as many results without as with each candidate, week by week", async () => {
    const evaluation = await evaluateCase(WORKS, CASE, hereTools(store));
    expect(evaluation.status).toBe("complete");
    expect(evaluation.without.map(({ weeks }) => weeks.length)).toEqual([20, 20, 20]);
    expect(evaluation.candidates[0]?.withIt).toHaveLength(3);
    expect(evaluation.gap).toBeNull();
  });

  test("takes every job through JSON and back without a difference", async () => {
    const tools: CaseTools = {
      ...hereTools(store),
      runJobs: (jobs, onResult) => {
        for (const [index, job] of jobs.entries()) {
          const copy: ScenarioJob = JSON.parse(JSON.stringify(job));
          onResult(index, JSON.parse(JSON.stringify(runScenarioJob(copy, store))));
        }
        return Promise.resolve();
      },
    };
    const direct = await evaluateCase(WORKS, CASE, hereTools(store));
    expect(withoutDesk(await evaluateCase(WORKS, CASE, tools))).toBe(withoutDesk(direct));
  });

  test("in any order of the jobs it is the same", async () => {
    const tools: CaseTools = {
      ...hereTools(store),
      runJobs: (jobs, onResult) => {
        for (const [index, job] of [...jobs.entries()].toReversed())
          onResult(index, runScenarioJob(job, store));
        return Promise.resolve();
      },
    };
    const forward = await evaluateCase(WORKS, CASE, hereTools(store));
    expect(withoutDesk(await evaluateCase(WORKS, CASE, tools))).toBe(withoutDesk(forward));
  });

  test("a rough answer of few weeks comes before the whole one", async () => {
    const told: string[] = [];
    let rough: CaseEvaluation | null = null;
    await evaluateCase(WORKS, CASE, {
      ...hereTools(store),
      onRough: (evaluation) => {
        rough = evaluation;
        told.push("rough");
      },
      onProgress: ({ stage, jobsDone, jobs }: CaseProgress) => {
        if (stage === "planning the weeks" && jobsDone === jobs) told.push("whole");
      },
    });
    expect(told).toEqual(["rough", "whole"]);
    expect(rough!).toMatchObject({ status: "rough", weeks: 13 });
    expect((rough as unknown as CaseEvaluation).without).toHaveLength(1);
  });

  test("progress counts up to all jobs", async () => {
    const counts: number[] = [];
    const onProgress = ({ stage, jobsDone, jobs }: CaseProgress): void => {
      if (stage === "planning the weeks") counts.push(jobsDone / jobs);
    };
    await evaluateCase(WORKS, CASE, { ...hereTools(store), onProgress });
    expect(counts).toEqual(counts.toSorted((a, b) => a - b));
    expect(counts.at(-1)).toBe(1);
  });

  test("stopped, it keeps only scenarios that are done on every fleet", async () => {
    const seen: ScenarioJob[] = [];
    const tools = { ...hereTools(store, seen), stopped: () => seen.length >= 3 };
    const { status, without, candidates } = await evaluateCase(WORKS, CASE, tools);
    expect(status).toBe("stopped");
    expect(without).toHaveLength(1);
    expect(candidates[0]?.withIt).toHaveLength(1);
  });

  test("jobs leave out what plays no part in them", async () => {
    const seen: ScenarioJob[] = [];
    await evaluateCase(WORKS, CASE, hereTools(store, seen));
    expect(seen[0]?.shop).toMatchObject({ orders: [], builds: [], quotes: [], cases: [] });
  });
});

describe("results that are known already", () => {
  test("are not worked out again, and others are", async () => {
    const cache = new Map<string, ScenarioResult>();
    const seen: ScenarioJob[] = [];
    const tools = { ...hereTools(store, seen), cache };
    const first = await evaluateCase(WORKS, CASE, tools);
    expect(seen).toHaveLength(6);
    const again = await evaluateCase(WORKS, CASE, tools);
    expect(seen).toHaveLength(6);
    expect(withoutDesk(again)).toBe(withoutDesk(first));
    await evaluateCase(WORKS, { ...CASE, scenarios: 4 }, tools);
    expect(seen).toHaveLength(8);
    await evaluateCase(WORKS, { ...CASE, patienceWeeks: 1 }, tools);
    expect(seen).toHaveLength(14);
  });

  test("a price of the candidate changes no week", async () => {
    const cache = new Map<string, ScenarioResult>();
    const seen: ScenarioJob[] = [];
    const tools = { ...hereTools(store, seen), cache };
    await evaluateCase(WORKS, CASE, tools);
    await evaluateCase(WORKS, { ...CASE, candidates: [oneMore({ price: 1 })] }, tools);
    expect(seen).toHaveLength(6);
  });

  test("a dearer feedstock does", async () => {
    const cache = new Map<string, ScenarioResult>();
    const seen: ScenarioJob[] = [];
    const tools = { ...hereTools(store, seen), cache };
    const feedstocks = WORKS.feedstocks.map((feedstock) => ({ ...feedstock, pricePerKg: 99 }));
    await evaluateCase(WORKS, CASE, tools);
    await evaluateCase({ ...WORKS, feedstocks }, CASE, tools);
    expect(seen).toHaveLength(12);
  });
});

describe("further questions to the desk", () => {
  test("more demand loses more orders on the same fleet", async () => {
    const { desk } = await evaluateCase(WORKS, CASE, hereTools(store));
    const lost = async (demandFactor: number): Promise<number> => {
      const [results = []] = await desk.results([[]], { demandFactor, scenarios: 2 });
      return results.flatMap(({ weeks }) => weeks).reduce((sum, { lostOrders }) => sum + lostOrders, 0);
    };
    expect(await lost(2)).toBeGreaterThan(await lost(1));
    expect(await lost(0.1)).toBe(0);
  });
});
