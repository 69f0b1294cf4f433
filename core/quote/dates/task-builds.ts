import { drawKey } from "./keyed-draws.ts";
import type { PlacedBuild } from "./placed-builds.ts";
import type { TaskBuilds, TaskOrder } from "./simulation-task.ts";

/** Writes builds into typed arrays, in their order. Example: 2 builds of one order each give `orderFrom` 0, 1, 2. */
export function buildRows(builds: readonly PlacedBuild[], orders: readonly TaskOrder[]): TaskBuilds {
  const column = (valueOf: (placed: PlacedBuild) => number): Float64Array =>
    Float64Array.from(builds, valueOf);
  const keys = builds.map(({ name }) => drawKey(name));
  return {
    ids: builds.map(({ build }) => build.id),
    setUpAtMin: column(({ setUpStartMin }) => setUpStartMin),
    earliestMin: column(({ earliestMin }) => earliestMin),
    setUpMin: column(setUpOf),
    againMin: column((placed) => Math.min(setUpOf(placed), Math.ceil(placed.machine.setUpMin))),
    runMin: column(runOf),
    fixedMin: column((placed) =>
      Math.min(runOf(placed), placed.machine.warmUpMin + placed.machine.coolDownMin),
    ),
    unloadAtMin: column(({ unloadStartMin }) => unloadStartMin),
    begunMin: column(({ build, printStartMin }) => (build.state === "running" ? printStartMin : NaN)),
    fixed: Uint8Array.from(builds, ({ build }) => (build.state === "planned" ? 0 : 1)),
    keyA: Int32Array.from(keys, ({ a }) => a),
    keyB: Int32Array.from(keys, ({ b }) => b),
    ...orderRows(builds, orders),
  };
}

function setUpOf({ setUpStartMin, printStartMin }: PlacedBuild): number {
  return Math.max(0, printStartMin - setUpStartMin);
}

function runOf({ printStartMin, printEndMin }: PlacedBuild): number {
  return Math.max(0, printEndMin - printStartMin);
}

function orderRows(
  builds: readonly PlacedBuild[],
  orders: readonly TaskOrder[],
): Pick<TaskBuilds, "orderFrom" | "orderIndex"> {
  const places = new Map(orders.map(({ orderId }, index) => [orderId, index]));
  const lists = builds.map(({ build }) => [
    ...new Set(build.items.map(({ orderId }) => places.get(orderId) ?? -1)),
  ]);
  const orderFrom = new Int32Array(builds.length + 1);
  lists.forEach((list, index) => {
    orderFrom[index + 1] = orderFrom[index]! + list.length;
  });
  return { orderFrom, orderIndex: Int32Array.from(lists.flat()) };
}
