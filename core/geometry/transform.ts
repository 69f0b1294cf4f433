import { decimalOfText } from "./decimal.ts";

/**
 * Where a body is put: x' = x m[0] + y m[3] + z m[6] + m[9], y' and z' with the next numbers. Points are rows, as in the 3MF
 * core specification (3D matrices), so what is done first stands left in a product.
 */
export type Transform = readonly number[];

const NUMBERS = 12;

export const UNMOVED: Transform = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];

/** Reads the twelve numbers of a transform attribute, or null where they are not twelve numbers. */
export function readTransform(text: string): Transform | null {
  const words = text.trim().split(/\s+/);
  if (words.length !== NUMBERS) return null;
  const numbers = words.map((word) => decimalOfText(word) ?? NaN);
  return numbers.every(Number.isFinite) ? numbers : null;
}

/** First one transform, then another. Example: moving by (1,0,0), then doubling, moves the origin to (2,0,0). */
export function thenTransform(first: Transform, second: Transform): Transform {
  return UNMOVED.map((_, place) => {
    const row = 3 * Math.floor(place / 3);
    const column = place % 3;
    const [a = 0, b = 0, c = 0] = first.slice(row, row + 3);
    const moved = row === 9 ? (second[9 + column] ?? 0) : 0;
    return a * (second[column] ?? 0) + b * (second[3 + column] ?? 0) + c * (second[6 + column] ?? 0) + moved;
  });
}

/** By how much a transform multiplies volumes; below 0 it mirrors, 0 flattens. Example: doubling all sides gives 8. */
export function volumeFactor(transform: Transform): number {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = transform;
  return a * (e * i - f * h) + b * (f * g - d * i) + c * (d * h - e * g);
}
