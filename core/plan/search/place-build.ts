import type { MachineWindows } from "./machine-windows.ts";
import { lastShort } from "./operator-use.ts";

/** The builds of one machine that are being placed anew. */
export interface OldTail {
  /** first minute of the old set-up or unload of theirs that keeps an operator busy in a minute; -1 where there is none */
  busySince(minute: number): number;
}

/** Places one build on a machine's calendar as early as can be. The answer stands in the fields after `place` gave true. */
export class Placer {
  setUpStartMin = 0;
  printStartMin = 0;
  unloadEndMin = 0;
  /** window in which it is unloaded: the next build looks from there on */
  window = 0;
  private readonly windows: MachineWindows;
  private readonly tail: OldTail;

  constructor(windows: MachineWindows, tail: OldTail) {
    this.windows = windows;
    this.tail = tail;
  }

  /**
   * Earliest place: set-up inside one window, print inside one segment, unload inside one window, all before the next time
   * out of service, an operator free for set-up and unload. False when no window is left.
   * Example: windows 0-60 and 100-160 in one segment, set-up 10, run 70, unload 5: set-up 0-10, print 10-80, unload 100-105.
   */
  place(machine: number, readyMin: number, setUpMin: number, runMin: number, fromWindow: number): boolean {
    const { firstWindow, windowStart, windowEnd, firstSegment, lastSegment, longestFrom } = this.windows;
    const last = firstWindow[machine + 1]!;
    let window = Math.max(fromWindow, firstWindow[machine]!);
    for (; window < last; window++) {
      const startMin = windowStart[window]!;
      const earliest = (readyMin > startMin ? readyMin : startMin) + setUpMin;
      if (earliest > windowEnd[window]!) continue;
      if (runMin > longestFrom[window]!) return false;
      for (let segment = firstSegment[window]!; segment < lastSegment[window]!; segment++) {
        if (this.startIn(machine, window, segment, earliest, setUpMin, runMin)) return true;
      }
    }
    return false;
  }

  private startIn(
    machine: number,
    window: number,
    segment: number,
    earliest: number,
    setUpMin: number,
    runMin: number,
  ): boolean {
    const { windowEnd, segmentStart, segmentEnd, free, nextBlock } = this.windows;
    const latest = Math.min(windowEnd[window]!, segmentEnd[segment]! - runMin);
    const minutes = free[machine]!;
    let print = Math.max(earliest, segmentStart[segment]!);
    if (minutes !== null) {
      for (;;) {
        if (print > latest) return false;
        const short = this.shortIn(minutes, print - setUpMin, print);
        if (short < 0) break;
        print = short + 1 + setUpMin;
      }
    }
    if (print > latest || !this.unload(machine, window, print + runMin, minutes)) return false;
    if (this.unloadEndMin > nextBlock[window]!) return false;
    this.setUpStartMin = print - setUpMin;
    this.printStartMin = print;
    return true;
  }

  private unload(machine: number, from: number, printEndMin: number, minutes: Int16Array | null): boolean {
    const { windowStart, windowEnd, unloadMin, firstWindow } = this.windows;
    const last = firstWindow[machine + 1]!;
    const length = unloadMin[machine]!;
    for (let window = from; window < last; window++) {
      const latest = windowEnd[window]! - length;
      let start = Math.max(printEndMin, windowStart[window]!);
      while (start <= latest) {
        const short = minutes === null ? -1 : this.shortIn(minutes, start, start + length);
        if (short < 0) {
          this.unloadEndMin = start + length;
          this.window = window;
          return true;
        }
        start = short + 1;
      }
    }
    return false;
  }

  /** Last minute of `[fromMin, toMin)` in which nobody is free, also not by leaving the old tail's work; or -1. */
  private shortIn(minutes: Int16Array, fromMin: number, toMin: number): number {
    let short = lastShort(minutes, fromMin, toMin);
    while (short >= 0 && minutes[short] === 0) {
      const since = this.tail.busySince(short);
      if (since < 0) return short;
      short = this.shortBefore(minutes, fromMin, short, since);
    }
    return short;
  }

  /** Last short minute of `[fromMin, toMin)`; minutes since `since` are short only with less than no operator free. */
  private shortBefore(minutes: Int16Array, fromMin: number, toMin: number, since: number): number {
    const first = Math.max(fromMin, since);
    for (let minute = toMin - 1; minute >= first; minute--) if (minutes[minute]! < 0) return minute;
    return lastShort(minutes, fromMin, first);
  }
}
