import type { Stretch } from "../../../core/plan/plan-problem.ts";

/** The part of the time axis that is in sight: its first minute (epoch, may be a fraction) and how long one minute is drawn. */
export interface TimeScale {
  readonly fromMin: number;
  readonly pxPerMin: number;
}

/** Closest look: one hour over 480 px. */
const MOST_PX_PER_MIN = 8;
/** One year over about 1000 px. */
const LEAST_PX_PER_MIN = 0.002;

/** Where a minute lies, px from the left edge. Example: 60 min after the first at 2 px a minute: 120. */
export function xOf(scale: TimeScale, atMin: number): number {
  return (atMin - scale.fromMin) * scale.pxPerMin;
}

/** The minute at a place, the inverse of `xOf`. Example: 120 px at 2 px a minute: 60 min after the first. */
export function minuteAt(scale: TimeScale, xPx: number): number {
  return scale.fromMin + xPx / scale.pxPerMin;
}

/** A stretch over a width, with a little air on both sides. Example: 100 min over 104 px leave 2 px on each side. */
export function fitted(stretch: Stretch, widthPx: number): TimeScale {
  const AIR = 0.02;
  const lengthMin = Math.max(1, stretch.endMin - stretch.startMin);
  const pxPerMin = withinLimits(Math.max(1, widthPx) / (lengthMin * (1 + 2 * AIR)));
  return { fromMin: stretch.startMin - AIR * lengthMin, pxPerMin };
}

/** Closer (factor above 1) or farther; what lies under `xPx` stays there. Example: factor 2 at 0 px keeps the first minute. */
export function zoomed(scale: TimeScale, factor: number, xPx: number): TimeScale {
  const pxPerMin = withinLimits(scale.pxPerMin * factor);
  return { fromMin: minuteAt(scale, xPx) - xPx / pxPerMin, pxPerMin };
}

/** The picture pushed to the right by so many px, so that earlier times come into sight. */
export function panned(scale: TimeScale, byPx: number): TimeScale {
  return { ...scale, fromMin: scale.fromMin - byPx / scale.pxPerMin };
}

/** The same scale, kept where at least a part of `bounds` is in sight. Example: 10 days past the end comes back to it. */
export function heldTo(scale: TimeScale, bounds: Stretch, widthPx: number): TimeScale {
  const SEEN = 0.15;
  const inSightMin = widthPx / scale.pxPerMin;
  const least = bounds.startMin - inSightMin * (1 - SEEN);
  const most = bounds.endMin - inSightMin * SEEN;
  return { ...scale, fromMin: Math.min(most, Math.max(least, scale.fromMin)) };
}

/** The scale moved just so far that a stretch is in sight; where it is longer than the picture, its start. */
export function shifted(scale: TimeScale, stretch: Stretch, widthPx: number): TimeScale {
  const EDGE_PX = 24;
  const [left, right] = [xOf(scale, stretch.startMin), xOf(scale, stretch.endMin)];
  if (left < EDGE_PX) return panned(scale, EDGE_PX - left);
  if (right <= widthPx - EDGE_PX) return scale;
  return panned(scale, -Math.min(left - EDGE_PX, right - (widthPx - EDGE_PX)));
}

function withinLimits(pxPerMin: number): number {
  return Math.min(MOST_PX_PER_MIN, Math.max(LEAST_PX_PER_MIN, pxPerMin));
}
