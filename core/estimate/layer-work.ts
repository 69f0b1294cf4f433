import type { LayerPath } from "./layer-path.ts";
import { stretchS } from "./motion-time.ts";
import type { Motion } from "./motion-time.ts";

/** Straight stretches of one wall around one island whose corners are not known: four, as a rectangle has. */
const STRETCHES_PER_WALL = 4;
/** With fewer corners than a triangle an outline is a curve. */
const FEWEST_CORNERS = 3;

/** What of a layer decides how often its walls slow down: its islands, and the corners that one wall comes by. */
export interface Outlines {
  readonly islands: number;
  /** none: not known */
  readonly corners?: number;
}

/**
 * Time to deposit one layer of one copy, s: every wall as one stretch from corner to corner (four where the corners are not
 * known), every line of infill as one, each from corner speed to corner speed. An outline without corners is one stretch and
 * no faster than a circle of its length allows, v = sqrt(a R). Moves between islands are not in it.
 * Example: 60 x 40 mm with 2 walls and 20 % infill, bead 0.45 mm, 60 mm/s, 1000 mm/s2, corners at 10.987 mm/s: 24.4275 s.
 */
export function depositS(path: LayerPath, outlines: Outlines, motion: Motion): number {
  const wallS = path.walls === 0 ? 0 : wallsS(path, outlines, motion);
  if (path.infillMm === 0) return wallS;
  return wallS + (path.infillMm / path.infillLineMm) * stretchS(path.infillLineMm, motion);
}

function wallsS({ wallMm, walls }: LayerPath, { islands, corners }: Outlines, motion: Motion): number {
  if (corners === undefined || corners >= FEWEST_CORNERS * islands) {
    const stretches = walls * (corners ?? STRETCHES_PER_WALL * islands);
    return stretches * stretchS(wallMm / stretches, motion);
  }
  const loops = walls * islands;
  const radiusMm = wallMm / loops / (2 * Math.PI);
  const curveMmPerS = Math.sqrt(motion.accelerationMmPerS2 * radiusMm);
  const slower = { ...motion, speedMmPerS: Math.min(motion.speedMmPerS, curveMmPerS) };
  return loops * stretchS(wallMm / loops, slower);
}
