/** Items for one knapsack: the first `count` entries of each list. Weights are whole numbers. */
export interface Items {
  readonly weight: Int32Array;
  readonly value: Float64Array;
  count: number;
}

/**
 * Packs one knapsack at least value (negative values are worth having) by dynamic programming over items and capacity
 * (Bellman 1957, from memory), and tells what deciding one item against the packing costs.
 */
export class Knapsack {
  /** by item of the last packing: 1 where it is in */
  readonly taken: Uint8Array;
  /** by item: how much the least value rises if the item is decided the other way; Infinity where it cannot be */
  readonly rise: Float64Array;
  private readonly items: Items;
  private readonly width: number;
  /** least value of the first `item` items by capacity: [item * width + capacity] */
  private readonly first: Float64Array;
  private later: Float64Array;
  private spare: Float64Array;

  constructor(mostItems: number, mostCapacity: number, items: Items) {
    this.items = items;
    this.width = mostCapacity + 1;
    this.taken = new Uint8Array(mostItems);
    this.rise = new Float64Array(mostItems);
    this.first = new Float64Array((mostItems + 1) * this.width);
    this.later = new Float64Array(this.width);
    this.spare = new Float64Array(this.width);
  }

  /** Least value of a packing. Example: capacity 5, weights 3 and 4, values -2 and -3: -3, the second item alone. */
  pack(capacity: number): number {
    const { items, width, first } = this;
    for (let item = 0; item < items.count; item++) {
      const row = first.subarray(item * width, item * width + capacity + 1);
      const next = first.subarray((item + 1) * width, (item + 1) * width + capacity + 1);
      addItem(row, next, items.weight[item]!, items.value[item]!, capacity);
    }
    this.traceBack(capacity);
    return first[items.count * width + capacity]!;
  }

  private traceBack(capacity: number): void {
    const { items, width, first, taken } = this;
    let left = capacity;
    for (let item = items.count - 1; item >= 0; item--) {
      taken[item] = first[(item + 1) * width + left] === first[item * width + left] ? 0 : 1;
      if (taken[item] === 1) left -= items.weight[item]!;
    }
  }

  /** Fills in `rise` after `pack` with the same capacity: the items before and after each one joined by capacity. */
  force(capacity: number): void {
    const { items, width, first, taken, rise } = this;
    const least = first[items.count * width + capacity]!;
    this.later.fill(0, 0, capacity + 1);
    for (let item = items.count - 1; item >= 0; item--) {
      const before = first.subarray(item * width, item * width + capacity + 1);
      const isTaken = taken[item] === 1;
      const room = isTaken ? capacity : capacity - items.weight[item]!;
      const other = joined(before, this.later, room) + (isTaken ? 0 : items.value[item]!);
      rise[item] = other - least;
      addItem(this.later, this.spare, items.weight[item]!, items.value[item]!, capacity);
      [this.later, this.spare] = [this.spare, this.later];
    }
  }
}

/** Least values with one item more: `next` from `row`. */
function addItem(
  row: Float64Array,
  next: Float64Array,
  weight: number,
  value: number,
  capacity: number,
): void {
  const from = value < 0 ? Math.min(weight, capacity + 1) : capacity + 1;
  for (let at = 0; at < from; at++) next[at] = row[at]!;
  for (let at = from; at <= capacity; at++) {
    const withItem = row[at - weight]! + value;
    next[at] = withItem < row[at]! ? withItem : row[at]!;
  }
}

/** Least value of two packings that share a capacity; Infinity where it is below 0. */
function joined(one: Float64Array, two: Float64Array, capacity: number): number {
  let least = Infinity;
  for (let at = 0; at <= capacity; at++) {
    const value = one[at]! + two[capacity - at]!;
    if (value < least) least = value;
  }
  return least;
}
