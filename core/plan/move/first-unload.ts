import type { Machine } from "../../shop/machine.ts";
import type { CheckedBuild } from "../check/check-source.ts";
import type { MoveDesk } from "./move-desk.ts";

/**
 * The first minute, not before a print ends, at which somebody of the machine's calendar is free to take it off within one
 * shift. Where there is none in sight, the end of the print itself, which the check then refuses.
 * Example: a print that ends at 03:00 with a shift from 06:00 and nothing else to do: 06:00.
 */
export function firstUnload(desk: MoveDesk, machine: Machine, printEndMin: number): number {
  const { windows, operators } = desk.source.working(machine);
  const lengthMin = Math.ceil(machine.unloadMin);
  const works = worksOf(desk, machine).filter(({ endMin }) => endMin > printEndMin);
  for (const window of windows) {
    if (window.endMin < printEndMin + lengthMin) continue;
    const firstMin = Math.max(window.startMin, printEndMin);
    const starts = [
      firstMin,
      ...works.map(({ endMin }) => endMin),
      ...operators.map(({ startMin }) => startMin),
    ]
      .filter((atMin) => atMin >= firstMin && atMin + lengthMin <= window.endMin)
      .toSorted((a, b) => a - b);
    const free = starts.find((atMin) => isSomebodyFree(works, operators, atMin, atMin + lengthMin));
    if (free !== undefined) return free;
  }
  return printEndMin;
}

interface Work {
  readonly startMin: number;
  readonly endMin: number;
}

function worksOf({ source }: MoveDesk, { calendarId }: Machine): Work[] {
  return source.fixed
    .filter(({ machine }) => machine.calendarId === calendarId)
    .flatMap((other: CheckedBuild) => [
      { startMin: other.setUpStartMin, endMin: other.printStartMin },
      { startMin: other.unloadStartMin, endMin: other.unloadEndMin },
    ]);
}

function isSomebodyFree(
  works: readonly Work[],
  operators: readonly (Work & { readonly operators: number })[],
  startMin: number,
  endMin: number,
): boolean {
  const during = works.filter((work) => work.startMin < endMin && work.endMin > startMin);
  const points = [startMin, ...during.map((work) => Math.max(startMin, work.startMin))];
  const changes = operators.filter((entry) => entry.startMin > startMin && entry.startMin < endMin);
  return [...points, ...changes.map((entry) => entry.startMin)].every((atMin) => {
    const there = operators.find((entry) => entry.startMin <= atMin && entry.endMin > atMin)?.operators ?? 0;
    return during.filter((work) => work.startMin <= atMin && work.endMin > atMin).length < there;
  });
}
