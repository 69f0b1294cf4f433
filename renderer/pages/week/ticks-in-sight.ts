import { MIN_PER_DAY } from "../../../core/units/conversions.ts";
import type { Painting } from "./paint-parts.ts";
import { minuteAt } from "./time-scale.ts";
import { type DayTick, dayTicks, hourStep, type HourTick, hourTicks } from "./time-ticks.ts";

/** The ticks over the days in sight, somewhat more than are seen. */
interface TicksInSight {
  readonly days: readonly DayTick[];
  readonly hours: readonly HourTick[];
}

const MOST_KEPT = 24;
const kept = new Map<string, TicksInSight>();

/**
 * Ticks of the days in sight. Time zones are slow to ask, and a picture that is pushed about asks for the same days again and
 * again: the last answers are kept.
 */
export function ticksInSight({ scale, widthPx, timeZone }: Painting): TicksInSight {
  const startMin = Math.floor(minuteAt(scale, 0) / MIN_PER_DAY) * MIN_PER_DAY;
  const endMin = Math.ceil(minuteAt(scale, widthPx) / MIN_PER_DAY) * MIN_PER_DAY;
  const stepH = hourStep(scale.pxPerMin);
  const key = [timeZone, startMin, endMin, stepH].join(" ");
  const known = kept.get(key);
  if (known) return known;
  const stretch = { startMin, endMin };
  const made = {
    days: dayTicks(stretch, timeZone),
    hours: stepH === null ? [] : hourTicks(stretch, timeZone, stepH),
  };
  if (kept.size >= MOST_KEPT) kept.delete(kept.keys().next().value ?? "");
  kept.set(key, made);
  return made;
}
