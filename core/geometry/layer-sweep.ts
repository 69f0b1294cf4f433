import { FOLDED } from "./edges.ts";
import type { Mesh } from "./mesh.ts";

/**
 * Goes up through a mesh once and tells, for each height of `cutsMm` (rising), which triangles the plane there cuts: those
 * with a corner below it and one at it or above. A corner at the very height of a cut counts as above, so no plane ever
 * runs through a corner (the idea of simulation of simplicity: Edelsbrunner & Mücke 1990, from memory); a face that lies in
 * the plane is cut just below. Triangles are sorted by their first cut by counting, then each is looked at once for each
 * cut. `visit` gets the triangles in the first `count` places of an array that is used again for the next cut.
 */
export function sweepLayers(
  mesh: Mesh,
  mates: Int32Array,
  cutsMm: Float64Array,
  visit: (cut: number, triangles: Int32Array, count: number) => void,
): void {
  const { starts, sorted, lastCuts } = sortByFirstCut(mesh, mates, cutsMm);
  const open = new Int32Array(sorted.length);
  let count = 0;
  for (let cut = 0; cut < cutsMm.length; cut++) {
    for (let place = starts[cut]!; place < starts[cut + 1]!; place++) open[count++] = sorted[place]!;
    visit(cut, open, count);
    let kept = 0;
    for (let place = 0; place < count; place++) {
      const triangle = open[place]!;
      if (lastCuts[triangle]! > cut) open[kept++] = triangle;
    }
    count = kept;
  }
}

interface SortedTriangles {
  /** where the triangles of each first cut begin in `sorted`; one entry more than cuts */
  readonly starts: Int32Array;
  readonly sorted: Int32Array;
  /** last cut through each triangle */
  readonly lastCuts: Int32Array;
}

function sortByFirstCut(mesh: Mesh, mates: Int32Array, cutsMm: Float64Array): SortedTriangles {
  const count = mesh.triangles.length / 3;
  const firstCuts = new Int32Array(count);
  const lastCuts = new Int32Array(count);
  const starts = new Int32Array(cutsMm.length + 1);
  findCuts(mesh, cutsMm, firstCuts, lastCuts);
  for (let triangle = 0; triangle < count; triangle++) {
    if (mates[3 * triangle] === FOLDED) lastCuts[triangle] = -1;
    if (firstCuts[triangle]! <= lastCuts[triangle]!) starts[firstCuts[triangle]! + 1]!++;
  }
  for (let cut = 1; cut < starts.length; cut++) starts[cut]! += starts[cut - 1]!;
  const sorted = new Int32Array(starts.at(-1)!);
  const next = starts.slice();
  for (let triangle = 0; triangle < count; triangle++) {
    const first = firstCuts[triangle]!;
    if (first <= lastCuts[triangle]!) sorted[next[first]!++] = triangle;
  }
  return { starts, sorted, lastCuts };
}

/** First and last cut through each triangle; the first comes after the last where there is none. */
function findCuts(
  { cornersMm, triangles }: Mesh,
  cutsMm: Float64Array,
  firstCuts: Int32Array,
  lastCuts: Int32Array,
): void {
  for (let triangle = 0; triangle < firstCuts.length; triangle++) {
    const a = cornersMm[3 * triangles[3 * triangle]! + 2]!;
    const b = cornersMm[3 * triangles[3 * triangle + 1]! + 2]!;
    const c = cornersMm[3 * triangles[3 * triangle + 2]! + 2]!;
    firstCuts[triangle] = cutsUpTo(Math.min(a, b, c), cutsMm);
    lastCuts[triangle] = cutsUpTo(Math.max(a, b, c), cutsMm) - 1;
  }
}

/** How many cuts are at this height or below. The cuts are spaced evenly but for the last, so the first guess is nearly right. */
function cutsUpTo(zMm: number, cutsMm: Float64Array): number {
  const cuts = cutsMm.length;
  const stepMm = cuts > 1 ? cutsMm[1]! - cutsMm[0]! : 1;
  let count = Math.min(cuts, Math.max(0, Math.ceil((zMm - cutsMm[0]!) / stepMm)));
  while (count > 0 && cutsMm[count - 1]! > zMm) count--;
  while (count < cuts && cutsMm[count]! <= zMm) count++;
  return count;
}
