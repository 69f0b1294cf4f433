import type { Outlines } from "./outlines.ts";

/** Squares over the outlines of a cut, each with the outline edges that touch it. Edge i goes from point i to the next of its loop. */
export interface OutlineGrid {
  readonly minX: number;
  readonly minY: number;
  readonly sideMm: number;
  readonly columns: number;
  readonly rows: number;
  /** where the edges of each square begin in `edges`; one entry more than squares */
  readonly starts: Int32Array;
  readonly edges: Int32Array;
  /** end point of each edge */
  readonly ends: Int32Array;
  /** loop of each edge */
  readonly loopOf: Int32Array;
}

/**
 * Sorts the edges of the outlines into about as many squares as there are edges, so that a ray meets few of them. An edge is
 * entered, row by row, in the squares it goes through. Example: 100 edges around a square of 50 mm: squares of 5 mm.
 */
export function makeOutlineGrid(outlines: Outlines): OutlineGrid {
  const points = outlines.starts[outlines.loops]!;
  const { ends, loopOf } = endsOf(outlines, points);
  const frame = frameOf(outlines, points);
  const starts = new Int32Array(frame.columns * frame.rows + 1);
  forEachSquare(outlines, frame, ends, (square) => starts[square + 1]!++);
  for (let square = 1; square < starts.length; square++) starts[square]! += starts[square - 1]!;
  const edges = new Int32Array(starts.at(-1)!);
  const next = starts.slice();
  forEachSquare(outlines, frame, ends, (square, edge) => {
    edges[next[square]!++] = edge;
  });
  return { ...frame, starts, edges, ends, loopOf };
}

function endsOf({ loops, starts }: Outlines, points: number): { ends: Int32Array; loopOf: Int32Array } {
  const ends = new Int32Array(points);
  const loopOf = new Int32Array(points);
  for (let loop = 0; loop < loops; loop++) {
    const first = starts[loop]!;
    const last = starts[loop + 1]! - 1;
    for (let point = first; point <= last; point++) {
      ends[point] = point === last ? first : point + 1;
      loopOf[point] = loop;
    }
  }
  return { ends, loopOf };
}

type Frame = Pick<OutlineGrid, "minX" | "minY" | "sideMm" | "columns" | "rows">;

function frameOf({ xMm, yMm }: Outlines, points: number): Frame {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let point = 0; point < points; point++) {
    minX = Math.min(minX, xMm[point]!);
    maxX = Math.max(maxX, xMm[point]!);
    minY = Math.min(minY, yMm[point]!);
    maxY = Math.max(maxY, yMm[point]!);
  }
  const [width, depth] = [maxX - minX, maxY - minY];
  const sideMm = Math.max(Math.sqrt((width * depth) / points), Math.max(width, depth) / points, TINY_MM);
  const columns = Math.max(1, Math.ceil(width / sideMm));
  const rows = Math.max(1, Math.ceil(depth / sideMm));
  return { minX, minY, sideMm, columns, rows };
}

/** Keeps the squares of a cut without extent from being of no size. */
const TINY_MM = 1e-9;

function forEachSquare(
  { xMm, yMm }: Outlines,
  { minX, minY, sideMm, columns, rows }: Frame,
  ends: Int32Array,
  visit: (square: number, edge: number) => void,
): void {
  for (let edge = 0; edge < ends.length; edge++) {
    const x0 = (xMm[edge]! - minX) / sideMm;
    const y0 = (yMm[edge]! - minY) / sideMm;
    const x1 = (xMm[ends[edge]!]! - minX) / sideMm;
    const y1 = (yMm[ends[edge]!]! - minY) / sideMm;
    const [low, high] = y0 < y1 ? [y0, y1] : [y1, y0];
    const slope = y1 === y0 ? 0 : (x1 - x0) / (y1 - y0);
    const lastRow = within(high + SLACK, rows);
    for (let row = within(low - SLACK, rows); row <= lastRow; row++) {
      const xIn = y1 === y0 ? x0 : x0 + slope * (Math.max(low, row - SLACK) - y0);
      const xOut = y1 === y0 ? x1 : x0 + slope * (Math.min(high, row + 1 + SLACK) - y0);
      const lastColumn = within(Math.max(xIn, xOut) + SLACK, columns);
      for (let column = within(Math.min(xIn, xOut) - SLACK, columns); column <= lastColumn; column++) {
        visit(row * columns + column, edge);
      }
    }
  }
}

/** Rounding at the border of a square, as a share of its side: an edge there is entered on both sides. */
const SLACK = 1e-6;

function within(place: number, count: number): number {
  return Math.max(0, Math.min(count - 1, Math.floor(place)));
}
