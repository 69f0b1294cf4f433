import type { FlatPoint } from "./flat-point.ts";

/** A convex footprint turned about the vertical, and the box it then fills. */
interface TurnedBox {
  /** counter-clockwise, from 0 to under 180 */
  readonly angleDeg: number;
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * The turn about the vertical at which a convex footprint fits into x by y; null where none does. With a side along an axis
 * if it fits so, in the smallest such box (without limits that is the smallest box of all: Freeman & Shapira 1975, from
 * memory). Otherwise only turns are left at which a width is just the room: between two angles with a side along an axis
 * both widths are arcs of sine curves, so what fits, if anything, reaches up to such a turn.
 * Example: a rod 120 x 5 fits 100 x 100 turned by about 36 degrees, not straight.
 */
export function fitsRotated(hull: readonly FlatPoint[], x: number, y: number): TurnedBox | null {
  const alongSides = anglesAlongSides(hull).map((angle) => boxAt(hull, angle));
  const best = smallestWithin(alongSides, x, y);
  if (best) return best;
  const narrowest = Math.min(...alongSides.map(({ xMm }) => xMm));
  if (narrowest > Math.min(x, y) + SLACK_MM) return null;
  const justFilling = anglesOfSpans(hull, x, y).map((angle) => boxAt(hull, angle));
  return smallestWithin(justFilling, x, y);
}

function smallestWithin(boxes: readonly TurnedBox[], x: number, y: number): TurnedBox | null {
  let best: TurnedBox | null = null;
  for (const box of boxes) {
    if (box.xMm > x + SLACK_MM || box.yMm > y + SLACK_MM) continue;
    if (!best || isSmaller(box, best)) best = box;
  }
  return best;
}

/** Floating-point dust: a box may be this much larger than the room, mm. */
const SLACK_MM = 1e-6;

/** Clearly smaller, or as small with less of a turn. */
function isSmaller(box: TurnedBox, best: TurnedBox): boolean {
  const areaMm2 = box.xMm * box.yMm;
  const bestMm2 = best.xMm * best.yMm;
  const dustMm2 = 1e-9 * bestMm2;
  return areaMm2 < bestMm2 - dustMm2 || (areaMm2 <= bestMm2 + dustMm2 && box.angleDeg < best.angleDeg);
}

function boxAt(hull: readonly FlatPoint[], angle: number): TurnedBox {
  return {
    angleDeg: (angle * 180) / Math.PI,
    xMm: widthMm(hull, Math.cos(angle), -Math.sin(angle)),
    yMm: widthMm(hull, Math.sin(angle), Math.cos(angle)),
  };
}

/** Extent of the points along a unit vector, mm. */
function widthMm(hull: readonly FlatPoint[], ux: number, uy: number): number {
  let least = Infinity;
  let most = -Infinity;
  for (const { x, y } of hull) {
    const reach = ux * x + uy * y;
    least = Math.min(least, reach);
    most = Math.max(most, reach);
  }
  return most - least;
}

/** Angles at which a side lies along an axis, and those without a turn and with a quarter. */
function anglesAlongSides(hull: readonly FlatPoint[]): number[] {
  const angles = [0, Math.PI / 2];
  hull.forEach((from, index) => {
    const to = hull[(index + 1) % hull.length]!;
    const side = Math.atan2(to.y - from.y, to.x - from.x);
    angles.push(halfTurn(-side), halfTurn(Math.PI / 2 - side));
  });
  return angles;
}

function anglesOfSpans(hull: readonly FlatPoint[], x: number, y: number): number[] {
  return hull.flatMap((from, index) =>
    hull.slice(index + 1).flatMap((to) => anglesOfSpan(to.x - from.x, to.y - from.y, x, y).map(halfTurn)),
  );
}

/** Angles at which the distance between two points, seen along x or y, is just the room. */
function anglesOfSpan(dx: number, dy: number, x: number, y: number): number[] {
  const length = Math.hypot(dx, dy);
  const along = Math.atan2(dy, dx);
  const angles: number[] = [];
  if (x <= length) angles.push(Math.acos(x / length) - along, -Math.acos(x / length) - along);
  if (y <= length) angles.push(Math.asin(y / length) - along, Math.PI - Math.asin(y / length) - along);
  return angles;
}

/** The same turn from 0 to under half a turn: a box looks the same after half a turn. */
function halfTurn(angle: number): number {
  const turned = angle % Math.PI;
  const positive = turned < 0 ? turned + Math.PI : turned;
  return positive > Math.PI - 1e-12 || positive < 1e-12 ? 0 : positive;
}
