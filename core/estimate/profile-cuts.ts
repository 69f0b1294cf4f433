import { MOST_CUTS } from "../shop/standing.ts";
import type { MeasuredCut } from "../shop/standing.ts";

/** Fine cuts through a body, evenly spaced over its height, as `layerProfile` of the geometry gives them. */
export interface FineCuts {
  readonly areaMm2: ArrayLike<number>;
  readonly perimeterMm: ArrayLike<number>;
  readonly islands: ArrayLike<number>;
  readonly holes: ArrayLike<number>;
  readonly corners: ArrayLike<number>;
  readonly thinnestMm: ArrayLike<number>;
}

/** Fine cuts that differ less than this from the mean of their band are put together at once. */
const EQUAL = 0.02;
const COARSER = 1.5;
/** Share of the largest cut below which differences no longer count in full. */
const FLOOR = 0.02;
/** What another island or hole more or less counts, and another corner as a share of all. */
const LOOP_DIFFERS = 0.05;
const CORNERS_DIFFER = 0.25;

/**
 * Puts fine cuts, evenly spaced over a height, together into at most 200 bands of height in which the cut is nearly the same: within
 * 2 %, or as much more as 200 bands ask for. Areas and outlines are means, so that volume and surface stay what they are.
 * Example: 1000 cuts of 2400 mm2 through a box 20 mm high give one band up to 20 mm.
 */
export function bandsOf(fine: FineCuts, heightMm: number): MeasuredCut[] {
  const count = fine.areaMm2.length;
  let tolerance = EQUAL;
  let ends = endsOf(fine, tolerance);
  while (ends.length > MOST_CUTS) {
    tolerance *= COARSER;
    ends = endsOf(fine, tolerance);
  }
  return ends.map((end, place) => band(fine, ends[place - 1] ?? 0, end, (end / count) * heightMm));
}

/** Numbers of the fine cuts before which a new band begins, and the last one's end. */
function endsOf(fine: FineCuts, tolerance: number): number[] {
  const count = fine.areaMm2.length;
  const least = { areaMm2: FLOOR * largest(fine.areaMm2), perimeterMm: FLOOR * largest(fine.perimeterMm) };
  const ends: number[] = [];
  let first = 0;
  let [areaSum, perimeterSum] = [0, 0];
  for (let at = 0; at < count; at++) {
    const within = at - first;
    if (within > 0) {
      const area = differs(fine.areaMm2[at]!, areaSum / within, least.areaMm2);
      const outline = differs(fine.perimeterMm[at]!, perimeterSum / within, least.perimeterMm);
      const loops = hasSameLoops(fine, at, first) ? 0 : LOOP_DIFFERS;
      const corners = CORNERS_DIFFER * differs(fine.corners[at]!, fine.corners[first]!, 1);
      if (Math.max(area, outline, loops, corners) > tolerance) {
        ends.push(at);
        first = at;
        [areaSum, perimeterSum] = [0, 0];
      }
    }
    areaSum += fine.areaMm2[at]!;
    perimeterSum += fine.perimeterMm[at]!;
  }
  return [...ends, count];
}

function hasSameLoops({ islands, holes }: FineCuts, a: number, b: number): boolean {
  return islands[a] === islands[b] && holes[a] === holes[b];
}

function differs(value: number, mean: number, least: number): number {
  return value === mean ? 0 : Math.abs(value - mean) / (mean + least);
}

function largest(values: ArrayLike<number>): number {
  let most = 0;
  for (let at = 0; at < values.length; at++) most = Math.max(most, values[at]!);
  return most;
}

function band(fine: FineCuts, from: number, to: number, topMm: number): MeasuredCut {
  let [areaSum, perimeterSum, cornerSum] = [0, 0, 0];
  let [islands, holes] = [0, 0];
  let thinnestMm = Infinity;
  for (let at = from; at < to; at++) {
    areaSum += fine.areaMm2[at]!;
    perimeterSum += fine.perimeterMm[at]!;
    cornerSum += fine.corners[at]!;
    islands = Math.max(islands, fine.islands[at]!);
    holes = Math.max(holes, fine.holes[at]!);
    if (fine.thinnestMm[at]! > 0) thinnestMm = Math.min(thinnestMm, fine.thinnestMm[at]!);
  }
  const count = to - from;
  return {
    zMm: rounded(topMm),
    areaMm2: rounded(areaSum / count),
    perimeterMm: rounded(perimeterSum / count),
    islands,
    holes,
    corners: Math.round(cornerSum / count),
    thinnestMm: Number.isFinite(thinnestMm) ? rounded(thinnestMm) : 0,
  };
}

/** To seven digits: finer than a file's coordinates, and short in a document. Example: 2400.00000001 gives 2400. */
export function rounded(value: number): number {
  return Number(value.toPrecision(7));
}
