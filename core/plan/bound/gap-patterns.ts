import type { MachineClass, PlanMachine } from "../plan-problem.ts";

/**
 * Which unstaffed gaps one run prints into, as counts by gap type; where it starts does not matter. Two spans with the same
 * counts are one pattern that is as good as the better of them.
 */
export interface GapPattern {
  /** gaps entered, by type */
  readonly counts: Int32Array;
  /** length of all of them, min */
  readonly gapMin: number;
  /** staffed windows that lie wholly between them, min */
  readonly betweenMin: number;
  /** a run that is not longer than this cannot reach the last gap */
  readonly entryMin: number;
  /** set-up and run are not longer than this: the gaps and all windows that touch them, min */
  readonly spanMin: number;
}

/** Gaps that runs may print into on the machines of one class, up to an instant. */
interface ClassGaps {
  /** distinct lengths, min */
  readonly typesMin: readonly number[];
  /** each gap of each machine: its type, and the start of the window after it */
  readonly gaps: readonly { readonly type: number; readonly nextStartMin: number }[];
  /** the first enters no gap */
  readonly patterns: readonly GapPattern[];
}

/**
 * Finds the gaps and patterns of a class. A gap counts only where a segment of that machine spans it; runs longer than
 * `longestRunMin` do not exist. Machines that may not run unattended have the first pattern only.
 */
export function classGaps(
  machineClass: MachineClass,
  machines: readonly PlanMachine[],
  untilMin: number,
  longestRunMin: number,
): ClassGaps {
  const finder = new GapFinder();
  for (const index of machineClass.machineIndices) {
    const machine = machines[index];
    if (machine && machineClass.unattended) finder.look(machine, untilMin, longestRunMin);
  }
  return finder.found(longestWindowMin(machineClass, machines));
}

function longestWindowMin(machineClass: MachineClass, machines: readonly PlanMachine[]): number {
  let longest = 0;
  for (const index of machineClass.machineIndices) {
    for (const { startMin, endMin } of machines[index]?.windows ?? [])
      longest = Math.max(longest, endMin - startMin);
  }
  return longest;
}

interface Span {
  readonly types: readonly number[];
  readonly gapMin: number;
  readonly betweenMin: number;
  readonly entryMin: number;
  readonly spanMin: number;
}

class GapFinder {
  private readonly typeOf = new Map<number, number>();
  private readonly gaps: { type: number; nextStartMin: number }[] = [];
  private readonly spans = new Map<string, Span>();

  look(machine: PlanMachine, untilMin: number, longestRunMin: number): void {
    const { windows } = machine;
    for (let at = 0; at + 1 < windows.length && windows[at]!.startMin < untilMin; at++) {
      if (!spansGap(machine, at)) continue;
      const nextStartMin = windows[at + 1]!.startMin;
      this.gaps.push({ type: this.type(nextStartMin - windows[at]!.endMin), nextStartMin });
      this.lookFrom(machine, at, longestRunMin);
    }
  }

  private type(gapMin: number): number {
    const known = this.typeOf.get(gapMin);
    if (known !== undefined) return known;
    this.typeOf.set(gapMin, this.typeOf.size);
    return this.typeOf.size - 1;
  }

  /** All spans of gaps that a run which starts in one window can enter. */
  private lookFrom(machine: PlanMachine, first: number, longestRunMin: number): void {
    const { windows } = machine;
    const types: number[] = [];
    let [gapMin, betweenMin] = [0, 0];
    for (let at = first; at + 1 < windows.length && spansGap(machine, at); at++) {
      if (at > first) betweenMin += lengthMin(windows[at]!);
      const entryMin = gapMin + betweenMin;
      if (entryMin >= longestRunMin) return;
      const gap = windows[at + 1]!.startMin - windows[at]!.endMin;
      gapMin += gap;
      types.push(this.type(gap));
      const spanMin = gapMin + betweenMin + lengthMin(windows[first]!) + lengthMin(windows[at + 1]!);
      this.keep({ types: types.toSorted((a, b) => a - b), gapMin, betweenMin, entryMin, spanMin });
    }
  }

  private keep(span: Span): void {
    const key = span.types.join(",");
    const known = this.spans.get(key);
    this.spans.set(key, {
      ...span,
      betweenMin: Math.min(span.betweenMin, known?.betweenMin ?? Infinity),
      entryMin: Math.min(span.entryMin, known?.entryMin ?? Infinity),
      spanMin: Math.max(span.spanMin, known?.spanMin ?? 0),
    });
  }

  found(windowMin: number): ClassGaps {
    const size = this.typeOf.size;
    const none: GapPattern = {
      counts: new Int32Array(size),
      gapMin: 0,
      betweenMin: 0,
      entryMin: 0,
      spanMin: windowMin,
    };
    const patterns = [...this.spans.values()].map(({ types, ...span }) => {
      const counts = new Int32Array(size);
      for (const type of types) counts[type]! += 1;
      return { ...span, counts };
    });
    return { typesMin: [...this.typeOf.keys()], gaps: this.gaps, patterns: [none, ...patterns] };
  }
}

/** Whether one segment of the machine holds the gap after a window. */
function spansGap(machine: PlanMachine, at: number): boolean {
  const startMin = machine.windows[at]!.endMin;
  const endMin = machine.windows[at + 1]!.startMin;
  return machine.segments.some((segment) => segment.startMin <= startMin && segment.endMin >= endMin);
}

function lengthMin({ startMin, endMin }: { startMin: number; endMin: number }): number {
  return endMin - startMin;
}
