/** A column's width as somebody set it, or as it usually is, px. */
export interface WantedWidth {
  readonly widthPx: number;
  readonly isSet: boolean;
}

/** No column grows beyond this many times its usual width: numbers far apart are hard to read together. */
const MOST_GROWTH = 1.75;

/**
 * Widths in the room that there is: columns that nobody has set share what is to spare in proportion to their usual widths;
 * where room is short all keep their widths and the grid scrolls. Whole px, never more in all than the room.
 * Example: 100 and 200 in a room of 450: 150 and 300; with the first set: 100 and 350.
 */
export function spreadWidths(columns: readonly WantedWidth[], roomPx: number): number[] {
  const sumOf = (wanted: readonly WantedWidth[]): number =>
    wanted.reduce((sum, { widthPx }) => sum + widthPx, 0);
  const setPx = sumOf(columns.filter(({ isSet }) => isSet));
  const freePx = sumOf(columns.filter(({ isSet }) => !isSet));
  const growth = freePx > 0 ? Math.min(MOST_GROWTH, Math.max(1, (roomPx - setPx) / freePx)) : 1;
  return columns.map(({ widthPx, isSet }) =>
    isSet || growth === 1 ? widthPx : Math.floor(widthPx * growth),
  );
}
