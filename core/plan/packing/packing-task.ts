import type { Rectangle } from "./free-rectangles.ts";

/** Size of a piece or of a platform, mm. */
export interface Size {
  readonly x: number;
  readonly y: number;
}

/** Place of one piece: its lower left corner on the platform, mm, and whether it is turned by 90 degrees. */
export interface PlacedPiece {
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/** Every piece lies on its longer side; it is enlarged by the gap, and the platform too: enlarged pieces may touch. */
export interface PackingTask {
  readonly sizes: readonly Size[];
  readonly whole: Rectangle;
}

/** The part of the platform that a placed piece takes. */
export function covered({ x, y }: Size, place: PlacedPiece): Rectangle {
  return { x: place.x, y: place.y, width: place.turned ? y : x, height: place.turned ? x : y };
}

/** How a piece can differ when it is turned: a square not at all. */
export function turnsOf({ x, y }: Size): readonly boolean[] {
  return x === y ? STRAIGHT : BOTH_WAYS;
}

const STRAIGHT = [false] as const;
const BOTH_WAYS = [false, true] as const;
