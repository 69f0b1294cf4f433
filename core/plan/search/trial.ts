import { boughtMoney } from "./line-money.ts";
import type { MixedItem } from "./mixed-builds.ts";
import { Retiming } from "./retiming.ts";
import { MOST_ITEMS, type SearchState } from "./search-state.ts";
import type { Splices } from "./splices.ts";

/** Is told before a machine's sequence or a line's counts change, and keeps dropped builds until it is done with them. */
export interface ChangeKeeper {
  beforeMachine(machine: number): void;
  beforeLine(line: number): void;
  keepBuild(build: number): void;
}

/**
 * One change of a plan: builds dropped, added and moved, copies bought out or left without a place. `evaluate` gives the
 * money it would change, exactly, from the touched machines' tails alone; then `commit` makes it or `discard` forgets it.
 */
export class Trial {
  readonly state: SearchState;
  readonly retiming: Retiming;
  readonly splices: Splices;
  keeper: ChangeKeeper | null = null;

  private money = 0;
  private delta = 0;
  private stamp = 1;
  private readonly lineStamp: Int32Array;
  private readonly newLineMoney: Float64Array;
  private readonly newLineEnd: Int32Array;
  private readonly lines: Int32Array;
  private lineCount = 0;
  private readonly dropStamp: Int32Array;
  private readonly adds = new Int32Array(MOST_CHANGED);
  private addCount = 0;
  private readonly drops = new Int32Array(MOST_CHANGED);
  private dropCount = 0;
  // Lines whose counts were set, with the counts before.
  private readonly countLine = new Int32Array(MOST_CHANGED);
  private readonly oldBought = new Int32Array(MOST_CHANGED);
  private readonly oldUnplaced = new Int32Array(MOST_CHANGED);
  private countCount = 0;

  constructor(state: SearchState) {
    this.state = state;
    this.retiming = new Retiming(state);
    this.splices = this.retiming.splices;
    this.lineStamp = new Int32Array(state.data.lineCount);
    this.newLineMoney = new Float64Array(state.data.lineCount);
    this.newLineEnd = new Int32Array(state.data.lineCount);
    this.lines = new Int32Array(state.data.lineCount);
    this.dropStamp = new Int32Array(state.capacity);
  }

  /** A new build of one option for a splice, or -1 when there are too many builds. */
  addSingle(option: number, copies: number): number {
    const build = this.takeBuild();
    if (build < 0) return -1;
    this.state.describeSingle(build, option, copies);
    this.enter(build);
    return build;
  }

  /** A new build of several items for a splice, or -1 where they cannot share a platform. */
  addMixed(items: readonly MixedItem[]): number {
    const first = items[0];
    if (!first || items.length > MOST_ITEMS) return -1;
    if (items.length === 1) return this.addSingle(first.optionIndex, first.copies);
    if (this.state.mixed.of(items) === null) return -1;
    const build = this.takeBuild();
    if (build < 0) return -1;
    this.state.describe(build, items);
    this.enter(build);
    return build;
  }

  /** A new build of these items that does not wait for the place an earlier plan had for it, or -1. */
  addLoose(items: readonly MixedItem[]): number {
    const build = this.addMixed(items);
    if (build >= 0) this.state.kindOf[build] = this.state.data.earlier.loose(this.state.kindOf[build]!);
    return build;
  }

  /** Takes a build out; its place in a sequence must be covered by a splice that leaves it out. */
  drop(build: number): void {
    const { state } = this;
    this.drops[this.dropCount++] = build;
    this.dropStamp[build] = this.stamp;
    this.money -= state.costOf[build]! + state.changeMoney[build]!;
    this.useEngineering(build, -1);
    this.touchLines(build);
  }

  /** Sets how many copies of a line are bought out and how many have no place. */
  setCounts(line: number, bought: number, unplaced: number): void {
    const { state } = this;
    this.touchLine(line);
    this.keeper?.beforeLine(line);
    this.countLine[this.countCount] = line;
    this.oldBought[this.countCount] = state.boughtOut[line]!;
    this.oldUnplaced[this.countCount++] = state.unplaced[line]!;
    state.boughtOut[line] = bought;
    state.unplaced[line] = unplaced;
  }

  /** Change of the plan's money, exact; Infinity where a build finds no place. */
  evaluate(): number {
    const { retiming, state } = this;
    retiming.begin();
    if (!retiming.timeAll()) return Infinity;
    this.touchRetimed();
    let delta = this.money + retiming.changeMoney;
    for (let at = 0; at < this.lineCount; at++) {
      const line = this.lines[at]!;
      delta += this.moneyOf(line) - state.lineMoney[line]!;
    }
    if (state.data.makespanRate > 0) delta += this.makespanDelta();
    this.delta = delta;
    return delta;
  }

  /** Makes the change that was evaluated last. */
  commit(): void {
    const { state, splices, keeper } = this;
    if (keeper) {
      for (let index = 0; index < splices.count; index++) keeper.beforeMachine(splices.machine[index]!);
    }
    this.retiming.commit();
    for (let at = 0; at < this.dropCount; at++) this.remove(this.drops[at]!);
    for (let at = 0; at < this.addCount; at++) state.activate(this.adds[at]!);
    for (let at = 0; at < this.lineCount; at++) {
      const line = this.lines[at]!;
      keeper?.beforeLine(line);
      state.lineMoney[line] = this.newLineMoney[line]!;
      state.lineEnd[line] = this.newLineEnd[line]!;
    }
    state.money += this.delta;
    this.clear();
  }

  /** Forgets the change. */
  discard(): void {
    const { state } = this;
    for (let at = this.dropCount - 1; at >= 0; at--) this.useEngineering(this.drops[at]!, 1);
    for (let at = this.addCount - 1; at >= 0; at--) {
      const build = this.adds[at]!;
      this.useEngineering(build, -1);
      state.unlinkItems(build);
      state.giveBack(build);
    }
    for (let at = this.countCount - 1; at >= 0; at--) {
      state.boughtOut[this.countLine[at]!] = this.oldBought[at]!;
      state.unplaced[this.countLine[at]!] = this.oldUnplaced[at]!;
    }
    this.clear();
  }

  /** Adds all money of the plan up anew, from its builds and times. */
  recount(): void {
    const { state } = this;
    const { data } = state;
    this.clear();
    this.retiming.begin();
    state.engineeringUse.fill(0);
    for (let at = 0; at < state.activeCount; at++) {
      const build = state.active[at]!;
      this.money += state.costOf[build]! + state.changeMoney[build]!;
      this.useEngineering(build, 1);
    }
    for (let line = 0; line < data.lineCount; line++) {
      const money = this.moneyOf(line);
      state.lineMoney[line] = money;
      state.lineEnd[line] = this.newLineEnd[line]!;
      this.money += money;
    }
    if (data.makespanRate > 0) this.money += data.makespanRate * state.makespanMin();
    this.money += data.earlier.costOfAll;
    state.money = this.money;
    this.clear();
  }

  private takeBuild(): number {
    return this.addCount < MOST_CHANGED ? this.state.takeBuild() : -1;
  }

  private enter(build: number): void {
    const { state } = this;
    state.changeMoney[build] = 0;
    state.endAt[build] = -1;
    state.linkItems(build);
    this.adds[this.addCount++] = build;
    this.money += state.costOf[build]!;
    this.useEngineering(build, 1);
    this.touchLines(build);
  }

  private remove(build: number): void {
    this.state.unlinkItems(build);
    this.state.deactivate(build);
    if (this.keeper) this.keeper.keepBuild(build);
    else this.state.giveBack(build);
  }

  private clear(): void {
    this.stamp++;
    this.money = 0;
    this.lineCount = 0;
    this.addCount = 0;
    this.dropCount = 0;
    this.countCount = 0;
    this.splices.clear();
  }

  private useEngineering(build: number, change: number): void {
    const { state } = this;
    const from = build * MOST_ITEMS;
    for (let slot = from; slot < from + state.itemCount[build]!; slot++) {
      const item = state.data.optionEngineering[state.itemOption[slot]!]!;
      if (item < 0) continue;
      const before = state.engineeringUse[item]!;
      state.engineeringUse[item] = before + change;
      if (before === 0) this.money += state.data.engineeringCost[item]!;
      else if (before + change === 0) this.money -= state.data.engineeringCost[item]!;
    }
  }

  private touchRetimed(): void {
    const { retiming, state } = this;
    for (let at = 0; at < retiming.timedCount; at++) {
      const build = retiming.timed[at]!;
      if (retiming.newEnd[build] !== state.endAt[build]) this.touchLines(build);
    }
  }

  private touchLines(build: number): void {
    const { state } = this;
    const from = build * MOST_ITEMS;
    for (let slot = from; slot < from + state.itemCount[build]!; slot++) {
      this.touchLine(state.data.optionLine[state.itemOption[slot]!]!);
    }
  }

  private touchLine(line: number): void {
    if (this.lineStamp[line] === this.stamp) return;
    this.lineStamp[line] = this.stamp;
    this.lines[this.lineCount++] = line;
  }

  /** Money of one line as the trial has it. */
  private moneyOf(line: number): number {
    const { state, retiming } = this;
    const { data } = state;
    const bought = state.boughtOut[line]!;
    let end = bought > 0 ? data.buyArriveMin[line]! : -1;
    let money = state.unplaced[line]! * state.penalty + boughtMoney(data, state.penalty, line, bought);
    const plain = data.hard[line] === 0 && data.pieceRate[line] === 0;
    for (let slot = state.firstItemOf(line); slot >= 0; slot = state.itemAfter(slot)) {
      const build = (slot / MOST_ITEMS) | 0;
      if (this.dropStamp[build] === this.stamp) continue;
      const itemEnd = retiming.endOf(build);
      if (itemEnd > end) end = itemEnd;
      if (!plain) money += state.itemPenalty(line, state.itemCopies[slot]!, itemEnd);
    }
    const lateMin = end - data.dueMin[line]!;
    if (lateMin > 0 && end >= 0) money += lateMin * data.wholeRate[line]!;
    this.newLineMoney[line] = money;
    this.newLineEnd[line] = end;
    return money;
  }

  private makespanDelta(): number {
    const { state, splices, retiming } = this;
    let before = 0;
    let after = 0;
    for (let machine = 0; machine < state.data.machineCount; machine++) {
      const length = state.length[machine]!;
      const end = length > 0 ? state.endAt[state.sequence[machine]![length - 1]!]! : 0;
      let newEnd = end;
      for (let index = 0; index < splices.count; index++) {
        if (splices.machine[index] === machine) newEnd = retiming.machineEnd(index);
      }
      if (end > before) before = end;
      if (newEnd > after) after = newEnd;
    }
    return (after - before) * state.data.makespanRate;
  }
}

/** Most builds, or lines' counts, that one trial may change. */
const MOST_CHANGED = 64;
