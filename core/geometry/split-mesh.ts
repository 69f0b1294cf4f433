import { usedCorners } from "./mesh-box.ts";
import type { Mesh } from "./mesh.ts";

/**
 * Parts of a mesh by stretches of its triangles, each with corners of its own.
 * Example: two boxes in one mesh of 24 triangles, split at 12, give two meshes of 8 corners.
 */
export function splitMesh(
  { cornersMm, triangles }: Mesh,
  stretches: readonly { readonly fromTriangle: number; readonly toTriangle: number }[],
): Mesh[] {
  /** new number + 1 of each corner within the stretch at hand */
  const newNumbers = new Uint32Array(cornersMm.length / 3);
  return stretches.map(({ fromTriangle, toTriangle }) => {
    const own = triangles.slice(3 * fromTriangle, 3 * toTriangle);
    const old: number[] = [];
    for (let place = 0; place < own.length; place++) {
      const corner = own[place] ?? 0;
      if (newNumbers[corner] === 0) newNumbers[corner] = old.push(corner);
      own[place] = (newNumbers[corner] ?? 0) - 1;
    }
    const ownCornersMm = new Float64Array(3 * old.length);
    for (const [place, corner] of old.entries()) {
      ownCornersMm.set(cornersMm.subarray(3 * corner, 3 * corner + 3), 3 * place);
      newNumbers[corner] = 0;
    }
    return { cornersMm: ownCornersMm, triangles: own };
  });
}

/** The same mesh without corners that no triangle names: they would enlarge its box. */
export function withoutUnusedCorners(mesh: Mesh): Mesh {
  if (!usedCorners(mesh).includes(0)) return mesh;
  const [compact = mesh] = splitMesh(mesh, [{ fromTriangle: 0, toTriangle: mesh.triangles.length / 3 }]);
  return compact;
}
