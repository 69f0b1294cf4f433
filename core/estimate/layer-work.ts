import type { LayerPath } from "./layer-path.ts";
import { stretchS } from "./motion-time.ts";
import type { Motion } from "./motion-time.ts";

/** Straight stretches of one wall around one island: four, as a rectangle has. */
const STRETCHES_PER_WALL = 4;

/**
 * Time to deposit one layer of one copy, s: every wall as four stretches, every line of infill as one, each from corner speed
 * to corner speed. Moves between islands are not in it.
 * Example: 60 x 40 mm with 2 walls and 20 % infill, bead 0.45 mm, 60 mm/s, 1000 mm/s2, corners at 10.987 mm/s: 24.4275 s.
 */
export function depositS(path: LayerPath, islands: number, motion: Motion): number {
  const stretches = STRETCHES_PER_WALL * path.walls * islands;
  const wallS = stretches === 0 ? 0 : stretches * stretchS(path.wallMm / stretches, motion);
  if (path.infillMm === 0) return wallS;
  return wallS + (path.infillMm / path.infillLineMm) * stretchS(path.infillLineMm, motion);
}
