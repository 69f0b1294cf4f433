import { type FlatPoint, turn } from "./flat-point.ts";

/**
 * A convex polygon (counter-clockwise) with at most so many corners that encloses the given one: again and again the side is
 * taken away whose neighbours, made longer until they meet, add the least area. Of many sides only the longest in each
 * degree of direction are looked at. Example: a circle of radius 10 in 24 corners: area + 0.6 %.
 */
export function fewerCorners(polygon: readonly FlatPoint[], mostPoints: number): FlatPoint[] {
  if (mostPoints < 4)
    throw new RangeError(`a polygon around another needs at least 4 corners: ${mostPoints}`);
  let points = polygon.length > Math.max(SECTORS, mostPoints) ? longestSides(polygon) : [...polygon];
  while (points.length > mostPoints) {
    const best = cheapestSide(points);
    if (!best) return boxAround(points);
    points = points.flatMap((point, index) => {
      if (index === best.side) return [best.meeting];
      return index === (best.side + 1) % points.length ? [] : [point];
    });
  }
  return points;
}

const SECTORS = 360;

/** The polygon between the lines of the longest side in each sector of direction; it encloses the given one. */
function longestSides(points: readonly FlatPoint[]): FlatPoint[] {
  const longest = new Map<number, { side: number; lengthMm: number }>();
  points.forEach((from, side) => {
    const to = points[(side + 1) % points.length]!;
    const sector = Math.floor(((Math.atan2(to.y - from.y, to.x - from.x) / Math.PI + 1) * SECTORS) / 2);
    const lengthMm = Math.hypot(to.x - from.x, to.y - from.y);
    if (lengthMm > (longest.get(sector)?.lengthMm ?? 0)) longest.set(sector, { side, lengthMm });
  });
  const sides = [...longest.values()].map(({ side }) => side).toSorted((a, b) => a - b);
  const corners = sides.map((side, at) => {
    const before = sides.at(at - 1)!;
    const after = (index: number): FlatPoint => points[(index + 1) % points.length]!;
    if ((before + 1) % points.length === side) return points[side]!;
    return meet(points[before]!, after(before), after(side), points[side]!);
  });
  return corners.includes(null) ? boxAround(points) : corners.filter((corner) => corner !== null);
}

interface LostSide {
  readonly side: number;
  readonly meeting: FlatPoint;
  readonly addedMm2: number;
}

function cheapestSide(points: readonly FlatPoint[]): LostSide | null {
  let best: LostSide | null = null;
  const around = (index: number): FlatPoint => points[(index + points.length) % points.length]!;
  for (let side = 0; side < points.length; side++) {
    const meeting = meet(around(side - 1), around(side), around(side + 2), around(side + 1));
    if (!meeting) continue;
    const addedMm2 = Math.abs(turn(around(side), meeting, around(side + 1)));
    if (!best || addedMm2 < best.addedMm2) best = { side, meeting, addedMm2 };
  }
  return best;
}

/** Where the ray from a through b meets the ray from c through d, beyond both; null where the two spread. */
function meet(a: FlatPoint, b: FlatPoint, c: FlatPoint, d: FlatPoint): FlatPoint | null {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const vx = d.x - c.x;
  const vy = d.y - c.y;
  const cross = ux * vy - uy * vx;
  if (cross >= 0) return null;
  const beyond = ((d.x - b.x) * vy - (d.y - b.y) * vx) / cross;
  return { x: b.x + beyond * ux, y: b.y + beyond * uy };
}

/** The box along the axes, for a needle whose sides do not meet. */
function boxAround(points: readonly FlatPoint[]): FlatPoint[] {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  }
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}
