import type { MeshBox } from "./mesh-box.ts";
import type { Mesh } from "./mesh.ts";

/** Which corners belong to a triangle: 1 for those, 0 for the others; a file may list corners that belong to none. Example: a tetrahedron: 1, 1, 1, 1. */
export function usedCorners({ cornersMm, triangles }: Mesh): Uint8Array {
  const isUsed = new Uint8Array(cornersMm.length / 3);
  for (const corner of triangles) isUsed[corner] = 1;
  return isUsed;
}

/** Box around the corners that triangles use, mm. Example: a cube of edge 10 with one corner at the origin: from 0 to 10. */
export function usedBox(mesh: Mesh): MeshBox {
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
