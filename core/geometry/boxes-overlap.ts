import type { Reading } from "./body-reading.ts";
import { boxOf, type MeshBox } from "./mesh-box.ts";
import type { Mesh } from "./mesh.ts";

/** Enough for thousands of bodies; beyond it nothing is said about overlap. */
const MOST_COMPARED = 5_000_000;

/** Boxes that share no more than this are taken as touching, mm. */
const TOUCH_MM = 1e-6;

/** Warns where bodies may run into each other: then their volumes add up to more than the material they take together. */
export function warnOfOverlap(meshes: readonly Mesh[], reading: Reading): void {
  if (meshes.length < 2 || !anyOverlap(meshes.map(boxOf))) return;
  reading.warn(
    "bodies-overlap",
    "the boxes of some bodies overlap; where the bodies themselves do, the sum of their volumes is too high: " +
      "join them in the program that made the file",
  );
}

/** True where two boxes share more than a touch: boxes in the order of their left sides, each against those that begin before it ends. */
function anyOverlap(boxes: readonly MeshBox[]): boolean {
  const sorted = boxes.toSorted((a, b) => a.min.x - b.min.x);
  let compared = 0;
  for (const [place, box] of sorted.entries()) {
    for (let next = place + 1; next < sorted.length; next++) {
      const other = sorted[next];
      if (!other || other.min.x >= box.max.x - TOUCH_MM) break;
      if (share(box, other, "y") && share(box, other, "z")) return true;
      if (compared++ > MOST_COMPARED) return false;
    }
  }
  return false;
}

function share(a: MeshBox, b: MeshBox, axis: "y" | "z"): boolean {
  return a.min[axis] < b.max[axis] - TOUCH_MM && b.min[axis] < a.max[axis] - TOUCH_MM;
}
