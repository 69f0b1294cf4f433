import { type FlatPoint, turn } from "./flat-point.ts";
import { usedCorners } from "./mesh-box.ts";
import type { Mesh } from "./mesh.ts";

/**
 * Convex hull of a body's corners seen from above, counter-clockwise from its leftmost point (monotone chain: Andrew 1979,
 * from memory). Points well inside are dropped first: those within the polygon of the outermost points in 16 directions
 * (the idea of Akl & Toussaint 1978, from memory), so the sort meets few. Example: a cube of 1 mm gives 4 points.
 */
export function convexHull(mesh: Mesh): FlatPoint[] {
  const points = outerPoints(mesh).toSorted((a, b) => a.x - b.x || a.y - b.y);
  const lower = halfHull(points);
  const upper = halfHull(points.toReversed());
  if (lower.length < 2) return lower;
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function halfHull(points: readonly FlatPoint[]): FlatPoint[] {
  const hull: FlatPoint[] = [];
  for (const point of points) {
    while (hull.length > 1 && turn(hull.at(-2)!, hull.at(-1)!, point) <= 0) hull.pop();
    const last = hull.at(-1);
    if (last?.x !== point.x || last.y !== point.y) hull.push(point);
  }
  return hull;
}

/** Corners that triangles use, but for those inside the polygon of the outermost ones; most of them lie in its circle. */
function outerPoints(mesh: Mesh): FlatPoint[] {
  const { cornersMm } = mesh;
  const isUsed = usedCorners(mesh);
  const frame = outermost(cornersMm, isUsed);
  const circle = circleWithin(frame);
  const points: FlatPoint[] = [];
  for (let corner = 0; corner < isUsed.length; corner++) {
    if (isUsed[corner] === 0) continue;
    const x = cornersMm[3 * corner]!;
    const y = cornersMm[3 * corner + 1]!;
    const fromX = x - circle.x;
    const fromY = y - circle.y;
    if (fromX * fromX + fromY * fromY < circle.radiusMm * circle.radiusMm) continue;
    if (!isInside(frame, { x, y })) points.push({ x, y });
  }
  return points;
}

/** A circle around the mean of the frame's corners that stays within its sides. */
function circleWithin(frame: readonly FlatPoint[]): FlatPoint & { radiusMm: number } {
  const x = frame.reduce((sum, point) => sum + point.x, 0) / frame.length;
  const y = frame.reduce((sum, point) => sum + point.y, 0) / frame.length;
  const fromSides = frame.map((from, side) => {
    const to = frame[(side + 1) % frame.length]!;
    const lengthMm = Math.hypot(to.x - from.x, to.y - from.y);
    return lengthMm > 0 ? turn(from, to, { x, y }) / lengthMm : Infinity;
  });
  const nearestMm = Math.min(...fromSides);
  return { x, y, radiusMm: Number.isFinite(nearestMm) ? Math.max(0, nearestMm * (1 - ROUNDING)) : 0 };
}

/** Keeps a corner on the frame itself outside the circle. */
const ROUNDING = 1e-9;

const DIRECTIONS = 16;

/** The outermost corner in each of 16 directions, counter-clockwise. */
function outermost(cornersMm: Float64Array, isUsed: Uint8Array): FlatPoint[] {
  const frame: FlatPoint[] = [];
  for (let direction = 0; direction < DIRECTIONS; direction++) {
    const angle = (2 * Math.PI * direction) / DIRECTIONS;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    let best = -Infinity;
    let bestCorner = 0;
    for (let corner = 0; corner < isUsed.length; corner++) {
      const reach = cos * cornersMm[3 * corner]! + sin * cornersMm[3 * corner + 1]!;
      if (reach <= best || isUsed[corner] === 0) continue;
      best = reach;
      bestCorner = corner;
    }
    frame.push({ x: cornersMm[3 * bestCorner]!, y: cornersMm[3 * bestCorner + 1]! });
  }
  return frame;
}

/** Says whether a point is strictly left of every side; sides of no length are left out. */
function isInside(frame: readonly FlatPoint[], point: FlatPoint): boolean {
  for (let side = 0; side < frame.length; side++) {
    const from = frame[side]!;
    const to = frame[(side + 1) % frame.length]!;
    if (from.x === to.x && from.y === to.y) continue;
    if (turn(from, to, point) <= 0) return false;
  }
  return true;
}
