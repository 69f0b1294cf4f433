import { bucketOf, type ClassFrame } from "./class-frame.ts";
import type { PlanLine } from "../plan-problem.ts";

/** Builds of one line that complete in one stretch of time, as the bound sees them. */
export interface LineSlot {
  /** bucket whose capacity they are charged to; the count of points: to none */
  readonly bucket: number;
  /** none of them is unloaded before, min */
  readonly earliestMin: number;
  /** all of them are unloaded by then, min */
  readonly limitMin: number;
}

/** Buckets after the one on time, in widening steps, so that columns stay few. */
const LATE_STEPS = [1, 2, 3, 5, 8, 13, 21, 34, 55];

/**
 * The stretches of time that a line's builds are sorted into on one class. One stands for everything on time: capacity is
 * cumulative, so the latest bucket on time dominates all earlier ones. Late ones are charged to the end of their stretch and
 * pay for its start. The last has no limit, so that no plan is left out. A hard promise has the first only.
 */
export function lineSlots(line: PlanLine, frame: ClassFrame): LineSlot[] {
  const { points, unloadAfterMin } = frame;
  const free = points.length;
  const onTime = lastOnTime(line, frame);
  const endMin = (bucket: number): number => points[bucket] ?? Number.POSITIVE_INFINITY;
  const slots: LineSlot[] = [];
  if (onTime >= 0) {
    const limitMin = line.allowLate ? endMin(onTime) : Math.min(endMin(onTime), line.dueMin);
    slots.push({ bucket: onTime, earliestMin: Number.NEGATIVE_INFINITY, limitMin });
  }
  if (!line.allowLate || onTime === free) return slots;
  let before = onTime;
  for (const bucket of lateBuckets(onTime, free)) {
    slots.push({ bucket, earliestMin: unloadAfterMin[before + 1]!, limitMin: endMin(bucket) });
    before = bucket;
  }
  return slots;
}

/** The last bucket in which something can be unloaded by the due date; -1 where none. */
function lastOnTime(line: PlanLine, frame: ClassFrame): number {
  const bucket = bucketOf(frame.points, line.dueMin);
  return frame.unloadAfterMin[bucket]! <= line.dueMin ? bucket : bucket - 1;
}

function lateBuckets(onTime: number, free: number): number[] {
  const steps = LATE_STEPS.map((step) => onTime + step).filter((bucket) => bucket < free);
  return [...new Set([...steps, ...(free - 1 > onTime ? [free - 1] : []), free])];
}

/** Cost of one copy being late one minute: its part of what the whole line costs. */
export function lateCostPerCopyMin(line: PlanLine): number {
  return line.lateCostPerMin / Math.max(1, line.perPiece ? line.orderedCopies : line.quantity);
}
