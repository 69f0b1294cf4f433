import type { Mesh } from "../geometry/mesh.ts";
import { boxOf, largestSideMm } from "../geometry/mesh-box.ts";

/**
 * A mesh with fewer triangles of nearly the same shape: corners in one cell of a grid become their mean, and triangles that
 * lose a corner by it fall away. `cells` is how many there are along the longest side. Source: vertex clustering (Rossignac and
 * Borrel 1993, from memory). Example: a sphere of 20 000 triangles on 16 cells: about 1500.
 */
export function coarseMesh(mesh: Mesh, cells: number): Mesh {
  const { cornersMm, triangles } = mesh;
  const { min, max } = boxOf(mesh);
  const perMm = cells / Math.max(largestSideMm({ min, max }), Number.MIN_VALUE);
  const clusters = new Map<number, number>();
  const clusterOf = new Int32Array(cornersMm.length / 3).fill(-1);
  const sums: number[] = [];
  for (const corner of triangles) {
    if (clusterOf[corner] !== -1) continue;
    const at = 3 * corner;
    const key = cellKey(
      (cornersMm[at]! - min.x) * perMm,
      (cornersMm[at + 1]! - min.y) * perMm,
      (cornersMm[at + 2]! - min.z) * perMm,
    );
    const cluster = clusters.get(key) ?? clusters.size;
    clusters.set(key, cluster);
    clusterOf[corner] = cluster;
    const sum = 4 * cluster;
    sums[sum] = (sums[sum] ?? 0) + cornersMm[at]!;
    sums[sum + 1] = (sums[sum + 1] ?? 0) + cornersMm[at + 1]!;
    sums[sum + 2] = (sums[sum + 2] ?? 0) + cornersMm[at + 2]!;
    sums[sum + 3] = (sums[sum + 3] ?? 0) + 1;
  }
  return { cornersMm: means(sums), triangles: keptTriangles(triangles, clusterOf) };
}

const MOST_CELLS = 1024;

function cellKey(x: number, y: number, z: number): number {
  return (Math.floor(x) * MOST_CELLS + Math.floor(y)) * MOST_CELLS + Math.floor(z);
}

function means(sums: readonly number[]): Float64Array {
  const corners = new Float64Array((sums.length / 4) * 3);
  for (let cluster = 0; 4 * cluster < sums.length; cluster++) {
    const count = sums[4 * cluster + 3]!;
    for (let axis = 0; axis < 3; axis++) corners[3 * cluster + axis] = sums[4 * cluster + axis]! / count;
  }
  return corners;
}

function keptTriangles(triangles: Uint32Array, clusterOf: Int32Array): Uint32Array {
  const kept: number[] = [];
  for (let at = 0; at < triangles.length; at += 3) {
    const a = clusterOf[triangles[at]!]!;
    const b = clusterOf[triangles[at + 1]!]!;
    const c = clusterOf[triangles[at + 2]!]!;
    if (a !== b && b !== c && c !== a) kept.push(a, b, c);
  }
  return Uint32Array.from(kept);
}

/** A box as a mesh of 12 triangles, for a part of which only that is known. Example: 10 by 20 by 30 mm from the origin on. */
export function boxMesh({ x, y, z }: { readonly x: number; readonly y: number; readonly z: number }): Mesh {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((bits) => [
    bits & 1 ? x : 0,
    bits & 2 ? y : 0,
    bits & 4 ? z : 0,
  ]);
  return { cornersMm: Float64Array.from(corners), triangles: Uint32Array.from(BOX_TRIANGLES) };
}

/** Corner numbers hold a bit for each axis; counter-clockwise from outside. */
const BOX_TRIANGLES = [
  0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 4, 1, 5, 4, 2, 6, 3, 3, 6, 7, 0, 4, 2, 2, 4, 6, 1, 3, 5, 3, 7, 5,
];
