import { type RowPlaces, rowAt } from "./row-places.ts";
import { minuteAt, type TimeScale } from "./time-scale.ts";
import type { WeekBuild, WeekPicture } from "./week-picture.ts";

/** What lies under the pointer: a row, and on it perhaps a build. */
export interface Hit {
  readonly row: number | null;
  readonly build: WeekBuild | null;
  readonly atMin: number;
}

/** A bar of less than this is hit all the same, px. */
const LEAST_TARGET_PX = 6;

/** What lies at a place of the picture's body, px from its top left corner. */
export function hitAt(
  picture: WeekPicture,
  scale: TimeScale,
  rows: RowPlaces,
  place: { readonly xPx: number; readonly yPx: number },
): Hit {
  const row = rowAt(rows, place.yPx);
  const atMin = minuteAt(scale, place.xPx);
  if (row === null) return { row, build: null, atMin };
  const builds = picture.rows[row]?.builds ?? [];
  const slackMin = LEAST_TARGET_PX / 2 / scale.pxPerMin;
  const next = firstEndingAfter(builds, atMin - slackMin);
  const build = builds[next];
  const isHit = build !== undefined && build.setUpMin <= atMin + slackMin;
  return { row, build: isHit ? build : null, atMin };
}

/**
 * Place of the first build that ends after a minute, by halving; builds of one machine follow one another.
 * Example: builds that end at 10, 20 and 30: after 20 gives 2.
 */
export function firstEndingAfter(builds: readonly { readonly endMin: number }[], atMin: number): number {
  let low = 0;
  let high = builds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((builds[middle]?.endMin ?? Infinity) <= atMin) low = middle + 1;
    else high = middle;
  }
  return low;
}
