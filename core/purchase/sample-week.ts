import { COST_KINDS, type CostKind } from "../cost/cost-line.ts";
import type { EngineLoaders } from "../plan/engines/choose-engine.ts";
import { planWeek } from "../plan/plan-week.ts";
import { instantOf } from "../shop/instants.ts";
import type { Order } from "../shop/order.ts";
import type { Shop } from "../shop/shop.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";
import type { LineSizes } from "./line-sizes.ts";
import { type FleetStore, runScenarioJob } from "./run-scenario.ts";
import type { WeekResult } from "./scenario-job.ts";
import type { DemandLine, WeekDemand } from "./scenarios.ts";

/** One week of a scenario to be planned in full beside its weekly program. Pure, with a JSON form, like a `ScenarioJob`. */
export interface SampleJob {
  /** the fleet is already applied to it */
  readonly shop: Shop;
  readonly week: WeekDemand;
  readonly fromMin: number;
  readonly seed: number;
  readonly lineSizes: readonly LineSizes[];
}

/** Money of one week by kind, as a real plan has it and as the weekly program has it. */
export interface SampleWeek {
  readonly plan: Readonly<Record<CostKind, number>>;
  readonly program: Readonly<Record<CostKind, number>>;
  readonly planTotal: number;
  readonly programTotal: number;
  /** false: one of both leaves copies out, so that their costs cannot be compared */
  readonly isComparable: boolean;
}

/** The program goes on for so many weeks without orders, until it has made everything, as the plan does. */
const WEEKS_AFTER = 5;

/** Looks at the clock that the search of a plan may take: some seconds of work, but the same plan on every machine. */
const LOOKS = 1500;

/**
 * Plans one week in full (`plan-week.ts`) and solves its weekly program, both on their own: orders come in on Monday, every one
 * may be late, nothing is left over from before, no day is closed. The search is limited by looks at a counting clock, not by
 * time. Example: a plan of 13 071 where the program has 13 230: the program is 1.2 % high.
 */
export async function runSampleJob(
  job: SampleJob,
  fleets: FleetStore,
  engines: EngineLoaders,
): Promise<SampleWeek> {
  const lines = job.week.lines.map((line) => ({ ...line, allowLate: true }));
  const own = { ...job, shop: usualWeek(job.shop) };
  const weeks = programWeeks(own, lines, fleets);
  const orders = lines.map((line, index) => orderOf(line, index, job));
  const plan = await planWeek(
    { ...own.shop, orders },
    { fromMin: job.fromMin, days: 7, seed: job.seed, seconds: LOOKS / 1000 },
    { now: countingClock(), startedMs: 0, engines },
  );
  const program = byKind((kind) => weeks.reduce((sum, week) => sum + (week.costByKind[kind] ?? 0), 0));
  const open = weeks.at(-1)?.backlogCopies ?? 0;
  return {
    plan: byKind((kind) => plan.cost.byKind[kind]),
    program,
    planTotal: plan.cost.total,
    programTotal: COST_KINDS.reduce((sum, kind) => sum + program[kind], 0),
    isComparable:
      plan.unplanned.length === 0 && open < LEAST_OPEN && weeks.every(({ lostOrders }) => lostOrders === 0),
  };
}

/** Fewer open copies than this are round-off. */
const LEAST_OPEN = 1e-6;

/** The weekly programs of the week and of those after it. */
function programWeeks(
  job: SampleJob,
  lines: readonly DemandLine[],
  fleets: FleetStore,
): readonly WeekResult[] {
  const after = Array.from({ length: WEEKS_AFTER }, (): WeekDemand => ({ lines: [] }));
  const { shop, seed, fromMin, lineSizes } = job;
  return runScenarioJob(
    {
      shop,
      scenario: { weeks: [{ lines }, ...after] },
      patienceWeeks: WEEKS_AFTER + 1,
      seed,
      fromMin,
      knownWeeksAhead: 0,
      lineSizes,
    },
    fleets,
  ).weeks;
}

/** A clock that moves by one millisecond whenever somebody looks. */
function countingClock(): () => number {
  let looks = 0;
  return () => looks++;
}

function usualWeek(shop: Shop): Shop {
  return {
    ...shop,
    builds: [],
    calendars: shop.calendars.map((calendar) => ({ ...calendar, closures: [] })),
    machines: shop.machines.map((machine) => ({ ...machine, outOfService: [] })),
  };
}

function orderOf(line: DemandLine, index: number, { shop, fromMin }: SampleJob): Order {
  const at = (day: number): string => instantOf(fromMin + day * MIN_PER_DAY, shop.timeZone);
  return {
    id: `D-${index}`,
    customer: "",
    partId: line.partId,
    quantity: line.quantity,
    releaseAt: at(0),
    dueAt: at(line.dueDay + 1),
    lateCostPerDay: line.lateCostPerDay,
    allowLate: true,
    perPiece: false,
    note: "",
  };
}

function byKind(costOf: (kind: CostKind) => number): Record<CostKind, number> {
  // Every kind is set.
  return Object.fromEntries(COST_KINDS.map((kind) => [kind, costOf(kind)])) as Record<CostKind, number>;
}
