import type { Process } from "../shop/machine.ts";
import type { Measures, Part } from "../shop/part.ts";
import type { Shop } from "../shop/shop.ts";
import { type Way, waysToMake } from "./ways-to-make.ts";

/** Cheapest cost of a copy by each process; null: it cannot make the part. */
export interface ProcessCosts {
  /** quantity, or size as a multiple of the part's own */
  readonly at: number;
  readonly filament: number | null;
  readonly pellet: number | null;
}

/** Where the cheaper process changes. */
export interface Crossing {
  /** from this quantity or size on, found to the whole copy or to 1 % of the size */
  readonly from: number;
  readonly cheaper: Process;
}

/** Costs by quantity or size, and where the cheaper process changes. */
export interface Crossover {
  readonly costs: readonly ProcessCosts[];
  readonly crossings: readonly Crossing[];
}

const QUANTITIES = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
const SIZES = [0.25, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8, 4];
const SIZE_STEP = 1.01;

/**
 * Quantities from which on another process makes the copies of a part cheaper, tool paths and first set-up shared by them.
 * Example: filament up to 11 copies, pellets from 12 on. No crossing: one process is the cheaper everywhere, or the only one.
 */
export function quantityCrossover(shop: Shop, partId: string): Crossover {
  const costsAt = (quantity: number): ProcessCosts => processCosts(shop, partId, quantity, quantity);
  return crossoverOf(QUANTITIES, costsAt, (low, high) =>
    high - low > 1 ? Math.floor((low + high) / 2) : null,
  );
}

/**
 * The same by size: the part made larger or smaller alike in all directions, walls and details with it, at one quantity. The
 * standings measured on a mesh are left aside, so sizes are judged by the part's measures alone. Example: filament up to 1.6 times
 * the part's size, pellets above.
 */
export function sizeCrossover(shop: Shop, partId: string, quantity: number): Crossover {
  const costsAt = (size: number): ProcessCosts => {
    const parts = shop.parts.map((part) => (part.id === partId ? sizedPart(part, size) : part));
    return processCosts({ ...shop, parts }, partId, quantity, size);
  };
  return crossoverOf(SIZES, costsAt, (low, high) => (high / low > SIZE_STEP ? Math.sqrt(low * high) : null));
}

function crossoverOf(
  points: readonly number[],
  costsAt: (at: number) => ProcessCosts,
  between: (low: number, high: number) => number | null,
): Crossover {
  const costs = points.map(costsAt);
  const crossings = costs.slice(1).flatMap((high, index): Crossing[] => {
    const low = costs[index];
    const cheaper = cheaperOf(high);
    if (!low || !cheaper || cheaper === cheaperOf(low)) return [];
    return [{ from: firstAt(low.at, high.at, cheaper, costsAt, between), cheaper }];
  });
  return { costs, crossings };
}

/** Halves the way between two points until nothing lies between them. */
function firstAt(
  low: number,
  high: number,
  cheaper: Process,
  costsAt: (at: number) => ProcessCosts,
  between: (low: number, high: number) => number | null,
): number {
  const middle = between(low, high);
  if (middle === null) return high;
  return cheaperOf(costsAt(middle)) === cheaper
    ? firstAt(low, middle, cheaper, costsAt, between)
    : firstAt(middle, high, cheaper, costsAt, between);
}

function cheaperOf({ filament, pellet }: ProcessCosts): Process | null {
  if (filament === null && pellet === null) return null;
  return (filament ?? Infinity) <= (pellet ?? Infinity) ? "filament" : "pellet";
}

function processCosts(shop: Shop, partId: string, quantity: number, at: number): ProcessCosts {
  const { ways } = waysToMake(shop, partId, [quantity]);
  return { at, filament: cheapest(ways, "filament"), pellet: cheapest(ways, "pellet") };
}

function cheapest(ways: readonly Way[], process: Process): number | null {
  const costs = ways.flatMap((way) => (way.process === process ? (way.costs[0]?.costPerCopy ?? []) : []));
  return costs.length > 0 ? Math.min(...costs) : null;
}

function sizedPart(part: Part, size: number): Part {
  const measures = sizedMeasures(part.geometry.measures, size);
  return {
    ...part,
    geometry: { kind: "measures", measures },
    smallestFeatureMm: part.smallestFeatureMm * size,
    maxLayerHeightMm: part.maxLayerHeightMm * size,
  };
}

function sizedMeasures(measures: Measures, size: number): Measures {
  const { volumeMm3, areaMm2, boxMm, overhangAreaMm2, layers } = measures;
  return {
    volumeMm3: volumeMm3 * size ** 3,
    areaMm2: areaMm2 * size ** 2,
    boxMm: { x: boxMm.x * size, y: boxMm.y * size, z: boxMm.z * size },
    ...(overhangAreaMm2 === undefined ? {} : { overhangAreaMm2: overhangAreaMm2 * size ** 2 }),
    ...(layers === undefined
      ? {}
      : {
          layers: layers.map((layer) => ({
            zMm: layer.zMm * size,
            areaMm2: layer.areaMm2 * size ** 2,
            perimeterMm: layer.perimeterMm * size,
            islands: layer.islands,
          })),
        }),
  };
}
