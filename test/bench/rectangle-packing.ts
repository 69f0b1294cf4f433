import { existsSync, readFileSync } from "node:fs";
import { packPlatform } from "../../core/plan/packing/platform-packing.ts";
import type { Size } from "../../core/plan/packing/packing-task.ts";

/**
 * Two-dimensional bin packing with turning, 250 instances: Berkey and Wang 1987, "Two-dimensional finite bin-packing
 * algorithms" (classes 1-6) and Martello and Vigo 1998, "Exact solution of the two-dimensional finite bin packing problem"
 * (classes 7-10); best known numbers of bins from the collection's own table. Read from beside the project, not part of it.
 */
export const PACKING_DATA = new URL("../../../shared/checks/rectangle-packing/", import.meta.url);

export interface PackingInstance {
  readonly id: string;
  readonly bin: Size;
  readonly items: readonly Size[];
  /** fewest bins known, turning allowed */
  readonly bestKnown: number;
}

/** The instances, or null where the data is not there. */
export function packingInstances(): PackingInstance[] | null {
  if (!existsSync(PACKING_DATA)) return null;
  const best = bestKnown();
  const raw: Record<string, { bin: [number, number]; items: [number, number][] }> = JSON.parse(
    readFileSync(new URL("instances.json", PACKING_DATA), "utf8"),
  );
  return Object.entries(raw).map(([id, { bin, items }]) => ({
    id,
    bin: { x: bin[0], y: bin[1] },
    items: items.map(([x, y]) => ({ x, y })),
    bestKnown: best.get(id) ?? Number.NaN,
  }));
}

function bestKnown(): Map<string, number> {
  const [head = "", ...rows] = readFileSync(new URL("best_known.csv", PACKING_DATA), "utf8")
    .trim()
    .split("\n");
  const column = head.split(",").indexOf("best_known_rotation");
  return new Map(rows.map((row) => [row.split(",")[0] ?? "", Number(row.split(",")[column])]));
}

/**
 * Packs an instance into few bins: pieces in one of four orders, largest first, each into the first bin that takes it with
 * all it holds already (the whole bin is packed anew). The fewest bins of the four; no more are tried once the total area
 * proves that none can be saved.
 */
export function packBins({ items, bin }: PackingInstance): Size[][] {
  const areaBound = Math.ceil(items.reduce((sum, item) => sum + areaOf(item), 0) / areaOf(bin));
  let best: Size[][] | null = null;
  for (const key of ORDERS) {
    if (best && best.length <= areaBound) break;
    const bins = firstFit(
      items.toSorted((a, b) => key(b) - key(a)),
      bin,
    );
    if (!best || bins.length < best.length) best = bins;
  }
  return best ?? [];
}

const ORDERS: readonly ((size: Size) => number)[] = [
  areaOf,
  ({ x, y }) => Math.max(x, y) * 1000 + Math.min(x, y),
  ({ x, y }) => Math.min(x, y) * 1000 + Math.max(x, y),
  ({ x, y }) => x + y,
];

function firstFit(items: readonly Size[], bin: Size): Size[][] {
  const bins: Size[][] = [];
  for (const item of items) {
    const open = bins.find(
      (held) => hasRoom(held, item, bin) && packPlatform([...held, item], bin, 0) !== null,
    );
    if (open) open.push(item);
    else bins.push([item]);
  }
  return bins;
}

function hasRoom(held: readonly Size[], item: Size, bin: Size): boolean {
  return held.reduce((sum, size) => sum + areaOf(size), areaOf(item)) <= areaOf(bin);
}

function areaOf({ x, y }: Size): number {
  return x * y;
}
