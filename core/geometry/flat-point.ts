/** A point seen from above, mm. */
export interface FlatPoint {
  readonly x: number;
  readonly y: number;
}

/** Twice the area of the triangle a, b, c: positive where it turns left, that is counter-clockwise. Example: (0,0), (1,0), (0,1) gives 1. */
export function turn(a: FlatPoint, b: FlatPoint, c: FlatPoint): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
