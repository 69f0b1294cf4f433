import type { Random } from "../../units/random.ts";
import { Edits } from "./edits.ts";
import type { SearchData } from "./search-data.ts";
import { MOST_ITEMS, type SearchState } from "./search-state.ts";
import type { Trial } from "./trial.ts";

/** What every move works with: the plan, one trial, edits, and random choices that lean towards what may help. */
export class Walk {
  readonly trial: Trial;
  readonly state: SearchState;
  readonly data: SearchData;
  readonly edits: Edits;
  readonly random: Random;

  constructor(trial: Trial, random: Random) {
    this.trial = trial;
    this.state = trial.state;
    this.data = trial.state.data;
    this.edits = new Edits(trial.state);
    this.random = random;
  }

  /** A whole number from 0 to below `count`. */
  below(count: number): number {
    return (this.random() * count) | 0;
  }

  /** Any build of the plan, or -1 when there is none. */
  anyBuild(): number {
    const { state } = this;
    return state.activeCount === 0 ? -1 : state.active[this.below(state.activeCount)]!;
  }

  /** Option of the first item of a build. */
  optionOf(build: number): number {
    return this.state.itemOption[build * MOST_ITEMS]!;
  }

  copiesOf(build: number): number {
    return this.state.itemCopies[build * MOST_ITEMS]!;
  }

  isMixed(build: number): boolean {
    return this.state.itemCount[build]! > 1;
  }

  lineOf(build: number): number {
    return this.data.optionLine[this.optionOf(build)]!;
  }

  /** Any of the machines that an option may run on; -1 when there is none. */
  machineFor(option: number): number {
    const machines = this.data.optionMachines[option]!;
    return machines.length === 0 ? -1 : machines[this.below(machines.length)]!;
  }

  anyOption(line: number): number {
    const options = this.data.lineOptions[line]!;
    return options.length === 0 ? -1 : options[this.below(options.length)]!;
  }

  /** True where all items of a build may run on a machine. */
  mayRun(build: number, machine: number): boolean {
    const { data, state } = this;
    const from = build * MOST_ITEMS;
    for (let slot = from; slot < from + state.itemCount[build]!; slot++) {
      if (data.mayRun[state.itemOption[slot]! * data.machineCount + machine] === 0) return false;
    }
    return true;
  }

  /** An option of a line for a machine in a given state that takes so many copies; -1 where there is none. */
  optionInState(line: number, machine: number, loaded: number, copies: number): number {
    const { data } = this;
    const options = data.lineOptions[line]!;
    for (let index = 0; index < options.length; index++) {
      const option = options[index]!;
      if (data.optionState[option] !== loaded || !this.takes(option, copies)) continue;
      if (data.mayRun[option * data.machineCount + machine] === 1) return option;
    }
    return -1;
  }

  takes(option: number, copies: number): boolean {
    return copies >= this.data.optionMin[option]! && copies <= this.data.optionMax[option]!;
  }

  /** Position of the first build of a machine that starts at or after a time. */
  positionAt(machine: number, timeMin: number): number {
    const { state } = this;
    const sequence = state.sequence[machine]!;
    let low = 0;
    let high = state.length[machine]!;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (state.setUpStart[sequence[middle]!]! < timeMin) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** A position near a time, mostly the very one, sometimes a few off. */
  positionNear(machine: number, timeMin: number): number {
    const position = this.positionAt(machine, timeMin);
    const draw = this.random();
    if (draw < NEAR_SHARE) return position;
    const reach = draw < FAR_SHARE ? FEW_OFF : MANY_OFF;
    const off = 1 + this.below(reach);
    const moved = this.random() < 0.5 ? position - off : position + off;
    return Math.max(0, Math.min(this.state.length[machine]!, moved));
  }

  /** When the last build of a machine starts, the machine of any build. */
  private lastStart(): number {
    const { state } = this;
    const build = this.anyBuild();
    if (build < 0) return 0;
    const machine = state.machineOf[build]!;
    return state.setUpStart[state.sequence[machine]![state.length[machine]! - 1]!]!;
  }

  /**
   * A time at which copies of a line could start: about when a build does now, so that it is just done by the due date,
   * before that, or any time later, for work that is late anyway.
   */
  goodTime(line: number, startMin: number, runMin: number): number {
    const draw = this.random();
    if (draw < SAME_TIME_SHARE) return startMin;
    const latest = this.data.dueMin[line]! - runMin;
    if (draw < DUE_TIME_SHARE) return latest;
    const earliest = this.data.releaseMin[line]!;
    if (draw < BEFORE_DUE_SHARE) return earliest + this.random() * Math.max(0, latest - earliest);
    return startMin + this.random() * Math.max(0, this.lastStart() - startMin);
  }
}

const NEAR_SHARE = 0.35;
const FAR_SHARE = 0.85;
const FEW_OFF = 3;
const MANY_OFF = 12;
const SAME_TIME_SHARE = 0.5;
const DUE_TIME_SHARE = 0.7;
const BEFORE_DUE_SHARE = 0.85;
