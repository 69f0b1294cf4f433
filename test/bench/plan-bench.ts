import { type BenchCall, type BenchRow, atLeast, atMost, mean, median, told } from "./bench-row.ts";
import type { BenchSize } from "./make-shop.ts";
import { measuredPlan, type PlanAnswer } from "./measured-plan.ts";

/** What a size should reach. */
interface SizeTarget {
  readonly size: BenchSize;
  readonly seeds: number;
  readonly firstPlanS: number;
  readonly gapAt5SPct: number;
  readonly gapAt30SPct: number;
  readonly memoryMb: number;
  /** how much cheaper than the dispatch that knows costs, % */
  readonly belowDispatchPct: number | null;
}

const TARGETS: readonly SizeTarget[] = [
  {
    size: "S",
    seeds: 10,
    firstPlanS: 0.3,
    gapAt5SPct: 6,
    gapAt30SPct: 4,
    memoryMb: 250,
    belowDispatchPct: null,
  },
  {
    size: "M",
    seeds: 3,
    firstPlanS: 0.5,
    gapAt5SPct: 5,
    gapAt30SPct: 4,
    memoryMb: 300,
    belowDispatchPct: 10,
  },
  {
    size: "L",
    seeds: 3,
    firstPlanS: 1.5,
    gapAt5SPct: 5,
    gapAt30SPct: 4,
    memoryMb: 400,
    belowDispatchPct: 10,
  },
  {
    size: "XL",
    seeds: 3,
    firstPlanS: 4,
    gapAt5SPct: 8,
    gapAt30SPct: 5.5,
    memoryMb: 700,
    belowDispatchPct: 20,
  },
];

const SHORT_S = 5;
const LONG_S = 30;
const SEARCH_SEEDS = 5;

/** Every size: first plan, gap after 5 and 30 s, memory, against hand rules and dispatch; growth from S to XL. */
export async function benchPlans(call: BenchCall): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const firsts: { options: number; firstPlanS: number }[] = [];
  for (const target of TARGETS) {
    const short = await runs(target, SHORT_S, call);
    rows.push(...sizeRows(target, short));
    if (!call.quick) rows.push(...longRows(target, await runs(target, LONG_S, call)));
    if (!call.quick && target.size === "S") rows.push(await sameBestPlan(call));
    firsts.push({
      options: mean(short.map(({ options }) => options)),
      firstPlanS: median(short.map(firstPlanS)),
    });
  }
  return [...rows, ...growthRows(firsts)];
}

async function runs(target: SizeTarget, seconds: number, call: BenchCall): Promise<PlanAnswer[]> {
  const answers: PlanAnswer[] = [];
  const seeds = call.quick ? 1 : target.seeds;
  for (let shopSeed = 1; shopSeed <= seeds; shopSeed++) {
    const answer = await measuredPlan({ size: target.size, shopSeed, searchSeed: 1, seconds });
    call.say(sentence(target.size, shopSeed, seconds, answer));
    answers.push(answer);
  }
  return answers;
}

function sentence(size: BenchSize, seed: number, seconds: number, answer: PlanAnswer): string {
  const { plan, memoryMb } = answer;
  const late = plan.orders.filter(({ lateMin }) => lateMin > 0).length;
  const unplanned = plan.unplanned.reduce((sum, { copies }) => sum + copies, 0);
  const { value, gapPct } = plan.bound;
  return `${size} seed ${seed}, ${seconds} s: first plan ${plan.elapsed.firstPlanS.toFixed(2)} s, cost ${plan.cost.total.toFixed(2)}, bound ${value.toFixed(2)}, gap ${gapPct.toFixed(2)} %, dispatch ${answer.dispatchCost.toFixed(2)}, late ${late}, unplanned ${unplanned}, ${memoryMb.toFixed(0)} MB`;
}

const firstPlanS = ({ plan }: PlanAnswer): number => plan.elapsed.firstPlanS;
const gapPct = ({ plan }: PlanAnswer): number => plan.bound.gapPct;
const handRuleCost = ({ plan }: PlanAnswer, rule: number): number => plan.handRules[rule]?.cost ?? NaN;

function sizeRows(target: SizeTarget, answers: readonly PlanAnswer[]): BenchRow[] {
  const { size, belowDispatchPct } = target;
  const below = (costOf: (answer: PlanAnswer) => number) =>
    mean(answers.map((answer) => (1 - answer.plan.cost.total / costOf(answer)) * 100));
  const name = (what: string) => `${size} ${what}, seeds 1-${answers.length}`;
  const belowDispatch = below(({ dispatchCost }) => dispatchCost);
  return [
    atMost(name("first valid plan, slowest"), worst(answers, firstPlanS), "s", target.firstPlanS),
    atMost(name("gap at 5 s, median"), median(answers.map(gapPct)), "%", target.gapAt5SPct),
    told(name("gap at 5 s, largest"), worst(answers, gapPct), "%"),
    atMost(
      name("memory at 5 s"),
      worst(answers, ({ memoryMb }) => memoryMb),
      "MB",
      target.memoryMb,
    ),
    told(
      name("cheaper than first machine that fits"),
      below((answer) => handRuleCost(answer, 0)),
      "%",
    ),
    told(
      name("cheaper than cheapest machine"),
      below((answer) => handRuleCost(answer, 1)),
      "%",
    ),
    belowDispatchPct === null
      ? told(name("cheaper than cost-aware dispatch"), belowDispatch, "%")
      : atLeast(name("cheaper than cost-aware dispatch"), belowDispatch, "%", belowDispatchPct),
  ];
}

function longRows(target: SizeTarget, answers: readonly PlanAnswer[]): BenchRow[] {
  const name = (what: string) => `${target.size} ${what}, seeds 1-${answers.length}`;
  return [
    atMost(name("gap at 30 s, median"), median(answers.map(gapPct)), "%", target.gapAt30SPct),
    told(name("gap at 30 s, largest"), worst(answers, gapPct), "%"),
    atMost(
      name("memory at 30 s"),
      worst(answers, ({ memoryMb }) => memoryMb),
      "MB",
      target.memoryMb,
    ),
  ];
}

/** S again with other search seeds: all should end at the same cost. */
async function sameBestPlan(call: BenchCall): Promise<BenchRow> {
  const costs: number[] = [];
  for (let searchSeed = 1; searchSeed <= SEARCH_SEEDS; searchSeed++) {
    const answer = await measuredPlan({
      size: "S",
      shopSeed: 1,
      searchSeed: searchSeed * 100,
      seconds: SHORT_S,
    });
    call.say(`S seed 1, search seed ${searchSeed * 100}: cost ${answer.plan.cost.total.toFixed(2)}`);
    costs.push(answer.plan.cost.total);
  }
  const spreadPct = (Math.max(...costs) / Math.min(...costs) - 1) * 100;
  return atMost(`S seed 1: spread of the best cost over ${SEARCH_SEEDS} search seeds`, spreadPct, "%", 0.001);
}

/** Time to the first plan against the number of ways to make a line: an exponent up to 1 is linear or better. */
function growthRows(firsts: readonly { options: number; firstPlanS: number }[]): BenchRow[] {
  const first = firsts[0];
  const last = firsts.at(-1);
  if (!first || !last || first === last) return [];
  const growth = Math.log(last.firstPlanS / first.firstPlanS) / Math.log(last.options / first.options);
  return [
    told("S ways to make a line, in all", first.options, ""),
    told("XL ways to make a line, in all", last.options, ""),
    atMost("growth of the first plan from S to XL: exponent of time over ways", growth, "", 1),
  ];
}

function worst(answers: readonly PlanAnswer[], of: (answer: PlanAnswer) => number): number {
  return Math.max(...answers.map(of));
}
