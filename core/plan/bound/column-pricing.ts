import { MIN_PER_H } from "../../units/conversions.ts";
import type { BoundModel } from "./bound-model.ts";
import { COUNT_NAMES } from "./column-pool.ts";
import { columnCost, MOST_SLOTS } from "./pool-columns.ts";

/** A column of the pool that would lower the cost: entry x MOST_SLOTS + slot, and its reduced cost. */
interface PricedColumn {
  readonly column: number;
  readonly reducedCost: number;
}

/** All columns of the pool at one set of row prices. */
interface Pricing {
  /** by line, those with negative reduced cost, most negative first, at most as many as asked */
  readonly best: readonly (readonly PricedColumn[])[];
  /** by line, the least reduced cost of a column for each copy it makes; Infinity where it has none */
  readonly leastPerCopy: Float64Array;
}

/** Prices every column of the pool. Reduced costs above `-tolerance` do not count as lower. */
export function pricePool(
  model: BoundModel,
  rowPrices: Float64Array,
  perLine: number,
  tolerance: number,
): Pricing {
  const { problem, pool, slots } = model;
  const best = problem.lines.map((): PricedColumn[] => []);
  const leastPerCopy = new Float64Array(problem.lines.length).fill(Number.POSITIVE_INFINITY);
  const bucketPrices = new BucketPrices(model, rowPrices);
  for (let entry = 0; entry < pool.option.length; entry++) {
    const { lineIndex, index } = problem.options[pool.option[entry]!]!;
    const slotCount = slots[index]!.length;
    for (let slot = 0; slot < slotCount; slot++) {
      const cost = columnCost(model, entry, slot);
      if (cost === Infinity) continue;
      const reducedCost = cost - bucketPrices.worth(entry, slot);
      leastPerCopy[lineIndex] = Math.min(leastPerCopy[lineIndex]!, reducedCost / pool.copies[entry]!);
      if (reducedCost < -tolerance) {
        keepBest(best[lineIndex]!, { column: entry * MOST_SLOTS + slot, reducedCost }, perLine);
      }
    }
  }
  return { best, leastPerCopy };
}

function keepBest(best: PricedColumn[], priced: PricedColumn, most: number): void {
  if (best.length === most && best[most - 1]!.reducedCost <= priced.reducedCost) return;
  let at = best.length;
  while (at > 0 && best[at - 1]!.reducedCost > priced.reducedCost) at--;
  best.splice(at, 0, priced);
  if (best.length > most) best.pop();
}

/** What a column's entries earn: the same sums as `columnEntries` x prices, with what columns share added up once. */
class BucketPrices {
  private readonly model: BoundModel;
  private readonly prices: Float64Array;
  /** [class][pattern x points + bucket]: gaps entered and operators */
  private readonly patternWorth: readonly Float64Array[];

  constructor(model: BoundModel, prices: Float64Array) {
    this.model = model;
    this.prices = prices;
    this.patternWorth = model.frames.map((frame) => {
      const points = frame.points.length;
      const worth = new Float64Array(frame.patterns.length * points);
      frame.patterns.forEach((pattern, index) => {
        for (let bucket = 0; bucket < points; bucket++) {
          let sum = this.at(model.operators[frame.calendarIndex]! + bucket) * (frame.prepMin / MIN_PER_H);
          pattern.counts.forEach((count, type) => {
            if (count > 0) sum += count * this.at(model.gaps[frame.classIndex]![type]! + bucket);
          });
          worth[index * points + bucket] = sum;
        }
      });
      return worth;
    });
  }

  private at(row: number): number {
    return row < 0 ? 0 : this.prices[row]!;
  }

  worth(entry: number, slot: number): number {
    const { problem, pool, slots, frames, setUps, demand } = this.model;
    const option = problem.options[pool.option[entry]!]!;
    const { index, lineIndex, classIndex } = option;
    const copies = pool.copies[entry]!;
    const share = copies / problem.lines[lineIndex]!.quantity;
    const frame = frames[classIndex]!;
    const { bucket } = slots[index]![slot]!;
    const isLimited = bucket < frame.points.length;
    let sum = copies * this.at(demand[lineIndex]!) + share * this.at(setUps.engineering[index]!);
    if (isLimited) {
      sum += share * this.at(setUps.link[index]!);
      const stateRow = setUps.stateHours[index]!;
      if (stateRow >= 0) sum += (pool.occupiedH[entry]! / setUps.machineH[index]!) * this.at(stateRow);
    }
    return sum + (pool.pattern[entry]! < 0 ? this.copyWorth(entry, bucket) : this.buildWorth(entry, bucket));
  }

  private buildWorth(entry: number, bucket: number): number {
    const { problem, pool, frames, wholeBuilds, staffed } = this.model;
    const { lineIndex, classIndex } = problem.options[pool.option[entry]!]!;
    const points = frames[classIndex]!.points.length;
    let whole = 0;
    wholeBuilds[lineIndex]!.forEach(({ row }, at) => {
      whole += pool[COUNT_NAMES[at]!][entry]! * this.at(row);
    });
    if (bucket >= points) return whole;
    const pattern = this.patternWorth[classIndex]![pool.pattern[entry]! * points + bucket]!;
    return whole + pattern + pool.attendedH[entry]! * this.at(staffed[classIndex]! + bucket);
  }

  private copyWorth(entry: number, bucket: number): number {
    const { pool, keyRows, keys, frames, staffed } = this.model;
    const option = pool.option[entry]!;
    const keyIndex = keyRows.key[option]!;
    const key = keys[keyIndex]!;
    const position = keyRows.position[option]!;
    const at = key.positionOf[bucket]!;
    let sum = this.at(keyRows.copies[option]!);
    keyRows.shares[keyIndex]!.forEach((first, limit) => {
      sum += key.shares[limit]![position]! * this.at(first + at);
    });
    if (bucket >= frames[key.classIndex]!.points.length) return sum;
    const hoursRow = keyRows.hours[keyIndex]!;
    return (
      sum +
      pool.attendedH[entry]! *
        this.at(hoursRow < 0 ? staffed[key.classIndex]! + key.buckets[at]! : hoursRow + at)
    );
  }
}
