import { z } from "zod";
import { AXIS_DIRECTIONS } from "../geometry/direction.ts";
import type { Direction } from "../geometry/direction.ts";

const OWN = "(?![xyzXYZ]$)[^\\s+-].{0,63}";

/** Label of a direction that somebody gave a part beside its axes: no axis, and neither a sign nor a blank in front. */
export const ownLabel = z
  .string()
  .regex(
    new RegExp(`^${OWN}$`),
    "must have 1 to 64 characters, be none of x, y and z, and begin with neither a sign nor a blank",
  );

/** Label of the direction that points up: "x", "-x", "y", "-y", "z", "-z", or a label of the part's own. */
export const directionLabel = z
  .string()
  .regex(
    new RegExp(`^(-?[xyz]|${OWN})$`),
    "must be one of x, -x, y, -y, z, -z or the label of a direction of the part's own",
  );

/** Names directions: "z" the axis either way up, "+z" and "-z" one way only, else a label of the part's own. */
export const directionName = z
  .string()
  .regex(
    new RegExp(`^([+-]?[xyz]|${OWN})$`),
    "must be an axis (x, y, z: either way up), one way of it (+x, -x, ...) or the label of a direction of the part's own",
  );

/**
 * Says whether a name stands for a direction. A bare axis stands for both of its ways.
 * Example: "z" stands for "z" and "-z", "+z" for "z" alone, "-z" for "-z" alone, "tilted" for "tilted".
 */
export function standsFor(name: string, label: string): boolean {
  return name === label || name === `+${label}` || `-${name}` === label;
}

/**
 * Angle between a direction (of any length above 0) and an axis of the part, whichever way either points, 0 to 90 degrees.
 * Example: (1, 0, 1) and "z" give 45; (0, 0, -2) and "z" give 0.
 */
export function angleToAxisDeg(vector: Direction, axis: "x" | "y" | "z"): number {
  const along = Math.abs(vector[axis]);
  const across = Math.sqrt(Math.max(0, vector.x ** 2 + vector.y ** 2 + vector.z ** 2 - along ** 2));
  return (Math.atan2(across, along) * 180) / Math.PI;
}

/**
 * Which side is up, in words for an operator. Example: "z" gives "z up", "-x" gives "x down", "tilted" gives "tilted up".
 */
export function sideUp(label: string): string {
  return label.startsWith("-") ? `${label.slice(1)} down` : `${label} up`;
}

/**
 * The direction of a standing as a vector: an axis of the part, else the vector that was measured; undefined: it names none.
 * Example: up "-x" gives (-1, 0, 0).
 */
export function vectorUp(standing: {
  readonly up: string;
  readonly vector?: Direction | undefined;
}): Direction | undefined {
  return isAxisDirection(standing.up) ? AXIS_DIRECTIONS[standing.up] : standing.vector;
}

/** Says whether a label is one of the six directions of a part's own axes. Example: "-x" is, "tilted" is not. */
export function isAxisDirection(label: string): label is keyof typeof AXIS_DIRECTIONS {
  return Object.hasOwn(AXIS_DIRECTIONS, label);
}
