import { MIN_PER_H } from "../../units/conversions.ts";
import type { BoundModel } from "./bound-model.ts";
import { COUNT_NAMES } from "./column-pool.ts";
import { lateCostPerCopyMin } from "./line-slots.ts";
import type { Entry } from "../engines/sparse-columns.ts";

/** Most slots that an option can have: column numbers are entry x this + slot. */
export const MOST_SLOTS = 16;

/** Cost of the column of one pool entry in one of its option's slots; Infinity where the builds cannot complete in it. */
export function columnCost(model: BoundModel, entry: number, slot: number): number {
  const { problem, pool, slots } = model;
  const option = problem.options[pool.option[entry]!]!;
  const { earliestMin, limitMin } = slots[option.index]![slot]!;
  const unloadMin = Math.max(earliestMin, pool.earliestMin[entry]!);
  if (!Number.isFinite(pool.earliestMin[entry]) || pool.earliestMin[entry]! > limitMin) return Infinity;
  const line = problem.lines[option.lineIndex]!;
  const lateMin = Math.max(0, unloadMin - line.dueMin);
  return pool.cost[entry]! + pool.copies[entry]! * lateMin * lateCostPerCopyMin(line);
}

/** Rows that the column takes part in. */
export function columnEntries(model: BoundModel, entry: number, slot: number): Entry[] {
  const { problem, pool, slots, demand, setUps } = model;
  const option = problem.options[pool.option[entry]!]!;
  const frame = model.frames[option.classIndex]!;
  const { bucket } = slots[option.index]![slot]!;
  const copies = pool.copies[entry]!;
  const share = copies / problem.lines[option.lineIndex]!.quantity;
  const entries: Entry[] = [{ row: demand[option.lineIndex]!, value: copies }];
  if (setUps.engineering[option.index]! >= 0)
    entries.push({ row: setUps.engineering[option.index]!, value: share });
  const isLimited = bucket < frame.points.length;
  if (isLimited && setUps.link[option.index]! >= 0)
    entries.push({ row: setUps.link[option.index]!, value: share });
  if (isLimited && setUps.stateHours[option.index]! >= 0) {
    const value = pool.occupiedH[entry]! / setUps.machineH[option.index]!;
    entries.push({ row: setUps.stateHours[option.index]!, value });
  }
  const ownEntries = pool.pattern[entry]! < 0 ? copyEntries : buildEntries;
  return [...entries, ...ownEntries(model, entry, bucket)];
}

function buildEntries(model: BoundModel, entry: number, bucket: number): Entry[] {
  const { problem, pool } = model;
  const option = problem.options[pool.option[entry]!]!;
  const frame = model.frames[option.classIndex]!;
  const entries: Entry[] = [];
  model.wholeBuilds[option.lineIndex]!.forEach(({ row }, at) => {
    entries.push({ row, value: pool[COUNT_NAMES[at]!][entry]! });
  });
  if (bucket >= frame.points.length) return entries;
  entries.push({ row: model.staffed[option.classIndex]! + bucket, value: pool.attendedH[entry]! });
  entries.push({ row: model.operators[frame.calendarIndex]! + bucket, value: frame.prepMin / MIN_PER_H });
  frame.patterns[pool.pattern[entry]!]!.counts.forEach((count, type) => {
    if (count > 0) entries.push({ row: model.gaps[option.classIndex]![type]! + bucket, value: count });
  });
  return entries;
}

function copyEntries(model: BoundModel, entry: number, bucket: number): Entry[] {
  const { pool, keyRows, keys } = model;
  const option = model.problem.options[pool.option[entry]!]!;
  const keyIndex = keyRows.key[option.index]!;
  const key = keys[keyIndex]!;
  const position = keyRows.position[option.index]!;
  const at = key.positionOf[bucket]!;
  const entries: Entry[] = [{ row: keyRows.copies[option.index]!, value: 1 }];
  keyRows.shares[keyIndex]!.forEach((first, limit) => {
    entries.push({ row: first + at, value: key.shares[limit]![position]! });
  });
  if (bucket >= model.frames[key.classIndex]!.points.length) return entries;
  const hoursRow = keyRows.hours[keyIndex]!;
  const row = hoursRow < 0 ? model.staffed[key.classIndex]! + key.buckets[at]! : hoursRow + at;
  entries.push({ row, value: pool.attendedH[entry]! });
  return entries;
}
