import type { Random } from "../../units/random.ts";
import { lineItemPenalty } from "./line-money.ts";
import { MachineTail } from "./old-tail.ts";
import { Placer } from "./place-build.ts";
import { MOST_ITEMS, type SearchState } from "./search-state.ts";

/** After the last build; beside builds of the same state, where little is changed over; or everywhere else. */
export type Positions = "end" | "beside" | "apart";

/** Share of positions passed over. */
const BLINK_SHARE = 0.02;

/**
 * Finds the cheapest place for one more build on a machine without changing the plan: each position is tried as if the
 * build stood there, and given up as soon as it costs more than the best so far. The money counts what the build costs,
 * changeovers, its own lateness and that of builds pushed back; a gain by a later build ending earlier is left out.
 */
export class Insertion {
  /** position of the best place found by the last `scan` */
  position = -1;
  private readonly state: SearchState;
  private readonly tail: MachineTail;
  private readonly placer: Placer;
  private readonly stampOf: Int32Array;
  private readonly trialEnd: Int32Array;
  private stamp = 0;
  // The build that is being placed.
  private option = 0;
  private copies = 0;
  private run = 0;
  private line = 0;
  private release = 0;
  private target = 0;
  private kind = -1;

  constructor(state: SearchState) {
    this.state = state;
    this.tail = new MachineTail(state);
    this.placer = new Placer(state.windows, this.tail);
    this.stampOf = new Int32Array(state.data.lineCount);
    this.trialEnd = new Int32Array(state.data.lineCount);
  }

  /** Sets the build for the scans that follow. */
  prepare(option: number, copies: number): void {
    const { data } = this.state;
    this.option = option;
    this.copies = copies;
    this.run = data.runOf(option, copies);
    this.line = data.optionLine[option]!;
    this.release = data.releaseMin[this.line]!;
    this.target = data.optionState[option]!;
    this.kind = data.earlier.kindOfSingle(option, copies);
  }

  /** What the build costs wherever it stands: itself, and tool paths that nothing else in the plan needs yet. */
  standingCost(): number {
    const { state, option } = this;
    const { data } = state;
    const engineering = data.optionEngineering[option]!;
    const cost = data.costOf(option, this.copies);
    const isNew = engineering >= 0 && state.engineeringUse[engineering] === 0;
    return isNew ? cost + data.engineeringCost[engineering]! : cost;
  }

  /** What the build costs at the least, wherever it stands. */
  leastCost(): number {
    return this.standingCost() - this.state.data.earlier.mostSaved(this.kind);
  }

  /**
   * Money of the best of some positions on a machine if it is below `limit`, else Infinity. With `random` some positions are
   * passed over (blinks; Christiaens & Vanden Berghe 2020, from memory).
   */
  scan(machine: number, limit: number, random: Random | null, positions: Positions): number {
    const { state } = this;
    const sequence = state.sequence[machine]!;
    const length = state.length[machine]!;
    const standing = this.standingCost();
    const least = this.leastCost();
    let best = limit;
    this.position = -1;
    for (let position = positions === "end" ? length : 0; position <= length; position++) {
      if (positions !== "end" && this.isBeside(machine, position) !== (positions === "beside")) continue;
      const readyMin = position > 0 ? state.endAt[sequence[position - 1]!]! : 0;
      if (least + this.leastLateness(machine, readyMin) >= best) break;
      if (random !== null && random() < BLINK_SHARE) continue;
      const money = this.tryAt(machine, position, standing, best);
      if (money < best) {
        best = money;
        this.position = position;
      }
    }
    return this.position < 0 ? Infinity : best;
  }

  /** True where the build before or after a position has the state already. */
  private isBeside(machine: number, position: number): boolean {
    const { state, target } = this;
    const sequence = state.sequence[machine]!;
    const before = position > 0 ? state.stateOf[sequence[position - 1]!]! : state.data.machineStart[machine]!;
    if (before === target) return true;
    if (position >= state.length[machine]!) return false;
    const after = state.stateOf[sequence[position]!]!;
    return after === target;
  }

  private leastLateness(machine: number, readyMin: number): number {
    const { state } = this;
    const earliest =
      Math.max(readyMin, this.release) + state.data.setUpMin[state.data.machineClass[machine]!]!;
    return this.ownLateness(earliest + this.run + state.windows.unloadMin[machine]!);
  }

  private ownLateness(endMin: number): number {
    const { state, line } = this;
    const { data } = state;
    const late = endMin - Math.max(data.dueMin[line]!, state.lineEnd[line]!);
    const own = late > 0 ? late * data.wholeRate[line]! : 0;
    return own + lineItemPenalty(data, state.penalty, line, this.copies, endMin);
  }

  private tryAt(machine: number, position: number, standing: number, limit: number): number {
    const { state, placer, tail, target } = this;
    const { data } = state;
    const sequence = state.sequence[machine]!;
    const before = position > 0 ? sequence[position - 1]! : -1;
    const loaded = before < 0 ? data.machineStart[machine]! : state.stateOf[before]!;
    const facts = data.machineClass[machine]!;
    const changeIn = loaded * data.stateCount + target;
    const costs = data.changeoverCost[facts]!;
    let money = standing + costs[changeIn]!;
    const isLast = position === state.length[machine]!;
    if (!isLast) {
      const after = sequence[position]!;
      // What the next one saves by staying comes back in `pushBack`.
      money += costs[target * data.stateCount + state.stateOf[after]!]! - state.changeMoney[after]!;
    }
    if (money - data.earlier.mostSaved(this.kind) - this.savedBy(machine, position) >= limit) return Infinity;
    const freeMin = Math.max(before < 0 ? 0 : state.endAt[before]!, this.release);
    const readyMin = data.earlier.heldUntil(this.kind, machine, freeMin);
    const setUpMin = data.setUpMin[facts]! + data.changeoverMin[facts]![changeIn]!;
    const window = before < 0 ? 0 : state.windowOf[before]!;
    tail.open(machine, position);
    const placed = placer.place(machine, readyMin, setUpMin, this.run, window);
    if (!placed) return Infinity;
    money += this.ownLateness(placer.unloadEndMin);
    money -= data.earlier.saved(this.kind, machine, placer.setUpStartMin);
    // The next build's saving is not known yet: the limit is asked without it.
    return money - this.savedBy(machine, position) < limit
      ? this.pushBack(machine, position, money, limit)
      : Infinity;
  }

  /** What the build at a position saves now by standing where an earlier plan had it. */
  private savedBy(machine: number, position: number): number {
    const { state } = this;
    if (position >= state.length[machine]!) return 0;
    const build = state.sequence[machine]![position]!;
    return state.data.earlier.saved(state.kindOf[build]!, machine, state.setUpStart[build]!);
  }

  /** Adds the lateness of the builds from `position` on, which come after the placed one. */
  private pushBack(machine: number, position: number, money: number, limit: number): number {
    const { state, placer } = this;
    const { data } = state;
    const facts = data.machineClass[machine]!;
    const changes = data.changeoverMin[facts]!;
    const sequence = state.sequence[machine]!;
    const length = state.length[machine]!;
    this.stamp++;
    let loaded = this.target;
    let total = money;
    for (let at = position; at < length; at++) {
      const build = sequence[at]!;
      const state1 = state.stateOf[build]!;
      const setUpMin = data.setUpMin[facts]! + changes[loaded * data.stateCount + state1]!;
      const kind = state.kindOf[build]!;
      const freeMin = Math.max(placer.unloadEndMin, state.releaseOf[build]!);
      const readyMin = data.earlier.heldUntil(kind, machine, freeMin);
      if (!placer.place(machine, readyMin, setUpMin, state.runOf[build]!, placer.window)) return Infinity;
      const saved = data.earlier.saved(kind, machine, placer.setUpStartMin);
      // The first one's saving was taken out with its changeover.
      total += (at === position ? 0 : this.savedBy(machine, at)) - saved;
      if (placer.unloadEndMin === state.endAt[build])
        return total + this.makespan(machine, state.endAt[sequence[length - 1]!]!);
      total += this.laterBy(build, placer.unloadEndMin);
      if (total >= limit) return Infinity;
      loaded = state1;
    }
    return total + this.makespan(machine, placer.unloadEndMin);
  }

  /** More lateness of a build's lines if it ended at `endMin`. */
  private laterBy(build: number, endMin: number): number {
    const { state } = this;
    const { data } = state;
    let money = 0;
    const from = build * MOST_ITEMS;
    for (let slot = from; slot < from + state.itemCount[build]!; slot++) {
      const line = data.optionLine[state.itemOption[slot]!]!;
      const known = this.stampOf[line] === this.stamp ? this.trialEnd[line]! : state.lineEnd[line]!;
      if (endMin > known) {
        this.stampOf[line] = this.stamp;
        this.trialEnd[line] = endMin;
        const late = endMin - Math.max(data.dueMin[line]!, known);
        if (late > 0) money += late * data.wholeRate[line]!;
      }
      if (data.hard[line] === 1 || data.pieceRate[line]! > 0) {
        const copies = state.itemCopies[slot]!;
        money += lineItemPenalty(data, state.penalty, line, copies, endMin);
        money -= lineItemPenalty(data, state.penalty, line, copies, state.endAt[build]!);
      }
    }
    return money;
  }

  private makespan(machine: number, endMin: number): number {
    const { state } = this;
    const rate = state.data.makespanRate;
    if (rate === 0) return 0;
    let longest = 0;
    for (let other = 0; other < state.data.machineCount; other++) {
      const length = state.length[other]!;
      if (other === machine || length === 0) continue;
      longest = Math.max(longest, state.endAt[state.sequence[other]![length - 1]!]!);
    }
    const length = state.length[machine]!;
    const before = length > 0 ? state.endAt[state.sequence[machine]![length - 1]!]! : 0;
    return rate * (Math.max(longest, endMin) - Math.max(longest, before));
  }
}
