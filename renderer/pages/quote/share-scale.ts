/** A straight scale from values to places in %, 0 at the least of its values and 100 at the most. */
interface ShareScale {
  readonly low: number;
  readonly high: number;
  /** values beyond the ends are held there */
  readonly pct: (value: number) => number;
}

/** Room at either end, of the span. */
const AIR = 0.04;

/** A scale that holds all values with some room at either end. Example: 0 and 100: 50 is at 50 %, 0 at 3.7 %. */
export function shareScale(values: readonly number[]): ShareScale {
  const known = values.filter(Number.isFinite);
  const least = Math.min(...known);
  const most = Math.max(...known);
  if (known.length === 0) throw new RangeError("no scale without a value");
  const air = (most - least) * AIR || 1;
  const [low, high] = [least - air, most + air];
  return { low, high, pct: (value) => Math.max(0, Math.min(100, (100 * (value - low)) / (high - low))) };
}
