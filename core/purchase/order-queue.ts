import type { WeekSlots } from "./week-slots.ts";
import type { DemandLine, WeekDemand } from "./scenarios.ts";

/** Order lines of one part that fall due in one slot of one week, pooled. */
interface Pool {
  readonly dueWeek: number;
  /** slot in its own week */
  readonly slot: number;
  readonly isHard: boolean;
  /** copies still wanted, and the order lines they stand for, in parts of lines */
  copies: number;
  lines: number;
  /** cost of one copy being late by one day */
  readonly lateCostPerDay: number;
  /** mean price of the copies that have one, and the share of copies that do */
  readonly price: number;
  readonly pricedShare: number;
}

/** What one part asks of a week. Copies. */
export interface PartWeek {
  /** due in each slot and may be late; what is already late counts in the first slot */
  readonly soft: Float64Array;
  /** due in each slot and lost when not made in time */
  readonly hard: Float64Array;
  /** of `soft`, already late */
  readonly overdue: number;
  /** may still be open when the week ends */
  readonly mayWait: number;
  readonly lateCostPerDay: number;
  /** mean price of a copy with a price; null: none has one */
  readonly price: number | null;
}

/** What became of a part's copies in a week, by the weekly program. */
export interface PartOutcome {
  /** hard copies not made, by slot */
  readonly hardLost: Float64Array;
  /** copies given up at the end of the week */
  readonly givenUp: number;
  /** copies open at the end of the week */
  readonly open: number;
  /** copies that became late, by the slot they were due in */
  readonly late: Float64Array;
}

/** Money and orders of a part's week. */
export interface Settled {
  readonly revenue: number;
  readonly lostRevenue: number;
  readonly lostOrders: number;
  readonly lateOrders: number;
  readonly lostUnpricedCopies: number;
}

/**
 * Open orders of one part over the weeks. Lines with one due slot are pooled, older ones are served first, and copies late
 * by more weeks than the patience are lost.
 */
export class OrderQueue {
  private pools: Pool[] = [];
  private readonly slots: WeekSlots;
  private readonly patienceWeeks: number;

  constructor(slots: WeekSlots, patienceWeeks: number) {
    this.slots = slots;
    this.patienceWeeks = patienceWeeks;
  }

  /** Takes the lines of one part that fall due in a week and says what the week is asked for. */
  open(week: number, lines: readonly DemandLine[]): PartWeek {
    for (const [slot] of this.slots.lengthDays.entries()) {
      const due = lines.filter(({ dueDay }) => this.slots.ofDay[dueDay] === slot);
      this.add(
        week,
        slot,
        false,
        due.filter(({ allowLate }) => allowLate),
      );
      this.add(
        week,
        slot,
        true,
        due.filter(({ allowLate }) => !allowLate),
      );
    }
    const size = this.slots.lengthDays.length;
    const [soft, hard] = [new Float64Array(size), new Float64Array(size)];
    for (const pool of this.pools) {
      const into = pool.isHard ? hard : soft;
      into[pool.dueWeek === week ? pool.slot : 0]! += pool.copies;
    }
    const softPools = this.pools.filter(({ isHard }) => !isHard);
    return {
      soft,
      hard,
      overdue: copiesOf(softPools.filter(({ dueWeek }) => dueWeek < week)),
      mayWait: copiesOf(softPools.filter(({ dueWeek }) => dueWeek > week - this.patienceWeeks)),
      lateCostPerDay: meanOf(
        softPools,
        (pool) => pool.lateCostPerDay,
        (pool) => pool.copies,
      ),
      price: priceOf(this.pools),
    };
  }

  /** Serves, gives up and keeps copies as the weekly program decided. */
  settle(week: number, outcome: PartOutcome): Settled {
    const sums = { revenue: 0, lostRevenue: 0, lostOrders: 0, lateOrders: 0, lostUnpricedCopies: 0 };
    for (const pool of this.pools) sums.lateOrders += lateLines(pool, week, outcome.late);
    const isHard = (pool: Pool): boolean => pool.isHard;
    const hard = this.pools.filter(isHard);
    for (const pool of hard) lose(sums, pool, Math.min(pool.copies, outcome.hardLost[pool.slot]!));
    const soft = this.pools.filter((pool) => !pool.isHard);
    let given = outcome.givenUp;
    for (const pool of soft) given -= lose(sums, pool, Math.min(pool.copies, given));
    let waiting = outcome.open;
    const kept = new Map<Pool, number>();
    for (const pool of soft.toReversed()) {
      const copies = Math.min(pool.copies, waiting);
      waiting -= copies;
      kept.set(pool, copies);
    }
    for (const pool of this.pools) {
      const served = take(pool, pool.copies - (kept.get(pool) ?? 0));
      sums.revenue += served.copies * pool.pricedShare * pool.price;
    }
    this.pools = soft.filter(({ copies }) => copies > DUST_COPIES);
    return sums;
  }

  /** Copies that are open. */
  get copies(): number {
    return copiesOf(this.pools);
  }

  private add(dueWeek: number, slot: number, isHard: boolean, lines: readonly DemandLine[]): void {
    if (lines.length === 0) return;
    const copies = lines.reduce((sum, { quantity }) => sum + quantity, 0);
    const priced = lines.filter(({ pricePerPiece }) => pricePerPiece !== null);
    const pricedCopies = priced.reduce((sum, { quantity }) => sum + quantity, 0);
    const worth = priced.reduce(
      (sum, { quantity, pricePerPiece }) => sum + quantity * (pricePerPiece ?? 0),
      0,
    );
    this.pools.push({
      dueWeek,
      slot,
      isHard,
      copies,
      lines: lines.length,
      lateCostPerDay: lines.reduce((sum, line) => sum + line.lateCostPerDay, 0) / copies,
      price: pricedCopies > 0 ? worth / pricedCopies : 0,
      pricedShare: pricedCopies / copies,
    });
  }
}

/** Fewer copies than this are round-off. */
const DUST_COPIES = 1e-7;

type Sums = { -readonly [Name in keyof Settled]: number };

function take(pool: Pool, copies: number): { copies: number; lines: number } {
  const lines = pool.copies > 0 ? (pool.lines * copies) / pool.copies : 0;
  pool.copies -= copies;
  pool.lines -= lines;
  return { copies, lines };
}

/** Gives copies of a pool up; returns how many. */
function lose(sums: Sums, pool: Pool, copies: number): number {
  const lost = take(pool, copies);
  sums.lostOrders += lost.lines;
  sums.lostRevenue += lost.copies * pool.pricedShare * pool.price;
  sums.lostUnpricedCopies += lost.copies * (1 - pool.pricedShare);
  return lost.copies;
}

function lateLines(pool: Pool, week: number, late: Float64Array): number {
  if (pool.isHard || pool.dueWeek !== week || pool.copies === 0) return 0;
  return pool.lines * Math.min(1, late[pool.slot]! / pool.copies);
}

function copiesOf(pools: readonly Pool[]): number {
  return pools.reduce((sum, { copies }) => sum + copies, 0);
}

function priceOf(pools: readonly Pool[]): number | null {
  const priced = pools.filter(({ pricedShare }) => pricedShare > 0);
  if (copiesOf(priced) === 0) return null;
  return meanOf(
    priced,
    (pool) => pool.price,
    (pool) => pool.copies * pool.pricedShare,
  );
}

function meanOf(pools: readonly Pool[], of: (pool: Pool) => number, weight: (pool: Pool) => number): number {
  const total = pools.reduce((sum, pool) => sum + weight(pool), 0);
  return total > 0 ? pools.reduce((sum, pool) => sum + of(pool) * weight(pool), 0) / total : 0;
}

/** The lines of a week by part. */
export function linesByPart({ lines }: WeekDemand): Map<string, DemandLine[]> {
  const byPart = new Map<string, DemandLine[]>();
  for (const line of lines) byPart.set(line.partId, [...(byPart.get(line.partId) ?? []), line]);
  return byPart;
}
