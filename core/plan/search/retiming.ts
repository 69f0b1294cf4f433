import { MachineTail } from "./old-tail.ts";
import { Placer } from "./place-build.ts";
import type { SearchState } from "./search-state.ts";
import { Splices } from "./splices.ts";

/**
 * New times of the builds that splices touch: the changed part and the machine's builds after it, until one of them ends as
 * before (all later ones then stay where they are). The plan itself changes only in `commit`.
 */
export class Retiming {
  readonly splices: Splices;
  private readonly placer: Placer;
  private readonly tail: MachineTail;
  /** builds with new times, in the order they were timed */
  readonly timed: Int32Array;
  timedCount = 0;
  /** change of changeover money so far, and of what staying where an earlier plan had them saves */
  changeMoney = 0;
  readonly newEnd: Int32Array;
  /** set to time all later builds, also after one that ends as before */
  wholeTail = false;

  private readonly state: SearchState;
  private stamp = 1;
  private readonly stampOf: Int32Array;
  private readonly newSetUp: Int32Array;
  private readonly newPrint: Int32Array;
  private readonly newChange: Float64Array;
  private readonly newWindow: Int32Array;
  /** old position from which splice `i` leaves the machine as it is */
  private readonly stop = new Int32Array(8);
  private readonly timedFrom = new Int32Array(9);
  private shown = 0;
  // Where the machine stands while its builds are timed.
  private readyMin = 0;
  private loaded = 0;
  private window = 0;

  constructor(state: SearchState) {
    this.state = state;
    this.splices = new Splices(state.capacity + 64);
    this.tail = new MachineTail(state);
    this.placer = new Placer(state.windows, this.tail);
    this.timed = new Int32Array(state.capacity + 64);
    this.stampOf = new Int32Array(state.capacity);
    this.newEnd = new Int32Array(state.capacity);
    this.newSetUp = new Int32Array(state.capacity);
    this.newPrint = new Int32Array(state.capacity);
    this.newChange = new Float64Array(state.capacity);
    this.newWindow = new Int32Array(state.capacity);
  }

  begin(): void {
    this.stamp++;
    this.timedCount = 0;
    this.changeMoney = 0;
  }

  /** End of a build as the trial has it. */
  endOf(build: number): number {
    return this.stampOf[build] === this.stamp ? this.newEnd[build]! : this.state.endAt[build]!;
  }

  /** Times every splice; false where a build finds no place. */
  timeAll(): boolean {
    let placed = true;
    for (let index = 0; placed && index < this.splices.count; index++) {
      if (index > 0) this.show(index - 1);
      placed = this.timeSplice(index);
    }
    while (this.shown > 0) this.hide(--this.shown);
    return placed;
  }

  /** End of the last build on the machine of a splice. */
  machineEnd(index: number): number {
    const { state, splices } = this;
    const machine = splices.machine[index]!;
    const length = state.length[machine]!;
    const last = length > splices.to[index]! ? state.sequence[machine]![length - 1]! : this.lastOf(index);
    return last < 0 ? 0 : this.endOf(last);
  }

  private lastOf(index: number): number {
    const { state, splices } = this;
    if (splices.end[index]! > splices.start[index]!) return splices.builds[splices.end[index]! - 1]!;
    const from = splices.from[index]!;
    return from > 0 ? state.sequence[splices.machine[index]!]![from - 1]! : -1;
  }

  private timeSplice(index: number): boolean {
    const { state, splices } = this;
    const machine = splices.machine[index]!;
    const sequence = state.sequence[machine]!;
    const length = state.length[machine]!;
    this.timedFrom[index] = this.timedCount;
    this.startAt(machine, splices.from[index]!);
    this.tail.open(machine, splices.from[index]!);
    for (let at = splices.start[index]!; at < splices.end[index]!; at++) {
      if (!this.timeBuild(machine, splices.builds[at]!)) return false;
    }
    let position = splices.to[index]!;
    while (position < length) {
      const build = sequence[position++]!;
      if (!this.timeBuild(machine, build)) return false;
      if (this.newEnd[build] === state.endAt[build] && !this.wholeTail) break;
    }
    this.stop[index] = position;
    return true;
  }

  private startAt(machine: number, position: number): void {
    const { state } = this;
    const before = position > 0 ? state.sequence[machine]![position - 1]! : -1;
    this.readyMin = before < 0 ? 0 : state.endAt[before]!;
    this.loaded = before < 0 ? state.data.machineStart[machine]! : state.stateOf[before]!;
    this.window = before < 0 ? 0 : state.windowOf[before]!;
  }

  private timeBuild(machine: number, build: number): boolean {
    const { state, placer } = this;
    const { data } = state;
    const facts = data.machineClass[machine]!;
    const target = state.stateOf[build]!;
    const change = this.loaded * data.stateCount + target;
    const setUpMin = data.setUpMin[facts]! + data.changeoverMin[facts]![change]!;
    const releaseMin = state.releaseOf[build]!;
    const kind = state.kindOf[build]!;
    const freeMin = this.readyMin > releaseMin ? this.readyMin : releaseMin;
    const readyMin = data.earlier.heldUntil(kind, machine, freeMin);
    if (!placer.place(machine, readyMin, setUpMin, state.runOf[build]!, this.window)) return false;
    const saved = data.earlier.saved(kind, machine, placer.setUpStartMin);
    const money = data.changeoverCost[facts]![change]! - saved;
    this.changeMoney += money - state.changeMoney[build]!;
    this.stampOf[build] = this.stamp;
    this.newSetUp[build] = placer.setUpStartMin;
    this.newPrint[build] = placer.printStartMin;
    this.newEnd[build] = placer.unloadEndMin;
    this.newChange[build] = money;
    this.newWindow[build] = placer.window;
    this.timed[this.timedCount++] = build;
    this.readyMin = placer.unloadEndMin;
    this.loaded = target;
    this.window = placer.window;
    return true;
  }

  /** Makes the new times of a splice count for the operators while the next machines are timed. */
  private show(index: number): void {
    this.useOld(index, 1);
    this.timedFrom[index + 1] = this.timedCount;
    this.useNew(index, -1);
    this.shown = index + 1;
  }

  private hide(index: number): void {
    this.useNew(index, 1);
    this.useOld(index, -1);
  }

  private useOld(index: number, change: number): void {
    const { state, splices } = this;
    const machine = splices.machine[index]!;
    if (state.windows.free[machine] === null) return;
    const sequence = state.sequence[machine]!;
    for (let position = splices.from[index]!; position < this.stop[index]!; position++) {
      const build = sequence[position]!;
      state.useOperators(
        machine,
        state.setUpStart[build]!,
        state.printStart[build]!,
        state.endAt[build]!,
        change,
      );
    }
  }

  private useNew(index: number, change: number): void {
    const { state, splices } = this;
    const machine = splices.machine[index]!;
    if (state.windows.free[machine] === null) return;
    const last = index + 1 < splices.count ? this.timedFrom[index + 1]! : this.timedCount;
    for (let at = this.timedFrom[index]!; at < last; at++) {
      const build = this.timed[at]!;
      state.useOperators(machine, this.newSetUp[build]!, this.newPrint[build]!, this.newEnd[build]!, change);
    }
  }

  /** Makes the splices and their times part of the plan. */
  commit(): void {
    const { state, splices } = this;
    for (let index = 0; index < splices.count; index++) this.useOld(index, 1);
    for (let index = 0; index < splices.count; index++) this.useNew(index, -1);
    for (let at = 0; at < this.timedCount; at++) {
      const build = this.timed[at]!;
      state.setUpStart[build] = this.newSetUp[build]!;
      state.printStart[build] = this.newPrint[build]!;
      state.endAt[build] = this.newEnd[build]!;
      state.changeMoney[build] = this.newChange[build]!;
      state.windowOf[build] = this.newWindow[build]!;
    }
    for (let index = 0; index < splices.count; index++) this.join(index);
  }

  private join(index: number): void {
    const { state, splices } = this;
    const machine = splices.machine[index]!;
    const from = splices.from[index]!;
    const to = splices.to[index]!;
    const put = splices.end[index]! - splices.start[index]!;
    const oldLength = state.length[machine]!;
    const newLength = oldLength - (to - from) + put;
    const sequence = state.sequenceFor(machine, newLength);
    if (put !== to - from) sequence.copyWithin(from + put, to, oldLength);
    for (let offset = 0; offset < put; offset++) {
      sequence[from + offset] = splices.builds[splices.start[index]! + offset]!;
    }
    state.length[machine] = newLength;
    const last = put === to - from ? from + put : newLength;
    for (let position = from; position < last; position++) {
      const build = sequence[position]!;
      state.machineOf[build] = machine;
      state.positionOf[build] = position;
    }
  }
}
