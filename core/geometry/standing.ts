import { convexHull } from "./convex-hull.ts";
import { type Direction, checkDirection, standUp } from "./direction.ts";
import { fewerCorners } from "./fewer-corners.ts";
import type { FlatPoint } from "./flat-point.ts";
import { usedCorners } from "./mesh-box.ts";
import type { Mesh } from "./mesh.ts";

/** What hangs over when a body stands with one direction up. */
export interface Overhang {
  /** surface that needs support, mm2 */
  readonly areaMm2: number;
  /** most space that supports can fill: from that surface straight down to the platform, mm3 */
  readonly supportVolumeMm3: number;
}

/** Height of a body with this direction up, mm. Example: a box of 2 x 3 x 4 with x up: 2. */
export function heightMm(mesh: Mesh, up: Direction): number {
  checkDirection(up);
  const { cornersMm } = mesh;
  const isUsed = usedCorners(mesh);
  let [bottomMm, topMm] = [Infinity, -Infinity];
  for (let corner = 0; corner < isUsed.length; corner++) {
    const at = 3 * corner;
    const zMm = up.x * cornersMm[at]! + up.y * cornersMm[at + 1]! + up.z * cornersMm[at + 2]!;
    if (isUsed[corner] === 0) continue;
    if (zMm < bottomMm) bottomMm = zMm;
    if (zMm > topMm) topMm = zMm;
  }
  if (!(topMm >= bottomMm)) throw new RangeError("a body without triangles has no height");
  return topMm - bottomMm;
}

/**
 * Surface that needs support and the space below it. A triangle needs support where it faces down more steeply than the
 * limit, an angle from the vertical (trade guides give 45 degrees: normal's height under -0.7071), unless it lies on the
 * platform: all of it below `contactMm`. The space is the sum of area x height of its middle, an upper bound, since the body
 * itself may be in the way. Works on a body turned inside out as a whole.
 * Example: a slab 30 x 10 x 5 on a post 10 x 10 x 10: 200 mm2 and 2000 mm3.
 */
export function overhang(
  mesh: Mesh,
  up: Direction,
  limitDeg = USUAL_LIMIT_DEG,
  contactMm = USUAL_CONTACT_MM,
): Overhang {
  const stood = standUp(mesh, up);
  const steepest = -Math.sin((limitDeg * Math.PI) / 180) - LIMIT_SLACK;
  const facingDown = { areaMm2: 0, supportVolumeMm3: 0 };
  const facingUp = { areaMm2: 0, supportVolumeMm3: 0 };
  let volumeMm3 = 0;
  const { cornersMm, triangles } = stood.mesh;
  for (let first = 0; first < triangles.length; first += 3) {
    const a = 3 * triangles[first]!;
    const b = 3 * triangles[first + 1]!;
    const c = 3 * triangles[first + 2]!;
    const ux = cornersMm[b]! - cornersMm[a]!;
    const uy = cornersMm[b + 1]! - cornersMm[a + 1]!;
    const uz = cornersMm[b + 2]! - cornersMm[a + 2]!;
    const vx = cornersMm[c]! - cornersMm[a]!;
    const vy = cornersMm[c + 1]! - cornersMm[a + 1]!;
    const vz = cornersMm[c + 2]! - cornersMm[a + 2]!;
    const az = cornersMm[a + 2]! - stood.box.min.z;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const middleMm = az + (uz + vz) / 3;
    volumeMm3 += nz * middleMm;
    const twiceMm2 = Math.sqrt(nx * nx + ny * ny + nz * nz);
    const isLying = az <= contactMm && az + uz <= contactMm && az + vz <= contactMm;
    if (isLying || twiceMm2 * -steepest >= Math.abs(nz)) continue;
    const side = nz < 0 ? facingDown : facingUp;
    side.areaMm2 += twiceMm2 / 2;
    side.supportVolumeMm3 += (Math.abs(nz) / 2) * middleMm;
  }
  return volumeMm3 < 0 ? facingUp : facingDown;
}

const USUAL_LIMIT_DEG = 45;

/** A surface this near the platform lies on it: half of a thin layer, and more than a scan's noise. */
const USUAL_CONTACT_MM = 0.1;

/** A surface at the limit itself, but for rounding in the file, needs no support. */
const LIMIT_SLACK = 1e-6;

/**
 * Outline of the body as seen from above, as a convex polygon, counter-clockwise: the hull of its shadow, with at most
 * `mostPoints` corners that still enclose it. Its axes are those of the turned body (`standUp`).
 * Example: a box 20 x 30 x 5 with z up: its four corners.
 */
export function footprintHull(mesh: Mesh, up: Direction, mostPoints = MOST_POINTS): FlatPoint[] {
  return fewerCorners(convexHull(standUp(mesh, up).mesh), mostPoints);
}

const MOST_POINTS = 24;
