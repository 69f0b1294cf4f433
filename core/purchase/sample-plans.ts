import type { CostKind } from "../cost/cost-line.ts";
import { seededRandom } from "../units/random.ts";
import type { SampleWeek } from "./sample-week.ts";
import type { ScenarioResult, WeekResult } from "./scenario-job.ts";
import type { WeekDemand } from "./scenarios.ts";

/** How far the weekly program is from real plans, by a sample of weeks planned in full. */
export interface SampleGap {
  /** weeks that could be compared, over all fleets, and those that could not */
  readonly weeks: number;
  readonly leftOut: number;
  /** cost of the real plans over the program's, less 1, %; positive: plans cost more */
  readonly gapPct: number;
  /** the same by fleet, in the order given; null: none of its weeks could be compared */
  readonly gapPctByFleet: readonly (number | null)[];
  /** the same by week, from the lowest to the highest, %: how sure the gap is */
  readonly lowestPct: number;
  readonly highestPct: number;
  /** what each kind of cost is multiplied by; kinds not named stay */
  readonly factors: Readonly<Partial<Record<CostKind, number>>>;
  /** kinds whose factor is held at a limit: the sample shows more, and the case is only as sure as they are */
  readonly heldKinds: readonly CostKind[];
  readonly sentence: string;
}

/** Weeks planned in full: of the shop as it is, and of each candidate's fleet, the first of the same. */
export const SAMPLE_WEEKS = { without: 2, withEach: 1 } as const;

/** Kinds that a week alone shows as a year would; tool paths are paid once in a year, and buying out takes weeks. */
const CORRECTED: readonly CostKind[] = [
  "feedstock",
  "machine",
  "labour",
  "changeover",
  "finishing",
  "expectedFailure",
  "overhead",
  "late",
];
/** A factor from few weeks is held between these. */
const LEAST_FACTOR = 0.5;
const MOST_FACTOR = 3;

/** Draws weeks of the scenarios by seed, each at most once. Example: 2 of 20 x 52 weeks. */
export function drawWeeks(
  scenarios: readonly { readonly weeks: readonly WeekDemand[] }[],
  count: number,
  seed: number,
): WeekDemand[] {
  const open = scenarios.flatMap(({ weeks }) => weeks).filter(({ lines }) => lines.length > 0);
  const random = seededRandom(seed);
  const drawn: WeekDemand[] = [];
  while (drawn.length < count && open.length > 0)
    drawn.push(...open.splice(Math.floor(random() * open.length), 1));
  return drawn;
}

/**
 * The gap from sampled weeks by fleet, and a factor for each kind of cost: cost in the plans over cost in the programs, all
 * fleets together (ratio estimator; Cochran 1977, from memory), so that with and without are corrected alike.
 * Example: changeovers of 900 in plans and 300 in programs: factor 3.
 */
export function sampleGap(byFleet: readonly (readonly SampleWeek[])[]): SampleGap {
  const all = byFleet.flat();
  const compared = all.filter(({ isComparable }) => isComparable);
  const each = compared.map((week) => pctOf([week]));
  const gapPct = compared.length > 0 ? pctOf(compared) : 0;
  const gap = {
    weeks: compared.length,
    leftOut: all.length - compared.length,
    gapPct,
    gapPctByFleet: byFleet.map((weeks) => {
      const own = weeks.filter(({ isComparable }) => isComparable);
      return own.length > 0 ? pctOf(own) : null;
    }),
    lowestPct: Math.min(...each, gapPct),
    highestPct: Math.max(...each, gapPct),
    factors: Object.fromEntries(CORRECTED.map((kind) => [kind, factorOf(compared, kind)])),
    heldKinds: CORRECTED.filter((kind) => [LEAST_FACTOR, MOST_FACTOR].includes(factorOf(compared, kind))),
  };
  return { ...gap, sentence: sentenceOf(gap) };
}

function pctOf(weeks: readonly SampleWeek[]): number {
  const program = weeks.reduce((sum, week) => sum + week.programTotal, 0);
  return program > 0 ? (weeks.reduce((sum, week) => sum + week.planTotal, 0) / program - 1) * 100 : 0;
}

function factorOf(weeks: readonly SampleWeek[], kind: CostKind): number {
  const plan = weeks.reduce((sum, week) => sum + week.plan[kind], 0);
  const program = weeks.reduce((sum, week) => sum + week.program[kind], 0);
  return program > 0 ? Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, plan / program)) : 1;
}

function sentenceOf(gap: Omit<SampleGap, "sentence">): string {
  const { weeks, gapPct, lowestPct, highestPct, factors, heldKinds } = gap;
  if (weeks === 0)
    return "No week could be planned in full for comparison, so the weekly figures stand as they are.";
  const direction = gapPct >= 0 ? "more" : "less";
  const counted = weeks === 1 ? "One week was" : `${weeks} weeks were`;
  return `${counted} planned in full: real plans cost ${Math.abs(gapPct).toFixed(1)} % ${direction} than the weekly figures (from ${lowestPct.toFixed(1)} to ${highestPct.toFixed(1)} %). Each kind of cost is corrected by what the plans showed${largeOnes(factors)}.${heldKinds.length > 0 ? HELD : ""}`;
}

const HELD = " Corrections are held at that: look at what hangs on them before you decide.";

/** The two kinds that weekly figures miss most, where they are multiplied by much. */
function largeOnes({ late = 1, changeover = 1 }: SampleGap["factors"]): string {
  if (Math.max(late, changeover) < LARGE_FACTOR) return "";
  return `: lateness by a factor of ${late.toFixed(1)}, changeovers by ${changeover.toFixed(1)}`;
}

const LARGE_FACTOR = 1.5;

/** The same results with each kind of cost multiplied by its factor. Hours, kilograms, revenue and orders stay. */
export function correctedResults(
  results: readonly ScenarioResult[],
  { factors }: SampleGap,
): ScenarioResult[] {
  return results.map(({ weeks }) => ({ weeks: weeks.map((week) => correctedWeek(week, factors)) }));
}

function correctedWeek(week: WeekResult, factors: SampleGap["factors"]): WeekResult {
  const costByKind: Partial<Record<CostKind, number>> = { ...week.costByKind };
  for (const kind of CORRECTED) {
    const cost = costByKind[kind];
    if (cost !== undefined) costByKind[kind] = cost * (factors[kind] ?? 1);
  }
  return { ...week, costByKind, lateCost: costByKind.late ?? 0 };
}
