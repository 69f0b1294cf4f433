import { dayNumberOf, isDay } from "../shop/instants.ts";
import type { PurchaseCase } from "../shop/purchase-case.ts";
import { seededRandom } from "../units/random.ts";
import { WEEKS_PER_YEAR } from "./cash-terms.ts";
import type { Demand, ExpectedLine, PastWeek } from "./demand.ts";
import { monthOfWeek, weekOfDay } from "../shop/week-number.ts";
import { poissonQuantile } from "./poisson.ts";

/** One order line that falls due in a week. */
export interface DemandLine {
  readonly partId: string;
  readonly quantity: number;
  /** day of the week on which it is due: 0 Monday to 6 Sunday */
  readonly dueDay: number;
  /** cost of the whole line being late by one day, currency per day */
  readonly lateCostPerDay: number;
  /** price of one copy, currency; null: not known */
  readonly pricePerPiece: number | null;
  readonly allowLate: boolean;
}

export interface WeekDemand {
  readonly lines: readonly DemandLine[];
}

/** One possible future: what falls due in each week, the first week first. A pure JSON form. */
export interface ScenarioDemand {
  readonly weeks: readonly WeekDemand[];
}

/**
 * Scenarios of a case: each week is a whole past week drawn with replacement (the bootstrap of Efron, 1979, from memory, with
 * weeks as units, so that what is ordered together stays together), or for typed demand a Poisson number of orders. Growth,
 * season and a demand factor multiply the number of orders: an order comes floor(factor + u) times, u drawn once for each, so
 * that more demand always holds the orders of less. A past week's own season is divided out. Draws depend on (seed, scenario,
 * week) alone: a longer case begins with the same weeks. Example: factor 1.5 brings each order once, half of them twice.
 */
export function makeScenarios(
  demand: Demand,
  purchaseCase: PurchaseCase,
  count: number,
  demandFactor = 1,
): ScenarioDemand[] {
  const { startsOn } = purchaseCase;
  const firstWeek = isDay(startsOn) ? weekOfDay(dayNumberOf(startsOn)) : 0;
  const weeks = Array.from({ length: purchaseCase.weeks }, (_, index) => ({
    index,
    factor: demandFactor * growthAt(purchaseCase, index),
    season: seasonOf(purchaseCase, firstWeek + index),
  }));
  const expected = demand.expected.map(datedLine);
  return Array.from({ length: count }, (_, scenario) => ({
    weeks: weeks.map((week) => {
      const random = seededRandom(streamSeed(purchaseCase.seed, scenario, week.index));
      const scale = week.factor * week.season;
      return {
        lines: [
          ...drawnLines(demand, purchaseCase, scale, random),
          ...expectedLines(expected, scale, random),
        ],
      };
    }),
  }));
}

/** Growth until the middle of a week, from the start of the case. */
function growthAt({ growthPctPerYear }: PurchaseCase, weekIndex: number): number {
  return (1 + growthPctPerYear / 100) ** ((weekIndex + 0.5) / WEEKS_PER_YEAR);
}

function seasonOf({ seasonByMonth }: PurchaseCase, week: number): number {
  return seasonByMonth?.[monthOfWeek(week)] ?? 1;
}

function drawnLines(
  { pastWeeks }: Demand,
  purchaseCase: PurchaseCase,
  scale: number,
  random: () => number,
): DemandLine[] {
  const past = pastWeeks[Math.floor(random() * pastWeeks.length)];
  if (past === undefined) return [];
  const own = ownSeason(past, purchaseCase);
  return past.lines.flatMap((line) => repeated(line, Math.floor(scale / own + random())));
}

/** A past week in a month that has no orders by its season cannot be scaled by it: it counts as it was. */
function ownSeason({ week }: PastWeek, purchaseCase: PurchaseCase): number {
  const season = seasonOf(purchaseCase, week);
  return season > 0 ? season : 1;
}

function repeated(line: DemandLine, times: number): DemandLine[] {
  return Array.from({ length: times }, () => line);
}

/** An expected line as it is on each working day; a scenario holds the same few records again and again. */
interface DatedLine {
  readonly ordersPerWeek: number;
  readonly byDay: readonly DemandLine[];
}

function datedLine({ ordersPerWeek, line }: ExpectedLine): DatedLine {
  return {
    ordersPerWeek,
    byDay: Array.from({ length: WORKING_DAYS }, (_, dueDay) => ({ ...line, dueDay })),
  };
}

const WORKING_DAYS = 5;

/** The order of draws is fixed before the number of orders: a further order changes no other. */
function expectedLines(expected: readonly DatedLine[], scale: number, random: () => number): DemandLine[] {
  const lines: DemandLine[] = [];
  for (const { ordersPerWeek, byDay } of expected) {
    const share = random();
    const days = seededRandom(Math.floor(random() * 2 ** 32));
    const orders = poissonQuantile(share, ordersPerWeek * scale);
    for (let order = 0; order < orders; order++) {
      const line = byDay[Math.floor(days() * WORKING_DAYS)];
      if (line) lines.push(line);
    }
  }
  return lines;
}

/** A seed of its own for each week of each scenario (multiply and xorshift, as in `seededRandom`). */
function streamSeed(seed: number, scenario: number, week: number): number {
  let mixed = seed >>> 0;
  for (const part of [scenario, week]) {
    mixed = Math.imul(mixed ^ (part + 0x9e3779b9), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    mixed ^= mixed >>> 16;
  }
  return mixed >>> 0;
}
