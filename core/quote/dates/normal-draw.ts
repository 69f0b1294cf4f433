import { normalQuantile } from "../normal-law.ts";

const CELLS = 4096;
/** The middle table spans shares from here to one half, the outer one the 64th part of that below. */
const OUTER_SHARE = 1 / 64;
const FARTHEST_SHARE = OUTER_SHARE / 64;

/** Quantiles of the lower half of the normal law at equal steps of the share: fast to look up. */
export interface NormalTable {
  /**
   * The z below which a share of a standard normal law lies, within 1e-5; share strictly between 0 and 1. Shares below
   * 1/4096 and above the rest are worked out. Example: share 0.9 gives 1.28155.
   */
  at(share: number): number;
}

let made: NormalTable | null = null;

/** The table, made when it is first asked for: 8194 quantiles. */
export function normalTable(): NormalTable {
  made ??= new HalfTable();
  return made;
}

class HalfTable implements NormalTable {
  private readonly middle = quantiles(OUTER_SHARE, 0.5);
  private readonly outer = quantiles(FARTHEST_SHARE, OUTER_SHARE);

  at(share: number): number {
    const tail = share < 0.5 ? share : 1 - share;
    const z = this.ofTail(tail);
    return share < 0.5 ? z : -z;
  }

  private ofTail(tail: number): number {
    if (tail >= OUTER_SHARE) return between(this.middle, (tail - OUTER_SHARE) / (0.5 - OUTER_SHARE));
    if (tail < FARTHEST_SHARE) return normalQuantile(tail);
    return between(this.outer, (tail - FARTHEST_SHARE) / (OUTER_SHARE - FARTHEST_SHARE));
  }
}

function quantiles(fromShare: number, toShare: number): Float64Array {
  const step = (toShare - fromShare) / CELLS;
  return Float64Array.from({ length: CELLS + 1 }, (_, index) => normalQuantile(fromShare + index * step));
}

function between(table: Float64Array, place: number): number {
  const cell = Math.min(CELLS - 1, Math.floor(place * CELLS));
  const low = table[cell]!;
  return low + (place * CELLS - cell) * (table[cell + 1]! - low);
}
