import type { OldTail } from "./place-build.ts";
import type { SearchState } from "./search-state.ts";

/**
 * Set-ups and unloads of one machine's builds from some position on, which make way for new ones: while those are placed,
 * an operator whom one of them keeps busy counts as free.
 */
export class MachineTail implements OldTail {
  private readonly state: SearchState;
  private machine = 0;
  private from = 0;

  constructor(state: SearchState) {
    this.state = state;
  }

  open(machine: number, from: number): void {
    this.machine = machine;
    this.from = from;
  }

  busySince(minute: number): number {
    const { state, machine } = this;
    const sequence = state.sequence[machine]!;
    let low = this.from;
    let high = state.length[machine]!;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (state.setUpStart[sequence[middle]!]! <= minute) low = middle + 1;
      else high = middle;
    }
    if (low === this.from) return -1;
    const build = sequence[low - 1]!;
    if (minute < state.printStart[build]!) return state.setUpStart[build]!;
    const endMin = state.endAt[build]!;
    const unloadMin = endMin - state.windows.unloadMin[machine]!;
    return minute >= unloadMin && minute < endMin ? unloadMin : -1;
  }
}
