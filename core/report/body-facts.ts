import { AXIS_DIRECTIONS } from "../geometry/direction.ts";
import { type BodyMeasures, measureBody } from "../geometry/measure.ts";
import type { Mesh } from "../geometry/mesh.ts";
import { heightMm, overhang } from "../geometry/standing.ts";

/** How a body stands with one direction up. */
export interface StandingFacts {
  readonly up: string;
  readonly heightMm: number;
  /** surface that needs support, mm2 */
  readonly overhangAreaMm2: number;
  /** space between it and the platform, mm3 */
  readonly supportVolumeMm3: number;
}

/** Everything that is told of one body. */
export interface BodyFacts {
  readonly measures: BodyMeasures;
  readonly standings: readonly StandingFacts[];
}

/**
 * Measures a body and how it stands with each of its axes up, either way. Example: a box of 2 x 3 x 4 mm: heights 4, 4, 3, 3, 2
 * and 2 mm, nothing hangs over.
 */
export function bodyFacts(mesh: Mesh): BodyFacts {
  const standings = Object.entries(AXIS_DIRECTIONS).map(([up, direction]) => {
    const { areaMm2, supportVolumeMm3 } = overhang(mesh, direction);
    return { up, heightMm: heightMm(mesh, direction), overhangAreaMm2: areaMm2, supportVolumeMm3 };
  });
  return { measures: measureBody(mesh), standings };
}
