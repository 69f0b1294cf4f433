import { atMost, type BenchCall, type BenchRow, told } from "./bench-row.ts";
import type { PurchaseRun } from "./purchase-run.ts";
import { runCommand } from "./run-command.ts";

const WEEKS = 52;
const SCENARIOS = 20;
const QUICK_SCENARIOS = 5;
const THREADS = 2;
const MOST_S = 60;
const MOST_ROUGH_S = 3;
const MOST_MB = 500;
/** Twice the weeks may take at most so many times as long, start-up and compiling included. */
const MOST_GROWTH = 2.2;

/** A case of four candidates on the shop of size M: whole and rough answer, memory, and growth with the scenarios. */
export async function benchPurchase(call: BenchCall): Promise<BenchRow[]> {
  const scenarios = call.quick ? QUICK_SCENARIOS : SCENARIOS;
  call.say(`purchase, ${scenarios} scenarios`);
  const whole = await purchaseRun(scenarios);
  call.say(`purchase, ${scenarios * 2} scenarios for growth`);
  const double = await purchaseRun(scenarios * 2);
  const name = `M seed 1, ${scenarios} scenarios of ${WEEKS} weeks, 4 candidates, ${THREADS} threads`;
  const growth = (double.processorS - whole.sampleProcessorS) / (whole.processorS - whole.sampleProcessorS);
  return [
    atMost(
      `${name}: whole answer`,
      whole.totalS,
      "s",
      call.quick ? (MOST_S * QUICK_SCENARIOS) / SCENARIOS : MOST_S,
    ),
    atMost(`${name}: rough answer`, whole.roughS ?? Number.NaN, "s", MOST_ROUGH_S),
    atMost(`${name}: memory`, whole.memoryMb, "MB", MOST_MB),
    told(`${name}: processor time of one weekly program, start-up shared out`, perWeekMs(whole), "ms"),
    told(`${name}: processor time of the weeks planned in full`, whole.sampleProcessorS, "s"),
    told(`${name}: real plans cost above the weekly figures`, whole.gapPct, "%"),
    atMost(`${name}: processor time with twice the scenarios`, growth, "times", MOST_GROWTH),
  ];
}

function perWeekMs({ processorS, sampleProcessorS, weeks }: PurchaseRun): number {
  return (1000 * (processorS - sampleProcessorS)) / weeks;
}

/** Runs the case in a process of its own, on the built threads. */
async function purchaseRun(scenarios: number): Promise<PurchaseRun> {
  const words = ["tsx", "test/bench/purchase-run.ts", scenarios, WEEKS, THREADS].map(String);
  const { stdout } = await runCommand("npx", words, [0]);
  return JSON.parse(stdout);
}
