import type { PointMm } from "./measure.ts";
import type { Mesh } from "./mesh.ts";

/** The smallest box around a mesh with sides along the axes, mm. */
export interface MeshBox {
  readonly min: PointMm;
  readonly max: PointMm;
}

/** The box around all corners of a mesh, mm. Example: the cube from 0 to 10 has min (0,0,0) and max (10,10,10). */
export function boxOf({ cornersMm }: Mesh): MeshBox {
  let [minX, minY, minZ] = [Infinity, Infinity, Infinity];
  let [maxX, maxY, maxZ] = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < cornersMm.length; at += 3) {
    const x = cornersMm[at] ?? 0;
    const y = cornersMm[at + 1] ?? 0;
    const z = cornersMm[at + 2] ?? 0;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
    if (z < minZ) minZ = z;
    if (z > maxZ) maxZ = z;
  }
  return { min: { x: minX, y: minY, z: minZ }, max: { x: maxX, y: maxY, z: maxZ } };
}

/** The longest side of the box, mm. Example: 10 by 20 by 30 mm gives 30. */
export function largestSideMm({ min, max }: MeshBox): number {
  return Math.max(max.x - min.x, max.y - min.y, max.z - min.z);
}
