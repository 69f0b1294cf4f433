import type { SimulationTask } from "./simulation-task.ts";

/**
 * By build: 1 where it holds copies of one of these orders, given by their places in the task, else 0.
 * Example: three builds for the orders 0, 1 and 0, of which 0 is asked for: 1, 0, 1.
 */
export function askedBuilds({ builds }: SimulationTask, asked: ReadonlySet<number>): Uint8Array {
  const { orderFrom, orderIndex } = builds;
  return Uint8Array.from(builds.ids, (_, build) =>
    orderIndex.subarray(orderFrom[build], orderFrom[build + 1]).some((order) => asked.has(order)) ? 1 : 0,
  );
}

/** By calendar: how many of its builds are asked for. Example: those three builds on one calendar: 2. */
export function askedByCalendar({ machines, calendars }: SimulationTask, isAsked: Uint8Array): Int32Array {
  const { machineFrom } = calendars;
  return Int32Array.from({ length: machineFrom.length - 1 }, (_, calendar) => {
    const from = machines.buildFrom[machineFrom[calendar]!];
    const to = machines.buildFrom[machineFrom[calendar + 1]!];
    return isAsked.subarray(from, to).reduce((count, one) => count + one, 0);
  });
}
