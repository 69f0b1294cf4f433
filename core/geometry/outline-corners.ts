import type { Outlines } from "./outlines.ts";

/** Corners of one loop by how far it turns there. */
export interface Corners {
  /** turns of 10 degrees or more */
  readonly all: number;
  /** those of 30 degrees or more, which are no coarse rounds */
  readonly sharp: number;
}

/**
 * Corners of one loop: points where its direction turns by 10 degrees or more, at which a head has to slow down (a finer
 * round is one line; the limit is common practice, no source), and those where it turns by 30 or more. Points nearer than `leastMm` to the one before are left
 * out: their direction is noise of the file. Example: a square with points along its sides has 4; a 64-gon has none.
 */
export function countCorners({ starts, xMm, yMm }: Outlines, loop: number, leastMm: number): Corners {
  const first = starts[loop]!;
  const end = starts[loop + 1]!;
  const x: number[] = [];
  const y: number[] = [];
  for (let point = first; point < end; point++) {
    const dx = xMm[point]! - (x.at(-1) ?? Infinity);
    const dy = yMm[point]! - (y.at(-1) ?? Infinity);
    if (dx * dx + dy * dy < leastMm * leastMm) continue;
    x.push(xMm[point]!);
    y.push(yMm[point]!);
  }
  if (x.length > 1 && Math.hypot(x[0]! - x.at(-1)!, y[0]! - y.at(-1)!) < leastMm) x.pop();
  return x.length < 3 ? NO_CORNERS : countTurns(x, y, x.length);
}

function countTurns(x: readonly number[], y: readonly number[], points: number): Corners {
  let all = 0;
  let sharp = 0;
  let ux = x[0]! - x[points - 1]!;
  let uy = y[0]! - y[points - 1]!;
  for (let point = 0; point < points; point++) {
    const next = point + 1 === points ? 0 : point + 1;
    const vx = x[next]! - x[point]!;
    const vy = y[next]! - y[point]!;
    const dot = ux * vx + uy * vy;
    const cross = Math.abs(ux * vy - uy * vx);
    if (cross >= dot * TAN_LIMIT) all++;
    if (cross >= dot * TAN_SHARP) sharp++;
    ux = vx;
    uy = vy;
  }
  return { all, sharp };
}

/** Tangent of 10 degrees but for rounding. Where the direction turns back (dot negative) the test holds as well. */
const TAN_LIMIT = Math.tan((10 * Math.PI) / 180) - 1e-6;

const TAN_SHARP = Math.tan(Math.PI / 6);

const NO_CORNERS: Corners = { all: 0, sharp: 0 };
