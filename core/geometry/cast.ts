import type { OutlineGrid } from "./outline-grid.ts";
import type { Outlines } from "./outlines.ts";

/** Where a ray through the material of a cut comes out. */
interface Exit {
  readonly distanceMm: number;
  /** edge of the outline at which it comes out */
  readonly edge: number;
  /** cosine between the ray and the way out of the material there: 1 where the outline lies square across */
  readonly squareness: number;
}

/**
 * Sends a ray from a point on an outline into the material (ux, uy: unit vector) and finds the nearest edge at which it comes
 * out, farther than `leastMm`. It goes from square to square (Amanatides & Woo 1987, from memory) and stops at the first
 * hit. Edges at which it would enter material, as where two bodies overlap, do not count; the overlap itself does.
 * Example: from the middle of a side of a square of 10 mm: 10 mm, squareness 1.
 */
export function castThrough(
  outlines: Outlines,
  grid: OutlineGrid,
  x: number,
  y: number,
  ux: number,
  uy: number,
  leastMm: number,
): Exit | null {
  const { sideMm, columns, rows } = grid;
  let column = clamp(Math.floor((x - grid.minX) / sideMm), columns);
  let row = clamp(Math.floor((y - grid.minY) / sideMm), rows);
  const stepX = ux > 0 ? 1 : -1;
  const stepY = uy > 0 ? 1 : -1;
  const acrossMm = sideMm / Math.abs(ux);
  const alongMm = sideMm / Math.abs(uy);
  let toColumnMm = (grid.minX + (column + (ux > 0 ? 1 : 0)) * sideMm - x) / ux;
  let toRowMm = (grid.minY + (row + (uy > 0 ? 1 : 0)) * sideMm - y) / uy;
  if (ux === 0) toColumnMm = Infinity;
  if (uy === 0) toRowMm = Infinity;
  let best: Exit | null = null;
  while (column >= 0 && row >= 0 && column < columns && row < rows) {
    best = nearestIn(outlines, grid, row * columns + column, x, y, ux, uy, leastMm, best);
    const leftMm = Math.min(toColumnMm, toRowMm);
    if (best && best.distanceMm <= leftMm) return best;
    if (toColumnMm <= toRowMm) {
      column += stepX;
      toColumnMm += acrossMm;
    } else {
      row += stepY;
      toRowMm += alongMm;
    }
  }
  return best;
}

function clamp(place: number, count: number): number {
  return Math.max(0, Math.min(count - 1, place));
}

function nearestIn(
  { xMm, yMm, sides }: Outlines,
  { starts, edges, ends, loopOf }: OutlineGrid,
  square: number,
  x: number,
  y: number,
  ux: number,
  uy: number,
  leastMm: number,
  known: Exit | null,
): Exit | null {
  let best = known;
  for (let place = starts[square]!; place < starts[square + 1]!; place++) {
    const edge = edges[place]!;
    const fromX = xMm[edge]! - x;
    const fromY = yMm[edge]! - y;
    const vx = xMm[ends[edge]!]! - xMm[edge]!;
    const vy = yMm[ends[edge]!]! - yMm[edge]!;
    const cross = ux * vy - uy * vx;
    if (cross * sides[loopOf[edge]!]! <= 0) continue;
    const share = (fromX * uy - fromY * ux) / cross;
    if (share < -SLACK || share > 1 + SLACK) continue;
    const distanceMm = (fromX * vy - fromY * vx) / cross;
    if (distanceMm < leastMm || (best && distanceMm >= best.distanceMm)) continue;
    best = { distanceMm, edge, squareness: Math.abs(cross) / Math.sqrt(vx * vx + vy * vy) };
  }
  return best;
}

/** A ray must not slip through between two edges that meet, as a share of an edge. */
const SLACK = 1e-9;
