import { disc, type Solid } from "./kit.ts";

const OUTSIDE_MM = 110;
const WALL_MM = 3.2;
const BEND_RADIUS_MM = 85;
const BEND_RAD = (38 * Math.PI) / 180;
const STRAIGHT_MM = 14;

/** Elbow of a duct: a round tube, straight at its foot, then bent by 38 degrees, less than would need support. */
export function ductElbow(): Solid {
  const length = 2 * STRAIGHT_MM + BEND_RADIUS_MM * BEND_RAD;
  const tube = disc(OUTSIDE_MM, 32).subtract(disc(OUTSIDE_MM - 2 * WALL_MM, 32));
  return tube.extrude(length, 7).warp(bend);
}

/** Moves a point of the straight tube to where the bent one has it. */
function bend(point: [number, number, number]): void {
  const [x, , z] = point;
  const angle = Math.min(BEND_RAD, Math.max(0, (z - STRAIGHT_MM) / BEND_RADIUS_MM));
  if (angle === 0) return;
  const along = z - STRAIGHT_MM - BEND_RADIUS_MM * angle;
  const lever = BEND_RADIUS_MM - x;
  point[0] = BEND_RADIUS_MM - lever * Math.cos(angle) + along * Math.sin(angle);
  point[2] = STRAIGHT_MM + lever * Math.sin(angle) + along * Math.cos(angle);
}
