import type { MoveDesk } from "./move-desk.ts";
import { judgeMove, type MoveVerdict } from "./judge-move.ts";
import type { MoveWay } from "./move-ways.ts";

/** Starts that are tried before it is given up. */
const MOST_TRIED = 80;

/**
 * The first place at which a way has no refusal, from a minute on; null: none among the next starts. Tried are the minute
 * itself, starts of staffed time, ends of other builds of the machine, releases and ends of set-ups and unloads of others.
 * Example: a machine that is free from 10:00 on in a shift that begins at 06:00: 10:00.
 */
export function firstPlace(desk: MoveDesk, way: MoveWay, fromMin: number): MoveVerdict | null {
  const machine = desk.machine(way.machineId);
  const { source } = desk;
  const leastMin = way.items.reduce(
    (least, { orderId }) => {
      const order = source.order(orderId);
      return order ? Math.max(least, source.minute(order.releaseAt)) : least;
    },
    Math.max(fromMin, source.startMin),
  );
  const { windows } = source.working(machine);
  const own = desk.others.get(way.machineId) ?? [];
  const sharing = source.fixed.filter((other) => other.machine.calendarId === machine.calendarId);
  const starts = [
    leastMin,
    ...windows.map(({ startMin }) => startMin),
    ...own.map(({ unloadEndMin }) => unloadEndMin),
    ...sharing.flatMap(({ printStartMin, unloadEndMin }) => [printStartMin, unloadEndMin]),
  ];
  const inOrder = [...new Set(starts)].filter((atMin) => atMin >= leastMin).toSorted((a, b) => a - b);
  let tried = 0;
  for (const atMin of inOrder) {
    const isStaffed = windows.some(({ startMin, endMin }) => startMin <= atMin && atMin < endMin);
    const isTaken = own.some(
      ({ setUpStartMin, unloadEndMin }) =>
        setUpStartMin < atMin + machine.setUpMin + way.runMin && unloadEndMin > atMin,
    );
    if (!isStaffed || isTaken) continue;
    const verdict = judgeMove(desk, way, atMin);
    if (verdict.refusals.length === 0) return verdict;
    if (++tried >= MOST_TRIED) return null;
  }
  return null;
}
