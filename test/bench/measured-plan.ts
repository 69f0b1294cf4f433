import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { compileProblem } from "../../core/plan/compile/compile-problem.ts";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import { searchSchedule } from "../../core/plan/search/search.ts";
import { instantOf } from "../../core/shop/instants.ts";
import { type BenchSize, makeShop, type ShopCase } from "./make-shop.ts";
import { runCommand } from "./run-command.ts";

/** One planning run to measure. */
export interface PlanAsk {
  readonly size: BenchSize;
  readonly shopSeed: number;
  readonly searchSeed: number;
  readonly seconds: number;
}

/** What was measured. */
export interface PlanAnswer {
  /** ways to make a line, summed over all lines */
  readonly options: number;
  readonly plan: PlanDocument;
  /** cost of the dispatch that knows costs and due dates, from which the search starts */
  readonly dispatchCost: number;
  /** most memory held by the program that planned, threads included, MB */
  readonly memoryMb: number;
}

/** Plans a generated shop with the built program in a process of its own, as a person would run it. */
export async function measuredPlan(ask: PlanAsk): Promise<PlanAnswer> {
  const made = makeShop(ask.size, { seed: ask.shopSeed });
  const { plan, memoryMb } = await planned(made, ask);
  const { problem } = compileProblem(made.shop, made.request);
  const nowMs = performance.now();
  const dispatch = searchSchedule(problem, null, { seed: ask.searchSeed, now: () => nowMs, untilMs: nowMs });
  return { options: problem.options.length, plan, dispatchCost: dispatch.cost, memoryMb };
}

async function planned(
  { shop, request }: ShopCase,
  ask: PlanAsk,
): Promise<Pick<PlanAnswer, "plan" | "memoryMb">> {
  const dir = mkdtempSync(join(tmpdir(), "bench-shop-"));
  try {
    const file = join(dir, "bench.shop.json");
    writeFileSync(file, JSON.stringify(shop));
    const from = instantOf(request.fromMin, shop.timeZone);
    const words = ["plan", file, "--from", from, "--days", String(request.days), "--json", "--quiet"];
    const effort = ["--seconds", String(ask.seconds), "--seed", String(ask.searchSeed)];
    const hook = new URL("memory-at-exit.mjs", import.meta.url).href;
    const node = ["--import", hook, "dist/command-line.js", ...words, ...effort];
    const end = await runCommand(process.execPath, node, [0, 1]);
    if (end.stdout.trim() === "") throw new Error(`the program made no plan: ${end.stderr.slice(-1500)}`);
    return { plan: JSON.parse(end.stdout) as PlanDocument, memoryMb: toldMemoryMb(end.stderr) };
  } finally {
    rmSync(dir, { recursive: true });
  }
}

function toldMemoryMb(stderr: string): number {
  const found = stderr.match(/most memory (\d+) KB/);
  if (!found) throw new Error("the program did not tell its memory");
  return Number(found[1]) / 1024;
}
