import type { SearchState } from "./search-state.ts";
import type { ChangeKeeper } from "./trial.ts";

/** Remembers machines and lines as they were before a row of changes, so that all of them can be taken back at once. */
export class Undo implements ChangeKeeper {
  private readonly state: SearchState;
  private round = 1;
  private readonly machineRound: Int32Array;
  private readonly lineRound: Int32Array;
  private readonly buildRound: Int32Array;
  private readonly machines: number[] = [];
  private readonly lines: number[] = [];
  // Of each noted machine: builds with their times, in order.
  private readonly builds: number[] = [];
  private readonly lengths: number[] = [];
  private readonly times: number[] = [];
  private readonly counts: number[] = [];
  private readonly moneys: number[] = [];
  private readonly dropped: number[] = [];
  private readonly engineeringUse: Int32Array;
  private money = 0;

  constructor(state: SearchState) {
    this.state = state;
    this.machineRound = new Int32Array(state.data.machineCount);
    this.lineRound = new Int32Array(state.data.lineCount);
    this.buildRound = new Int32Array(state.capacity);
    this.engineeringUse = new Int32Array(state.engineeringUse.length);
  }

  begin(): void {
    this.round++;
    this.machines.length = 0;
    this.lines.length = 0;
    this.builds.length = 0;
    this.lengths.length = 0;
    this.times.length = 0;
    this.counts.length = 0;
    this.moneys.length = 0;
    this.dropped.length = 0;
    this.engineeringUse.set(this.state.engineeringUse);
    this.money = this.state.money;
  }

  beforeMachine(machine: number): void {
    if (this.machineRound[machine] === this.round) return;
    this.machineRound[machine] = this.round;
    const { state } = this;
    this.machines.push(machine);
    this.lengths.push(state.length[machine]!);
    for (let position = 0; position < state.length[machine]!; position++) {
      const build = state.sequence[machine]![position]!;
      this.builds.push(build);
      this.buildRound[build] = this.round;
      this.times.push(
        state.setUpStart[build]!,
        state.printStart[build]!,
        state.endAt[build]!,
        state.windowOf[build]!,
      );
    }
  }

  beforeLine(line: number): void {
    if (this.lineRound[line] === this.round) return;
    this.lineRound[line] = this.round;
    const { state } = this;
    this.lines.push(line);
    this.counts.push(state.boughtOut[line]!, state.unplaced[line]!, state.lineEnd[line]!);
    this.moneys.push(state.lineMoney[line]!);
  }

  keepBuild(build: number): void {
    this.dropped.push(build);
  }

  /** Lets the changes stand. */
  accept(): void {
    for (const build of this.dropped) this.state.giveBack(build);
    this.dropped.length = 0;
  }

  /** Takes all changes back. */
  rollBack(): void {
    const { state } = this;
    for (const machine of this.machines) this.takeOff(machine);
    for (const build of this.dropped) this.giveBackIfNew(build);
    this.putBack();
    this.lines.forEach((line, at) => {
      state.boughtOut[line] = this.counts[3 * at]!;
      state.unplaced[line] = this.counts[3 * at + 1]!;
      state.lineEnd[line] = this.counts[3 * at + 2]!;
      state.lineMoney[line] = this.moneys[at]!;
    });
    state.engineeringUse.set(this.engineeringUse);
    state.money = this.money;
    this.dropped.length = 0;
  }

  private takeOff(machine: number): void {
    const { state } = this;
    for (let position = 0; position < state.length[machine]!; position++) {
      const build = state.sequence[machine]![position]!;
      state.takeOut(machine, build);
      this.giveBackIfNew(build);
    }
    state.length[machine] = 0;
  }

  private giveBackIfNew(build: number): void {
    if (this.buildRound[build] !== this.round) this.state.giveBack(build);
  }

  private putBack(): void {
    const { state } = this;
    let next = 0;
    this.machines.forEach((machine, at) => {
      for (let count = this.lengths[at]!; count > 0; count--) {
        const build = this.builds[next]!;
        const time = next * TIMES;
        state.setUpStart[build] = this.times[time]!;
        state.printStart[build] = this.times[time + 1]!;
        state.endAt[build] = this.times[time + 2]!;
        state.windowOf[build] = this.times[time + 3]!;
        state.putIn(machine, build);
        next++;
      }
    });
  }
}

/** Times remembered of one build. */
const TIMES = 4;
