import { lineItemPenalty } from "./line-money.ts";
import { MachineWindows } from "./machine-windows.ts";
import { MixedBuilds, type MixedItem } from "./mixed-builds.ts";
import { changeFree } from "./operator-use.ts";
import type { SearchData } from "./search-data.ts";

/** Most order lines on one platform. */
export const MOST_ITEMS = 8;

/**
 * A plan under construction: builds in a pool of numbered places, each machine's builds in order with their times, each
 * line's items as a linked list, and the money of all of it. Only `Trial` changes it. Minutes from the start of the plan.
 */
export class SearchState {
  readonly data: SearchData;
  readonly windows: MachineWindows;
  readonly mixed: MixedBuilds;
  /** most builds there can be */
  readonly capacity: number;

  // By build.
  readonly machineOf: Int32Array;
  readonly positionOf: Int32Array;
  readonly stateOf: Int32Array;
  readonly runOf: Float64Array;
  readonly costOf: Float64Array;
  readonly releaseOf: Int32Array;
  readonly setUpStart: Int32Array;
  readonly printStart: Int32Array;
  readonly endAt: Int32Array;
  /** changeover, less what staying where an earlier plan had it saves */
  readonly changeMoney: Float64Array;
  /** kind of an earlier plan's build, whose place it keeps where it can (see `EarlierPlaces`) */
  readonly kindOf: Int32Array;
  readonly windowOf: Int32Array;
  /** items of build `b`: slots from b * MOST_ITEMS */
  readonly itemCount: Int32Array;
  readonly itemOption: Int32Array;
  readonly itemCopies: Int32Array;
  private readonly nextItem: Int32Array;
  private readonly previousItem: Int32Array;

  // By line.
  private readonly firstItem: Int32Array;
  readonly boughtOut: Int32Array;
  readonly unplaced: Int32Array;
  readonly lineMoney: Float64Array;
  /** when its last copy is there; -1 before any is */
  readonly lineEnd: Int32Array;

  // By machine.
  readonly sequence: Int32Array[];
  readonly length: Int32Array;

  readonly engineeringUse: Int32Array;
  /** builds in the plan, in any order */
  readonly active: Int32Array;
  activeCount = 0;
  private readonly activeIndex: Int32Array;
  private readonly freeBuilds: Int32Array;
  private freeCount: number;
  /** money of the plan, penalties for copies without a place and for broken promises included */
  money = 0;
  /** what one copy without a place costs in the search: more than any plan could save by it */
  readonly penalty: number;

  constructor(data: SearchData, penalty: number) {
    const capacity = buildsNeeded(data);
    this.data = data;
    this.penalty = penalty;
    this.capacity = capacity;
    this.windows = new MachineWindows(data.problem);
    this.mixed = new MixedBuilds(data.problem);
    this.machineOf = new Int32Array(capacity);
    this.positionOf = new Int32Array(capacity);
    this.stateOf = new Int32Array(capacity);
    this.runOf = new Float64Array(capacity);
    this.costOf = new Float64Array(capacity);
    this.releaseOf = new Int32Array(capacity);
    this.setUpStart = new Int32Array(capacity);
    this.printStart = new Int32Array(capacity);
    this.endAt = new Int32Array(capacity);
    this.changeMoney = new Float64Array(capacity);
    this.kindOf = new Int32Array(capacity).fill(-1);
    this.windowOf = new Int32Array(capacity);
    this.itemCount = new Int32Array(capacity);
    this.itemOption = new Int32Array(capacity * MOST_ITEMS);
    this.itemCopies = new Int32Array(capacity * MOST_ITEMS);
    this.nextItem = new Int32Array(capacity * MOST_ITEMS).fill(-1);
    this.previousItem = new Int32Array(capacity * MOST_ITEMS).fill(-1);
    this.firstItem = new Int32Array(data.lineCount).fill(-1);
    this.boughtOut = new Int32Array(data.lineCount);
    this.unplaced = Int32Array.from(data.quantity);
    this.lineMoney = new Float64Array(data.lineCount);
    this.lineEnd = new Int32Array(data.lineCount).fill(-1);
    this.sequence = Array.from({ length: data.machineCount }, () => new Int32Array(16));
    this.length = new Int32Array(data.machineCount);
    this.engineeringUse = new Int32Array(data.engineeringCost.length);
    this.active = new Int32Array(capacity);
    this.activeIndex = new Int32Array(capacity);
    this.freeBuilds = Int32Array.from({ length: capacity }, (_, index) => capacity - 1 - index);
    this.freeCount = capacity;
    for (let line = 0; line < data.lineCount; line++) {
      this.lineMoney[line] = this.unplaced[line]! * penalty;
      this.money += this.lineMoney[line]!;
    }
    this.money += data.earlier.costOfAll;
  }

  /** A number for a new build, or -1 when the pool is empty. */
  takeBuild(): number {
    return this.freeCount === 0 ? -1 : this.freeBuilds[--this.freeCount]!;
  }

  giveBack(build: number): void {
    this.freeBuilds[this.freeCount++] = build;
  }

  activate(build: number): void {
    this.activeIndex[build] = this.activeCount;
    this.active[this.activeCount++] = build;
  }

  deactivate(build: number): void {
    const last = this.active[--this.activeCount]!;
    const index = this.activeIndex[build]!;
    this.active[index] = last;
    this.activeIndex[last] = index;
  }

  /** First item slot of a line, or -1; `itemAfter` gives the next. The build of a slot is its number / MOST_ITEMS. */
  firstItemOf(line: number): number {
    return this.firstItem[line]!;
  }

  itemAfter(slot: number): number {
    return this.nextItem[slot]!;
  }

  /** Enters the items of a build in the lists of their lines. */
  linkItems(build: number): void {
    const from = build * MOST_ITEMS;
    for (let slot = from; slot < from + this.itemCount[build]!; slot++) {
      const line = this.data.optionLine[this.itemOption[slot]!]!;
      const first = this.firstItem[line]!;
      this.nextItem[slot] = first;
      this.previousItem[slot] = -1;
      if (first >= 0) this.previousItem[first] = slot;
      this.firstItem[line] = slot;
    }
  }

  unlinkItems(build: number): void {
    const from = build * MOST_ITEMS;
    for (let slot = from; slot < from + this.itemCount[build]!; slot++) {
      const line = this.data.optionLine[this.itemOption[slot]!]!;
      const next = this.nextItem[slot]!;
      const previous = this.previousItem[slot]!;
      if (next >= 0) this.previousItem[next] = previous;
      if (previous >= 0) this.nextItem[previous] = next;
      else this.firstItem[line] = next;
    }
  }

  /** Fills in one build of one option. */
  describeSingle(build: number, option: number, copies: number): void {
    this.itemCount[build] = 1;
    this.itemOption[build * MOST_ITEMS] = option;
    this.itemCopies[build * MOST_ITEMS] = copies;
    this.stateOf[build] = this.data.optionState[option]!;
    this.runOf[build] = this.data.runOf(option, copies);
    this.costOf[build] = this.data.costOf(option, copies);
    this.kindOf[build] = this.data.earlier.kindOfSingle(option, copies);
    this.releaseOf[build] = this.data.releaseMin[this.data.optionLine[option]!]!;
  }

  /** Fills in one build of one or several items, which must be able to share a platform. */
  describe(build: number, items: readonly MixedItem[]): void {
    const first = items[0];
    if (!first) throw new RangeError("a build with no items");
    this.describeSingle(build, first.optionIndex, first.copies);
    if (items.length === 1) return;
    const mixed = this.mixed.of(items);
    if (!mixed) throw new RangeError("these items cannot share a platform");
    this.itemCount[build] = items.length;
    this.runOf[build] = mixed.runMin;
    this.costOf[build] = mixed.cost;
    this.kindOf[build] = this.data.earlier.kindOf(items);
    items.forEach(({ optionIndex, copies }, index) => {
      this.itemOption[build * MOST_ITEMS + index] = optionIndex;
      this.itemCopies[build * MOST_ITEMS + index] = copies;
      const line = this.data.optionLine[optionIndex]!;
      this.releaseOf[build] = Math.max(this.releaseOf[build]!, this.data.releaseMin[line]!);
    });
  }

  itemsOf(build: number): MixedItem[] {
    return Array.from({ length: this.itemCount[build]! }, (_, item) => ({
      optionIndex: this.itemOption[build * MOST_ITEMS + item]!,
      copies: this.itemCopies[build * MOST_ITEMS + item]!,
    }));
  }

  private append(machine: number, build: number): void {
    const position = this.length[machine]!;
    const sequence = this.sequenceFor(machine, position + 1);
    const loaded = position > 0 ? this.stateOf[sequence[position - 1]!]! : this.data.machineStart[machine]!;
    sequence[position] = build;
    this.length[machine] = position + 1;
    this.machineOf[build] = machine;
    this.positionOf[build] = position;
    const costs = this.data.changeoverCost[this.data.machineClass[machine]!]!;
    const saved = this.data.earlier.saved(this.kindOf[build]!, machine, this.setUpStart[build]!);
    this.changeMoney[build] = costs[loaded * this.data.stateCount + this.stateOf[build]!]! - saved;
  }

  /** Adds `change` to the free operators during set-up and unload of a build with these times. */
  useOperators(
    machine: number,
    setUpStartMin: number,
    printStartMin: number,
    endMin: number,
    change: number,
  ): void {
    const free = this.windows.free[machine]!;
    if (free === null) return;
    changeFree(free, setUpStartMin, printStartMin, change);
    changeFree(free, endMin - this.windows.unloadMin[machine]!, endMin, change);
  }

  /** Money of an item beyond the lateness of its whole line: its own lateness, and a broken promise. */
  itemPenalty(line: number, copies: number, endMin: number): number {
    return lineItemPenalty(this.data, this.penalty, line, copies, endMin);
  }

  /** End of the last unload of all. */
  makespanMin(): number {
    let last = 0;
    for (let at = 0; at < this.activeCount; at++) last = Math.max(last, this.endAt[this.active[at]!]!);
    return last;
  }

  /** Takes all builds out; bought and unplaced copies stay as they are. */
  clear(): void {
    for (let machine = 0; machine < this.data.machineCount; machine++) {
      for (let position = 0; position < this.length[machine]!; position++) {
        const build = this.sequence[machine]![position]!;
        this.takeOut(machine, build);
        this.giveBack(build);
      }
      this.length[machine] = 0;
    }
  }

  /** Takes a build out of everything but its machine's sequence. */
  takeOut(machine: number, build: number): void {
    this.unlinkItems(build);
    this.deactivate(build);
    this.useOperators(machine, this.setUpStart[build]!, this.printStart[build]!, this.endAt[build]!, 1);
  }

  /** Puts a build with its times at the end of a machine's sequence, and into everything else. */
  putIn(machine: number, build: number): void {
    this.append(machine, build);
    this.linkItems(build);
    this.activate(build);
    this.useOperators(machine, this.setUpStart[build]!, this.printStart[build]!, this.endAt[build]!, -1);
  }

  /** Room for so many builds in a machine's sequence. */
  sequenceFor(machine: number, builds: number): Int32Array {
    const sequence = this.sequence[machine]!;
    if (builds <= sequence.length) return sequence;
    const longer = new Int32Array(Math.max(builds, sequence.length * 2));
    longer.set(sequence);
    this.sequence[machine] = longer;
    return longer;
  }
}

const MOST_BUILDS = 200_000;

/** Twice the builds that the smallest options need, and some. */
function buildsNeeded(data: SearchData): number {
  let builds = 256;
  for (let line = 0; line < data.lineCount; line++) {
    let fewest = Infinity;
    for (const option of data.lineOptions[line]!) fewest = Math.min(fewest, data.optionMax[option]!);
    if (fewest < Infinity) builds += 2 + 2 * Math.ceil(data.quantity[line]! / Math.max(1, fewest));
  }
  return Math.min(builds, MOST_BUILDS);
}
