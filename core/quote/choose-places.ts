import type { LinePlaces } from "./line-places.ts";

/** What one line put in wants. */
export interface Wish {
  /** epoch minute; null: as cheap as can be */
  readonly wantedMin: number | null;
  readonly allowLate: boolean;
  /** what a minute of lateness weighs, currency per min */
  readonly perMin: number;
}

/** The way chosen: its place in the list, and whether every line that must not be late is in time. */
export interface Choice {
  readonly at: number;
  readonly isHeld: boolean;
}

/**
 * The way of putting lines in that suits their dates: the least cost with lateness where all may be late; with lines that may
 * not, the cheapest that is in time with them, and if none is the earliest of all. Ways that leave copies without a place are
 * the last resort. Null: there is no way at all. Because the ways are the same for every date, the cost of the one chosen for a
 * line never falls when its date is earlier.
 * Example: 80 more and done on Thursday, 95 and done on Tuesday: wanted on Wednesday at 40 a day late, the second.
 */
export function choosePlaces(places: readonly LinePlaces[], wishes: readonly Wish[]): Choice | null {
  const whole = indices(places).filter((at) => places[at]!.finishMin.every((finish) => finish !== null));
  if (whole.length === 0) return places.length > 0 ? { at: 0, isHeld: false } : null;
  const held = whole.filter((at) => lateMin(places[at]!, wishes, isHard) === 0);
  if (held.length > 0) {
    return { at: least(held, (at) => [total(places[at]!, wishes), lastMin(places[at]!)]), isHeld: true };
  }
  const order = (at: number): number[] => [
    lateMin(places[at]!, wishes, isHard),
    total(places[at]!, wishes),
    lastMin(places[at]!),
  ];
  return { at: least(whole, order), isHeld: false };
}

function indices(list: readonly unknown[]): number[] {
  return list.map((_, at) => at);
}

function isHard({ allowLate }: Wish): boolean {
  return !allowLate;
}

/** Minutes that lines of a kind are late, in all. */
function lateMin(
  { finishMin }: LinePlaces,
  wishes: readonly Wish[],
  counts: (wish: Wish) => boolean,
): number {
  return wishes.reduce((sum, wish, at) => {
    const finish = finishMin[at];
    if (wish.wantedMin === null || typeof finish !== "number" || !counts(wish)) return sum;
    return sum + Math.max(0, finish - wish.wantedMin);
  }, 0);
}

function total(places: LinePlaces, wishes: readonly Wish[]): number {
  return wishes.reduce((money, wish, at) => {
    const finish = places.finishMin[at];
    if (wish.wantedMin === null || typeof finish !== "number") return money;
    return money + wish.perMin * Math.max(0, finish - wish.wantedMin);
  }, places.extraCost);
}

function lastMin({ finishMin }: LinePlaces): number {
  return finishMin.reduce<number>((sum, finish) => sum + (finish ?? 0), 0);
}

/** The first with the least key; keys are compared number by number, and numbers that differ by dust are equal. */
function least(list: readonly number[], keyOf: (at: number) => readonly number[]): number {
  return list.reduce((best, at) => (isLess(keyOf(at), keyOf(best)) ? at : best));
}

const DUST = 1e-6;

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const first = a.findIndex((value, at) => Math.abs(value - (b[at] ?? 0)) > DUST);
  return first >= 0 && (a[first] ?? 0) < (b[first] ?? 0);
}
