import type { SearchState } from "./search-state.ts";
import type { Trial } from "./trial.ts";

const MOST_EDITS = 32;

/** Kinds of edits at a position. */
const INSERT = 0;
const REPLACE = 1;
const REMOVE = 2;

/** Small changes at positions of machines, collected and then handed to a trial as one splice for each machine. */
export class Edits {
  private readonly state: SearchState;
  private readonly machine = new Int32Array(MOST_EDITS);
  private readonly position = new Int32Array(MOST_EDITS);
  private readonly kind = new Int32Array(MOST_EDITS);
  private readonly build = new Int32Array(MOST_EDITS);
  private count = 0;

  constructor(state: SearchState) {
    this.state = state;
  }

  /** Takes a build out of its sequence. */
  remove(build: number): void {
    this.note(this.state.machineOf[build]!, this.state.positionOf[build]!, REMOVE, -1);
  }

  /** Puts another build in the place of one. */
  replace(old: number, build: number): void {
    this.note(this.state.machineOf[old]!, this.state.positionOf[old]!, REPLACE, build);
  }

  /** Puts a build before the one that stands at a position now. */
  insert(machine: number, position: number, build: number): void {
    this.note(machine, position, INSERT, build);
  }

  /** Makes splices of all edits and forgets them. */
  apply(trial: Trial): void {
    for (let at = 0; at < this.count; at++) {
      const machine = this.machine[at]!;
      if (machine >= 0 && this.isFirst(at)) this.splice(trial, machine);
    }
    this.count = 0;
  }

  private note(machine: number, position: number, kind: number, build: number): void {
    const at = this.count++;
    this.machine[at] = machine;
    this.position[at] = position;
    this.kind[at] = kind;
    this.build[at] = build;
  }

  private isFirst(at: number): boolean {
    for (let before = 0; before < at; before++) {
      if (this.machine[before] === this.machine[at]) return false;
    }
    return true;
  }

  private splice(trial: Trial, machine: number): void {
    let from = 0x3fffffff;
    let to = 0;
    for (let at = 0; at < this.count; at++) {
      if (this.machine[at] !== machine) continue;
      const position = this.position[at]!;
      if (position < from) from = position;
      const end = this.kind[at] === INSERT ? position : position + 1;
      if (end > to) to = end;
    }
    trial.splices.open(machine, from, to);
    const sequence = this.state.sequence[machine]!;
    for (let position = from; position <= to; position++) {
      this.putAt(trial, machine, position, position < to ? sequence[position]! : -1);
    }
  }

  private putAt(trial: Trial, machine: number, position: number, old: number): void {
    let build = old;
    for (let at = 0; at < this.count; at++) {
      if (this.machine[at] !== machine || this.position[at] !== position) continue;
      if (this.kind[at] === INSERT) trial.splices.put(this.build[at]!);
      else build = this.build[at]!;
    }
    if (build >= 0) trial.splices.put(build);
  }
}
