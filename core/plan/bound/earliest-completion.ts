import type { PlanMachine, Stretch } from "../plan-problem.ts";

/** One build as the calendar sees it, min. */
interface BuildTimes {
  /** not before: release of its items, or the start of the plan */
  readonly fromMin: number;
  readonly setUpMin: number;
  readonly runMin: number;
  readonly unloadMin: number;
}

/**
 * When one build would be unloaded if the machine had nothing else to do: set-up inside one staffed window, run inside one
 * segment, unload inside one window, and no time out of service in between. Infinity where it fits nowhere.
 * Example: window 6:00 to 14:00, from 6:00, set-up 10, run 60, unload 5 min: 7:15.
 */
export function earliestUnloadEnd(machine: PlanMachine, build: BuildTimes): number {
  const fromMin = Math.max(build.fromMin, machine.freeFromMin);
  for (let at = firstEndingFrom(machine.windows, fromMin); at < machine.windows.length; at++) {
    const window = machine.windows[at]!;
    const setUpStartMin = Math.max(fromMin, window.startMin);
    const printStartMin = setUpStartMin + build.setUpMin;
    if (printStartMin > window.endMin) continue;
    const printEndMin = printStartMin + build.runMin;
    if (!insideOne(machine.segments, printStartMin, printEndMin)) continue;
    const unloadEndMin = unloadEnd(machine.windows, printEndMin, build.unloadMin);
    if (!overlapsAny(machine.blocks, setUpStartMin, unloadEndMin)) return unloadEndMin;
  }
  return Number.POSITIVE_INFINITY;
}

/** Index of the first stretch that ends at or after the instant; the count where none does. */
export function firstEndingFrom(stretches: readonly Stretch[], instantMin: number): number {
  let low = 0;
  let high = stretches.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (stretches[middle]!.endMin < instantMin) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** End of the first unload that starts at or after the instant and lies inside one window; Infinity where there is none. */
export function unloadEnd(windows: readonly Stretch[], readyMin: number, unloadMin: number): number {
  for (let at = firstEndingFrom(windows, readyMin); at < windows.length; at++) {
    const window = windows[at]!;
    const endMin = Math.max(readyMin, window.startMin) + unloadMin;
    if (endMin <= window.endMin) return endMin;
  }
  return Number.POSITIVE_INFINITY;
}

function insideOne(stretches: readonly Stretch[], startMin: number, endMin: number): boolean {
  for (let at = firstEndingFrom(stretches, endMin); at < stretches.length; at++) {
    const stretch = stretches[at]!;
    if (stretch.startMin <= startMin) return true;
    if (stretch.startMin > endMin) return false;
  }
  return false;
}

function overlapsAny(blocks: readonly Stretch[], startMin: number, endMin: number): boolean {
  return blocks.some((block) => block.startMin < endMin && block.endMin > startMin);
}
