/** How a machine moves while it deposits. */
export interface Motion {
  readonly speedMmPerS: number;
  readonly accelerationMmPerS2: number;
  /** speed at the start and end of each stretch */
  readonly cornerMmPerS: number;
}

/**
 * Time of one straight stretch that starts and ends at corner speed and goes as fast as speed and acceleration let it, s.
 * A corner speed above the cruising speed counts as the cruising speed.
 * Example: 10 mm at 60 mm/s and 3000 mm/s2 from stop to stop: 0.18667 s; 1 mm never reaches 60 mm/s: 0.036515 s.
 */
export function stretchS(lengthMm: number, motion: Motion): number {
  const { accelerationMmPerS2: acceleration, speedMmPerS: speed } = motion;
  const corner = Math.min(motion.cornerMmPerS, speed);
  const peak = Math.min(speed, Math.sqrt(acceleration * lengthMm + corner ** 2));
  if (peak === 0) return 0;
  const rampsMm = (peak ** 2 - corner ** 2) / acceleration;
  return (2 * (peak - corner)) / acceleration + (lengthMm - rampsMm) / peak;
}

/**
 * Fastest speed around a corner that may be cut by a given deviation, mm/s: the speed at which an arc tangent to both sides
 * takes the full acceleration, v^2 = a d sin(t/2) / (1 - sin(t/2)), t the angle between the sides (180 degrees: straight on).
 * Example: 1000 mm/s2, 0.05 mm, 90 degrees: 10.9868 mm/s.
 */
export function cornerSpeedMmPerS(
  accelerationMmPerS2: number,
  deviationMm: number,
  angleDeg: number,
): number {
  const half = Math.sin((angleDeg * Math.PI) / 360);
  if (half >= 1) return Number.POSITIVE_INFINITY;
  return Math.sqrt((accelerationMmPerS2 * deviationMm * half) / (1 - half));
}

/**
 * Mean length of the lines that fill an area, mm: pi A / P (Cauchy and Crofton's mean chord, from memory; exact for convex
 * outlines).
 * Example: a disc of radius 10 mm gives 15.708 mm, a rectangle of 20 x 30 mm 18.850 mm.
 */
export function meanChordMm(areaMm2: number, perimeterMm: number): number {
  return (Math.PI * areaMm2) / perimeterMm;
}
