/** Two amounts of money in major units are the same below this difference (far under a cent). */
export const MONEY_TOLERANCE = 1e-6;

/** Relative tolerance for values that come out of a linear program. */
export const LP_TOLERANCE = 1e-6;

/**
 * Says whether two floats agree within an absolute or a relative tolerance, whichever is wider.
 * Example: nearlyEqual(1e9, 1e9 + 1, 1e-6) is true, nearlyEqual(1, 1.1, 1e-6) is false.
 */
export function nearlyEqual(a: number, b: number, tolerance: number): boolean {
  return Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(a), Math.abs(b));
}
