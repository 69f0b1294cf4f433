import type { PointMm } from "./measure.ts";
import type { Mesh } from "./mesh.ts";
import type { Shells } from "./shells.ts";

/** Sums over the triangles of a mesh, taken about a point. */
interface SolidSums {
  /** of each shell, signed: negative where it is turned inside out, as the wall of a cavity is */
  readonly volumeMm3: Float64Array;
  /** of all */
  readonly areaMm2: number;
  /** signed volume times the place of its centroid from that point */
  readonly momentMm4: PointMm;
  readonly zeroAreaTriangles: number;
}

/**
 * Sums volume, surface and moment of volume: the tetrahedra from the point to the triangles, a·(b x c)/6 and its middle
 * (a + b + c)/4 (Gauss's theorem on triangles, from memory). The middle of the box as the point keeps the digits of a body far
 * from the origin. Triangles that name a corner twice or are smaller than `zeroAreaMm2` count as of no area.
 * Example: a box 2 x 3 x 4 with a cube of 1 hollow inside: 24 and -1 mm3, 52 + 6 mm2.
 */
export function sumSolid(
  { cornersMm, triangles }: Mesh,
  { count, shellOf }: Shells,
  point: PointMm,
  zeroAreaMm2: number,
): SolidSums {
  const volumeMm3 = new Float64Array(count);
  let areaMm2 = 0;
  let [momentX, momentY, momentZ] = [0, 0, 0];
  let zeroAreaTriangles = 0;
  for (let triangle = 0; triangle < shellOf.length; triangle++) {
    const shell = shellOf[triangle]!;
    const a = 3 * triangles[3 * triangle]!;
    const b = 3 * triangles[3 * triangle + 1]!;
    const c = 3 * triangles[3 * triangle + 2]!;
    const ax = cornersMm[a]! - point.x;
    const ay = cornersMm[a + 1]! - point.y;
    const az = cornersMm[a + 2]! - point.z;
    const ux = cornersMm[b]! - point.x - ax;
    const uy = cornersMm[b + 1]! - point.y - ay;
    const uz = cornersMm[b + 2]! - point.z - az;
    const vx = cornersMm[c]! - point.x - ax;
    const vy = cornersMm[c + 1]! - point.y - ay;
    const vz = cornersMm[c + 2]! - point.z - az;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const area = Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
    if (shell < 0 || area <= zeroAreaMm2) zeroAreaTriangles++;
    if (shell < 0) continue;
    const volume = (ax * nx + ay * ny + az * nz) / 6;
    volumeMm3[shell]! += volume;
    areaMm2 += area;
    momentX += volume * (3 * ax + ux + vx);
    momentY += volume * (3 * ay + uy + vy);
    momentZ += volume * (3 * az + uz + vz);
  }
  const momentMm4 = { x: momentX / 4, y: momentY / 4, z: momentZ / 4 };
  return { volumeMm3, areaMm2, momentMm4, zeroAreaTriangles };
}
