import type { SearchData } from "./search-data.ts";

/** A broken promise costs as much as the copy having no place, and up to half as much again the later it is. */
const GRADIENT_MIN = 1440;

/**
 * Money of one item in the search beyond the lateness of its whole line: its copies' own lateness where they count by
 * themselves, and for a promised line a penalty for each copy that is late. 0 for ordinary lines.
 */
export function lineItemPenalty(
  data: SearchData,
  penalty: number,
  line: number,
  copies: number,
  endMin: number,
): number {
  const lateMin = endMin - data.dueMin[line]!;
  if (lateMin <= 0) return 0;
  let money = copies * lateMin * data.pieceRate[line]!;
  if (data.hard[line]!) money += copies * penalty * (1 + (0.5 * lateMin) / (lateMin + GRADIENT_MIN));
  return money;
}

/** Money of copies bought out, without the lateness of their whole line. */
export function boughtMoney(data: SearchData, penalty: number, line: number, copies: number): number {
  if (copies === 0) return 0;
  const arriveMin = data.buyArriveMin[line]!;
  return copies * data.buyPrice[line]! + lineItemPenalty(data, penalty, line, copies, arriveMin);
}
