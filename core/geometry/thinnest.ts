import { castThrough } from "./cast.ts";
import { type OutlineGrid, makeOutlineGrid } from "./outline-grid.ts";
import type { Outlines } from "./outlines.ts";

/**
 * Thinnest region of a cut, mm. Points spread evenly over the outlines (256 steps in all, at least 2 on each loop) look
 * straight into the material; where the outline at the other side faces them within 30 degrees, the two are a wall and the
 * distance is its thickness. An island without any wall, such as a triangle, counts with four times its area over its
 * outline, which is the diameter of the inscribed circle wherever all sides touch it. Thin spots shorter than 1/256 of the
 * outlines may be missed. Loops shorter than 8 x `leastMm` are dust and do not count. 0 where nothing is cut.
 * Example: a plate 60 x 3: 3 mm. A disc of radius 10: 20 mm. A tube of radii 8 and 10: 2 mm.
 */
export function thinnestMm(outlines: Outlines, leastMm: number): number {
  const { loops, areaMm2, lengthMm } = outlines;
  const totalMm = lengthMm.subarray(0, loops).reduce((sum, length) => sum + length, 0);
  if (!(totalMm > 0)) return 0;
  const grid = makeOutlineGrid(outlines);
  const hasWall = new Uint8Array(loops);
  let thinnest = Infinity;
  for (let loop = 0; loop < loops; loop++) {
    if (isDust(outlines, loop, leastMm)) continue;
    const looks = Math.max(LEAST_LOOKS, Math.ceil((LOOKS * lengthMm[loop]!) / totalMm));
    thinnest = Math.min(
      thinnest,
      thinnestWallMm(outlines, grid, loop, lengthMm[loop]! / looks, leastMm, hasWall),
    );
  }
  for (let loop = 0; loop < loops; loop++) {
    if (areaMm2[loop]! <= 0 || hasWall[loop] === 1 || isDust(outlines, loop, leastMm)) continue;
    thinnest = Math.min(thinnest, (4 * areaMm2[loop]!) / lengthMm[loop]!);
  }
  return Number.isFinite(thinnest) ? thinnest : 0;
}

const LOOKS = 256;
const LEAST_LOOKS = 2;

/** Cosine of 30 degrees. */
const FACING = Math.cos(Math.PI / 6);

/** Says whether a loop is no more than noise of the file: too short, or a line there and back from a lone triangle. Example: 2 points are dust. */
export function isDust({ starts, lengthMm }: Outlines, loop: number, leastMm: number): boolean {
  return lengthMm[loop]! < 8 * leastMm || starts[loop + 1]! - starts[loop]! < 3;
}

/**
 * Looks into the material from points of a loop: evenly over each edge longer than the step, wherever the loop begins, and
 * from the middles of shorter edges, a step apart. An edge that is only noise is passed over.
 */
function thinnestWallMm(
  outlines: Outlines,
  grid: OutlineGrid,
  loop: number,
  stepMm: number,
  leastMm: number,
  hasWall: Uint8Array,
): number {
  let passedMm = stepMm / 2;
  let thinnest = Infinity;
  for (let edge = outlines.starts[loop]!; edge < outlines.starts[loop + 1]!; edge++) {
    const edgeMm = edgeLengthMm(outlines, grid, edge);
    const isShort = edgeMm < stepMm;
    if (isShort) passedMm += edgeMm;
    if ((isShort && passedMm < stepMm) || edgeMm < leastMm) continue;
    if (isShort) passedMm -= stepMm;
    const looks = Math.ceil(edgeMm / stepMm);
    for (let look = 0; look < looks; look++) {
      const wallMm = wallAt(outlines, grid, edge, (look + 0.5) / looks, leastMm, hasWall);
      if (wallMm < thinnest) thinnest = wallMm;
    }
  }
  return thinnest;
}

function edgeLengthMm({ xMm, yMm }: Outlines, { ends }: OutlineGrid, edge: number): number {
  const dx = xMm[ends[edge]!]! - xMm[edge]!;
  const dy = yMm[ends[edge]!]! - yMm[edge]!;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Thickness of the wall at a place on an edge; Infinity where the other side does not face it. */
function wallAt(
  outlines: Outlines,
  grid: OutlineGrid,
  edge: number,
  share: number,
  leastMm: number,
  hasWall: Uint8Array,
): number {
  const { xMm, yMm, sides } = outlines;
  const dx = xMm[grid.ends[edge]!]! - xMm[edge]!;
  const dy = yMm[grid.ends[edge]!]! - yMm[edge]!;
  const scale = sides[grid.loopOf[edge]!]! / Math.sqrt(dx * dx + dy * dy);
  const x = xMm[edge]! + share * dx;
  const y = yMm[edge]! + share * dy;
  const exit = castThrough(outlines, grid, x, y, -dy * scale, dx * scale, leastMm);
  if (!exit || exit.squareness < FACING) return Infinity;
  hasWall[grid.loopOf[edge]!] = 1;
  hasWall[grid.loopOf[exit.edge]!] = 1;
  return exit.distanceMm;
}
