import type { Schedule, ScheduledBuild } from "../schedule.ts";
import { scheduleCost } from "./schedule-cost.ts";
import { MOST_ITEMS, type SearchState } from "./search-state.ts";
import type { Trial } from "./trial.ts";

/** Numbers of one build before its items: machine, set-up start, print start, unload end, window, kind, count of items. */
const HEAD = 7;

/** A copy of a plan, to come back to. */
export class SavedPlan {
  money = Infinity;
  private words = new Int32Array(1024);
  private used = 0;
  private boughtOut = new Int32Array(0);
  private unplaced = new Int32Array(0);

  save(state: SearchState): void {
    this.money = state.money;
    this.used = 0;
    this.boughtOut = state.boughtOut.slice();
    this.unplaced = state.unplaced.slice();
    for (let machine = 0; machine < state.data.machineCount; machine++) {
      for (let position = 0; position < state.length[machine]!; position++) {
        this.saveBuild(state, machine, state.sequence[machine]![position]!);
      }
    }
  }

  private saveBuild(state: SearchState, machine: number, build: number): void {
    if (this.used + HEAD + 2 * MOST_ITEMS > this.words.length) this.grow();
    const { words } = this;
    let at = this.used;
    words[at++] = machine;
    words[at++] = state.setUpStart[build]!;
    words[at++] = state.printStart[build]!;
    words[at++] = state.endAt[build]!;
    words[at++] = state.windowOf[build]!;
    words[at++] = state.kindOf[build]!;
    words[at++] = state.itemCount[build]!;
    for (let item = 0; item < state.itemCount[build]!; item++) {
      words[at++] = state.itemOption[build * MOST_ITEMS + item]!;
      words[at++] = state.itemCopies[build * MOST_ITEMS + item]!;
    }
    this.used = at;
  }

  private grow(): void {
    const longer = new Int32Array(this.words.length * 2);
    longer.set(this.words);
    this.words = longer;
  }

  /** Makes the plan of a trial's state this one again. */
  restore(trial: Trial): void {
    const { state } = trial;
    state.clear();
    state.boughtOut.set(this.boughtOut);
    state.unplaced.set(this.unplaced);
    for (let at = 0; at < this.used; ) at = this.restoreBuild(state, at);
    trial.recount();
  }

  private restoreBuild(state: SearchState, from: number): number {
    const { words } = this;
    const build = state.takeBuild();
    const machine = words[from]!;
    const items = this.itemsAt(from);
    state.describe(build, items);
    state.setUpStart[build] = words[from + 1]!;
    state.printStart[build] = words[from + 2]!;
    state.endAt[build] = words[from + 3]!;
    state.windowOf[build] = words[from + 4]!;
    state.kindOf[build] = words[from + 5]!;
    state.putIn(machine, build);
    return from + HEAD + 2 * items.length;
  }

  private itemsAt(from: number): { optionIndex: number; copies: number }[] {
    return Array.from({ length: this.words[from + HEAD - 1]! }, (_, item) => ({
      optionIndex: this.words[from + HEAD + 2 * item]!,
      copies: this.words[from + HEAD + 2 * item + 1]!,
    }));
  }
}

/** The plan of a state as a schedule in epoch minutes, with its cost added up anew. */
export function toSchedule(state: SearchState): Schedule {
  const { problem } = state.data;
  const { startMin } = problem;
  const builds: ScheduledBuild[] = [];
  for (let machine = 0; machine < state.data.machineCount; machine++) {
    for (let position = 0; position < state.length[machine]!; position++) {
      const build = state.sequence[machine]![position]!;
      builds.push({
        machineIndex: machine,
        items: state.itemsOf(build),
        setUpStartMin: startMin + state.setUpStart[build]!,
        printStartMin: startMin + state.printStart[build]!,
        printEndMin: startMin + state.printStart[build]! + state.runOf[build]!,
        unloadEndMin: startMin + state.endAt[build]!,
      });
    }
  }
  const boughtOut = countsOf(state.boughtOut);
  const unplaced = countsOf(state.unplaced);
  const cost = scheduleCost(problem, { builds, boughtOut, unplaced });
  return { builds, boughtOut, unplaced, cost };
}

function countsOf(counts: Int32Array): { lineIndex: number; copies: number }[] {
  return [...counts].flatMap((copies, lineIndex) => (copies > 0 ? [{ lineIndex, copies }] : []));
}
