import { boxOf, type MeshBox } from "./mesh-box.ts";
import type { Mesh } from "./mesh.ts";

/** A unit vector in the axes of the body. */
export interface Direction {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** The body's own axes, each with both ends up, by name. */
export const AXIS_DIRECTIONS: Readonly<Record<"z" | "-z" | "x" | "-x" | "y" | "-y", Direction>> = {
  z: { x: 0, y: 0, z: 1 },
  "-z": { x: 0, y: 0, z: -1 },
  x: { x: 1, y: 0, z: 0 },
  "-x": { x: -1, y: 0, z: 0 },
  y: { x: 0, y: 1, z: 0 },
  "-y": { x: 0, y: -1, z: 0 },
};

/** A body turned so that a direction of its own points up. */
interface StoodMesh {
  readonly mesh: Mesh;
  readonly box: MeshBox;
}

/**
 * Turns a body, without mirroring it, so that the direction `up` of its own points along +z. Axis directions only swap and
 * negate coordinates, so they stay exact. The other two axes by Duff and others, "Building an Orthonormal Basis, Revisited",
 * 2017 (from memory). Example: with up = x, the point (1, 2, 3) comes to (-3, 2, 1).
 */
export function standUp(mesh: Mesh, up: Direction): StoodMesh {
  if (mesh.triangles.length === 0) throw new RangeError("a body without triangles cannot stand");
  const { across, along } = crossAxes(up);
  const { cornersMm } = mesh;
  const turned = new Float64Array(cornersMm.length);
  for (let first = 0; first < cornersMm.length; first += 3) {
    const x = cornersMm[first]!;
    const y = cornersMm[first + 1]!;
    const z = cornersMm[first + 2]!;
    turned[first] = across.x * x + across.y * y + across.z * z;
    turned[first + 1] = along.x * x + along.y * y + along.z * z;
    turned[first + 2] = up.x * x + up.y * y + up.z * z;
  }
  const stood = { cornersMm: turned, triangles: mesh.triangles };
  return { mesh: stood, box: boxOf(stood) };
}

/** Throws where a direction is not a unit vector. Example: (0, 0, 2): "not a unit vector: length 2". */
export function checkDirection({ x, y, z }: Direction): void {
  const length = Math.hypot(x, y, z);
  if (!(Math.abs(length - 1) < UNIT_TOLERANCE)) throw new RangeError(`not a unit vector: length ${length}`);
}

function crossAxes(up: Direction): { across: Direction; along: Direction } {
  checkDirection(up);
  const sign = up.z >= 0 ? 1 : -1;
  const a = -1 / (sign + up.z);
  const b = up.x * up.y * a;
  return {
    across: { x: 1 + sign * up.x * up.x * a, y: sign * b, z: -sign * up.x },
    along: { x: b, y: sign + up.y * up.y * a, z: -up.y },
  };
}

const UNIT_TOLERANCE = 1e-6;
