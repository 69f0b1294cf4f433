import { FOLDED } from "./edges.ts";
import type { Mesh } from "./mesh.ts";

/** Shells of a mesh: pieces of surface that are joined by edges. */
export interface Shells {
  readonly count: number;
  /** shell of each triangle; FOLDED for a triangle that names a corner twice */
  readonly shellOf: Int32Array;
}

/**
 * Finds the shells by walking from triangle to triangle over paired half-edges (`pairEdges`).
 * Example: a box with a closed cube hollow in it has two shells.
 */
export function findShells(mates: Int32Array): Shells {
  const triangles = mates.length / 3;
  const shellOf = new Int32Array(triangles).fill(NONE);
  const open = new Int32Array(triangles);
  let count = 0;
  for (let first = 0; first < triangles; first++) {
    if (mates[3 * first] === FOLDED) shellOf[first] = FOLDED;
    if (shellOf[first] === NONE) fillShell(mates, shellOf, open, first, count++);
  }
  return { count, shellOf };
}

const NONE = -1;

function fillShell(
  mates: Int32Array,
  shellOf: Int32Array,
  open: Int32Array,
  first: number,
  shell: number,
): void {
  let opened = 1;
  open[0] = first;
  shellOf[first] = shell;
  while (opened > 0) {
    const triangle = open[--opened]!;
    for (let halfEdge = 3 * triangle; halfEdge < 3 * triangle + 3; halfEdge++) {
      const mate = mates[halfEdge]!;
      if (mate < 0) continue;
      const neighbour = (mate / 3) | 0;
      if (shellOf[neighbour] !== NONE) continue;
      shellOf[neighbour] = shell;
      open[opened++] = neighbour;
    }
  }
}

/**
 * Box around each shell: six numbers for each, least x, y, z and most x, y, z, mm.
 * Example: a cube from 0 to 10 gives 0, 0, 0, 10, 10, 10.
 */
export function shellBoxes({ cornersMm, triangles }: Mesh, { count, shellOf }: Shells): Float64Array {
  const boxes = new Float64Array(6 * count);
  for (let at = 0; at < boxes.length; at++) boxes[at] = at % 6 < 3 ? Infinity : -Infinity;
  for (let place = 0; place < triangles.length; place++) {
    const shell = shellOf[(place / 3) | 0]!;
    if (shell < 0) continue;
    for (let axis = 0; axis < 3; axis++) {
      const value = cornersMm[3 * triangles[place]! + axis]!;
      const low = 6 * shell + axis;
      if (value < boxes[low]!) boxes[low] = value;
      if (value > boxes[low + 3]!) boxes[low + 3] = value;
    }
  }
  return boxes;
}
