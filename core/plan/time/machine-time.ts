import type { Stretch, WorkingTime } from "../plan-problem.ts";
import { joinOver, joinTouching, withoutStretches } from "./stretches.ts";

export interface MachineTimeInput {
  /** calendar of the people who serve the machine */
  readonly working: WorkingTime;
  /** times out of service, in any order */
  readonly blocks: readonly Stretch[];
  /** nothing starts before, epoch minute */
  readonly freeFromMin: number;
  /** longest gap with nobody there that a print may span, min; 0: none */
  readonly unattendedMaxMin: number;
}

/** Where one machine can be served, and where one print may run. */
export interface MachineTime {
  readonly windows: Stretch[];
  readonly segments: Stretch[];
}

/**
 * Lays one machine out in time. Windows are the staffed time without blocks and without what lies before it is free.
 * Segments are the windows, joined over every gap that is no longer than the machine may run with nobody there and that no
 * closed day and no block touches: a print lies inside one of them, so it never ends in a gap that it may not span.
 * Example: windows 0-60 and 100-160 with at most 40 min unattended give one segment 0-160; with 39, two.
 */
export function machineTime(input: MachineTimeInput): MachineTime {
  const { working, freeFromMin, unattendedMaxMin } = input;
  const blocks = joinTouching(input.blocks.toSorted((a, b) => a.startMin - b.startMin));
  const windows = withoutStretches(working.windows, blocks)
    .filter((window) => window.endMin > freeFromMin)
    .map(({ startMin, endMin }) => ({ startMin: Math.max(startMin, freeFromMin), endMin }));
  const shut = joinTouching([...blocks, ...working.closures].toSorted((a, b) => a.startMin - b.startMin));
  const segments = joinOver(
    windows,
    (gap) => gap.endMin - gap.startMin <= unattendedMaxMin && !touchesAny(gap, shut),
  );
  return { windows, segments };
}

/** True where a gap shares time with one of the stretches (sorted, disjoint). */
function touchesAny(gap: Stretch, sorted: readonly Stretch[]): boolean {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.endMin ?? Infinity) <= gap.startMin) low = middle + 1;
    else high = middle;
  }
  return (sorted[low]?.startMin ?? Infinity) < gap.endMin;
}
