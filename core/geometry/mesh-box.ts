import type { PointMm } from "./measure.ts";
import type { Mesh } from "./mesh.ts";

/** The smallest box around a mesh with sides along the axes, mm. */
export interface MeshBox {
  readonly min: PointMm;
  readonly max: PointMm;
}

/** Which corners belong to a triangle: 1 for those, 0 for the others; a file may list corners that belong to none. Example: a tetrahedron: 1, 1, 1, 1. */
export function usedCorners({ cornersMm, triangles }: Mesh): Uint8Array {
  const isUsed = new Uint8Array(cornersMm.length / 3);
  for (const corner of triangles) isUsed[corner] = 1;
  return isUsed;
}

/** The box around the corners that triangles use, mm. Example: a cube of edge 10 with one corner at the origin: from 0 to 10. */
export function boxOf(mesh: Mesh): MeshBox {
  const { cornersMm } = mesh;
  const isUsed = usedCorners(mesh);
  let [minX, minY, minZ] = [Infinity, Infinity, Infinity];
  let [maxX, maxY, maxZ] = [-Infinity, -Infinity, -Infinity];
  for (let corner = 0; corner < isUsed.length; corner++) {
    if (isUsed[corner] === 0) continue;
    const x = cornersMm[3 * corner]!;
    const y = cornersMm[3 * corner + 1]!;
    const z = cornersMm[3 * corner + 2]!;
    if (x < minX) minX = x;
    if (y < minY) minY = y;
    if (z < minZ) minZ = z;
    if (x > maxX) maxX = x;
    if (y > maxY) maxY = y;
    if (z > maxZ) maxZ = z;
  }
  return { min: { x: minX, y: minY, z: minZ }, max: { x: maxX, y: maxY, z: maxZ } };
}

/** The longest side of the box, mm. Example: 10 by 20 by 30 mm gives 30. */
export function largestSideMm({ min, max }: MeshBox): number {
  return Math.max(max.x - min.x, max.y - min.y, max.z - min.z);
}
