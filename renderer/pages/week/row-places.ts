/** Rows of equal height under one another, scrolled by so many px. */
export interface RowPlaces {
  readonly count: number;
  readonly heightPx: number;
  readonly scrollPx: number;
}

/** Top of a row, px from the top of the picture's body. Example: row 2 of 40 px, scrolled by 10: 70. */
export function topOf(rows: RowPlaces, row: number): number {
  return row * rows.heightPx - rows.scrollPx;
}

/** The row at a height; null: above or below all of them. */
export function rowAt(rows: RowPlaces, yPx: number): number | null {
  const row = Math.floor((yPx + rows.scrollPx) / rows.heightPx);
  return row >= 0 && row < rows.count ? row : null;
}

/** First and last row (excluded) of which anything is in sight. Example: 100 rows of 40 px in 100 px: 0 to 3. */
export function rowsInSight(
  rows: RowPlaces,
  bodyPx: number,
): { readonly first: number; readonly end: number } {
  const first = Math.max(0, Math.floor(rows.scrollPx / rows.heightPx));
  return { first, end: Math.min(rows.count, Math.ceil((rows.scrollPx + bodyPx) / rows.heightPx)) };
}

/** A scroll that does not leave the rows. Example: 3 rows of 40 px in 200 px: always 0. */
export function heldScroll({ count, heightPx, scrollPx }: RowPlaces, bodyPx: number): number {
  return Math.max(0, Math.min(count * heightPx - bodyPx, scrollPx));
}

/** The scroll moved just so far that a row is in sight. */
export function scrollToRow(rows: RowPlaces, row: number, bodyPx: number): number {
  const top = topOf(rows, row);
  if (top < 0) return rows.scrollPx + top;
  const under = top + rows.heightPx - bodyPx;
  return under > 0 ? rows.scrollPx + under : rows.scrollPx;
}
