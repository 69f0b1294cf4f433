/** A scale on which equal ratios are equally wide. */
export interface LogScale {
  readonly low: number;
  readonly high: number;
  /** place of a value, 0 at `low`, 1 at `high`; values beyond are held at the ends */
  at(value: number): number;
  /** values to name on an axis: 1, 2 and 5 of each power of ten, fewer on a wide scale */
  readonly ticks: readonly number[];
}

/**
 * A logarithmic scale that holds all values with some room at either end. Values must be above 0.
 * Example: 20 and 120 give 15.2 to 158 with ticks at 20, 50 and 100; 20 is at 0.12 of it.
 */
export function logScale(values: readonly number[]): LogScale {
  const least = Math.min(...values);
  const most = Math.max(...values);
  if (!(least > 0 && Number.isFinite(most))) throw new RangeError(`no log scale: ${least} to ${most}`);
  const missing = Math.max(1, LEAST_RATIO / (most / least));
  const low = least / (ROOM * Math.sqrt(missing));
  const high = most * ROOM * Math.sqrt(missing);
  const at = (value: number): number =>
    Math.min(1, Math.max(0, Math.log(value / low) / Math.log(high / low)));
  return { low, high, at, ticks: ticksBetween(low, high) };
}

/** A scale is at least this wide, highest over lowest, before the room at its ends. */
const LEAST_RATIO = 4;
const ROOM = 1.315;

function ticksBetween(low: number, high: number): number[] {
  const decades = Math.log10(high / low);
  const steps = decades > MANY_DECADES ? [1] : [1, 2, 5];
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(low)); 10 ** power <= high; power += 1) {
    ticks.push(...steps.map((step) => Number(`${step}e${power}`)));
  }
  return ticks.filter((tick) => tick >= low && tick <= high);
}

const MANY_DECADES = 3;

/**
 * Evenly spaced round numbers from 0 up to a value, about so many. Example: 450 and 5 give 0, 100, 200, 300, 400.
 */
export function roundSteps(to: number, about: number): number[] {
  const rough = to / about;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step =
    [1, 2, 5, 10].map((factor) => factor * power).find((size) => size >= rough * 0.75) ?? 10 * power;
  const count = Math.floor(to / step + 1e-9);
  return Array.from({ length: count + 1 }, (_, index) => Number((index * step).toPrecision(6)));
}
