import { createHash } from "node:crypto";
import { type CaseEvaluation, evaluateCase } from "../../core/purchase/evaluate.ts";
import type { Candidate, PurchaseCase } from "../../core/shop/purchase-case.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { startPurchaseThreads } from "../../electron/purchase-threads.ts";
import { makeShop } from "./make-shop.ts";

/** One evaluation as `purchase-bench.ts` reads it. */
export interface PurchaseRun {
  /** s, from the start of the evaluation, start of the threads included */
  readonly roughS: number | null;
  readonly totalS: number;
  /** processor time of all threads, s; of the rough answer and in all */
  readonly roughProcessorS: number;
  readonly processorS: number;
  readonly weeks: number;
  /** most memory held by the whole process, MB */
  readonly memoryMb: number;
  /** SHA-256 of all results */
  readonly hash: string;
  /** processor time of the weeks planned in full, s, and what they show */
  readonly sampleProcessorS: number;
  readonly gapPct: number;
}

const hash = (text: string): string => createHash("sha256").update(text).digest("hex");

/** Evaluates a case of four candidates on the shop of size M, on so many threads. */
async function run(scenarios: number, weeks: number, threads: number): Promise<PurchaseRun> {
  const { shop } = makeShop("M", { seed: 1 });
  const startMs = performance.now();
  const start = process.cpuUsage();
  const pool = startPurchaseThreads(threads, new URL("../../dist/purchase-thread.js", import.meta.url));
  const processorS = (): number => {
    const used = process.cpuUsage(start);
    return (used.user + used.system) / 1e6;
  };
  let roughS: number | null = null;
  let roughProcessorS = 0;
  let weeksProcessorS = 0;
  const evaluation = await evaluateCase(shop, benchCase(shop, scenarios, weeks), {
    runJobs: pool.runJobs,
    runSamples: (...words) => {
      weeksProcessorS = processorS();
      return pool.runSamples(...words);
    },
    hash,
    onRough: () => {
      roughS = (performance.now() - startMs) / 1000;
      roughProcessorS = processorS();
    },
  });
  const totalS = (performance.now() - startMs) / 1000;
  const allProcessorS = processorS();
  await pool.close();
  return {
    roughS,
    totalS,
    roughProcessorS,
    processorS: allProcessorS,
    weeks: scenarios * weeks * (1 + evaluation.candidates.length),
    memoryMb: process.resourceUsage().maxRSS / 1024,
    hash: hash(resultText(evaluation)),
    sampleProcessorS: allProcessorS - weeksProcessorS,
    gapPct: evaluation.gap?.gapPct ?? Number.NaN,
  };
}

function resultText({ without, candidates }: CaseEvaluation): string {
  return JSON.stringify([without, candidates]);
}

function benchCase(shop: Shop, scenarios: number, weeks: number): PurchaseCase {
  const [bench, frame] = [
    shop.machines.find(({ id }) => id === "B1"),
    shop.machines.find(({ id }) => id === "G1"),
  ];
  if (!bench || !frame) throw new Error("the bench shop has changed");
  return {
    id: "C-1",
    name: "Bench case (invented)",
    note: "",
    startsOn: "2026-11-30",
    demand: { kind: "orders" },
    growthPctPerYear: 5,
    patienceWeeks: 2,
    candidates: [
      candidate("small", [{ kind: "add-alike", alike: "B1", id: "B9", name: "one more B" }]),
      candidate("pellet", [{ kind: "add-alike", alike: "G1", id: "G9", name: "one more G" }]),
      candidate("nights", [{ kind: "approve-unattended", machineId: "G1", mostH: 16 }]),
      candidate("late shift", [
        {
          kind: "add-shift",
          calendarId: "day",
          shift: { days: [1, 2, 3, 4, 5], start: "16:30", end: "22:00", operators: 1 },
          premiumPct: 25,
          otherWorkPct: 0,
        },
      ]),
    ],
    financing: { discountPctPerYear: 8, taxPct: 0, depreciation: "none" },
    weeks,
    scenarios,
    seed: 1,
    budget: null,
  };
}

function candidate(id: string, changes: Candidate["changes"]): Candidate {
  const money = {
    price: 20_000,
    installation: 0,
    training: 0,
    yearlyCost: 0,
    lifeYears: 6,
    residualValue: 0,
  };
  return { id, name: id, changes, ...money };
}

const [scenarios = 20, weeks = 52, threads = 2] = process.argv.slice(2).map(Number);
process.stdout.write(JSON.stringify(await run(scenarios, weeks, threads)));
