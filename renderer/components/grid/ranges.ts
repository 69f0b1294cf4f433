/** A rectangle of cells, both ends included; rows and columns count from 0 as shown. */
export interface CellRange {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface CellPlace {
  readonly row: number;
  readonly col: number;
}

/** The rectangle between two corners. Example: (3, 1) and (1, 2) give rows 1 to 3, columns 1 to 2. */
export function rangeBetween(a: CellPlace, b: CellPlace): CellRange {
  return {
    top: Math.min(a.row, b.row),
    left: Math.min(a.col, b.col),
    bottom: Math.max(a.row, b.row),
    right: Math.max(a.col, b.col),
  };
}

export function contains(range: CellRange, row: number, col: number): boolean {
  return row >= range.top && row <= range.bottom && col >= range.left && col <= range.right;
}

/** Rows of several rectangles, each once, from the top. */
export function rowsOf(ranges: readonly CellRange[]): number[] {
  const rows = new Set<number>();
  for (const range of ranges) for (let row = range.top; row <= range.bottom; row += 1) rows.add(row);
  return [...rows].toSorted((a, b) => a - b);
}

/** How many cells; one that lies in two rectangles counts twice. */
export function cellCount(ranges: readonly CellRange[]): number {
  return ranges.reduce(
    (sum, { top, left, bottom, right }) => sum + (bottom - top + 1) * (right - left + 1),
    0,
  );
}
