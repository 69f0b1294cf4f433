import type { Mesh } from "../geometry/mesh.ts";

/** A corner as it is seen: to the right, up, and towards the eye, mm. */
type Seen = readonly [rightMm: number, upMm: number, nearMm: number];

/** A triangle that faces the eye. */
export interface DrawnFace {
  readonly corners: readonly [Seen, Seen, Seen];
  /** is the side from this corner to the next an edge of the body */
  readonly edges: readonly [boolean, boolean, boolean];
  /** light that it throws back, 0 to 1 */
  readonly light: number;
}

/** Seen from the front right and a little above, without perspective: turned and raised by so much. */
const TURN_RAD = (-58 * Math.PI) / 180;
const RAISE_RAD = (27 * Math.PI) / 180;
const NEAR = [
  Math.cos(RAISE_RAD) * Math.cos(TURN_RAD),
  Math.cos(RAISE_RAD) * Math.sin(TURN_RAD),
  Math.sin(RAISE_RAD),
] as const;
const RIGHT = [-Math.sin(TURN_RAD), Math.cos(TURN_RAD), 0] as const;
const UP = [
  -Math.sin(RAISE_RAD) * Math.cos(TURN_RAD),
  -Math.sin(RAISE_RAD) * Math.sin(TURN_RAD),
  Math.cos(RAISE_RAD),
] as const;
/** Light comes over the left shoulder: to the right, up and near, of length 1. */
const LIGHT = [-0.42, 0.7, 0.578] as const;
const DARKEST = 0.25;
/** Faces that meet at more than this are parted by an edge. */
const EDGE_COS = Math.cos((32 * Math.PI) / 180);

/**
 * The triangles of a mesh that face the eye, turned into what is seen, with the edges of the body among their sides: where two
 * faces meet at 32 degrees or more, or one of them is turned away. Example: of a box's 12 triangles 6, of whose 18 sides 12
 * are edges; the others cut its faces in two.
 */
export function drawnFaces({ cornersMm, triangles }: Mesh): DrawnFace[] {
  const seen = seenCorners(cornersMm);
  const normals = seenNormals(seen, triangles);
  const meets = neighbours(triangles);
  const faces: DrawnFace[] = [];
  for (let face = 0; 3 * face < triangles.length; face++) {
    if (!(normals[3 * face + 2]! > 0)) continue;
    const [a, b, c] = [triangles[3 * face]!, triangles[3 * face + 1]!, triangles[3 * face + 2]!];
    const isEdge = (side: number): boolean => isParted(normals, face, meets[3 * face + side]!);
    faces.push({
      corners: [cornerAt(seen, a), cornerAt(seen, b), cornerAt(seen, c)],
      edges: [isEdge(0), isEdge(1), isEdge(2)],
      light: lightOf(normals, face),
    });
  }
  return faces;
}

function seenCorners(cornersMm: Float64Array): Float64Array {
  const seen = new Float64Array(cornersMm.length);
  for (let at = 0; at < cornersMm.length; at += 3) {
    const [x, y, z] = [cornersMm[at]!, cornersMm[at + 1]!, cornersMm[at + 2]!];
    [RIGHT, UP, NEAR].forEach((axis, index) => {
      seen[at + index] = x * axis[0] + y * axis[1] + z * axis[2];
    });
  }
  return seen;
}

function cornerAt(seen: Float64Array, corner: number): Seen {
  return [seen[3 * corner]!, seen[3 * corner + 1]!, seen[3 * corner + 2]!];
}

/** Unit normals in seen directions; NaN for a triangle without area. */
function seenNormals(seen: Float64Array, triangles: Uint32Array): Float64Array {
  const normals = new Float64Array(triangles.length);
  for (let at = 0; at < triangles.length; at += 3) {
    const [ax, ay, az] = cornerAt(seen, triangles[at]!);
    const [bx, by, bz] = cornerAt(seen, triangles[at + 1]!);
    const [cx, cy, cz] = cornerAt(seen, triangles[at + 2]!);
    const x = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
    const y = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
    const z = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    const length = Math.hypot(x, y, z);
    normals[at] = x / length;
    normals[at + 1] = y / length;
    normals[at + 2] = z / length;
  }
  return normals;
}

/** By side of each triangle: the triangle beyond it, -1 where there is none or more than one. */
function neighbours(triangles: Uint32Array): Int32Array {
  const beyond = new Int32Array(triangles.length).fill(-1);
  const sides = new Map<string, number[]>();
  for (let at = 0; at < triangles.length; at++) {
    const from = triangles[at]!;
    const to = triangles[at % 3 === 2 ? at - 2 : at + 1]!;
    const key = from < to ? `${from},${to}` : `${to},${from}`;
    const same = sides.get(key) ?? [];
    same.push(at);
    sides.set(key, same);
  }
  for (const [one, other, ...more] of sides.values()) {
    if (one === undefined || other === undefined || more.length > 0) continue;
    beyond[one] = Math.floor(other / 3);
    beyond[other] = Math.floor(one / 3);
  }
  return beyond;
}

function isParted(normals: Float64Array, face: number, other: number): boolean {
  if (other < 0) return true;
  const cos = [0, 1, 2].reduce(
    (sum, axis) => sum + normals[3 * face + axis]! * normals[3 * other + axis]!,
    0,
  );
  return cos < EDGE_COS || !(normals[3 * other + 2]! > 0);
}

function lightOf(normals: Float64Array, face: number): number {
  const cos = LIGHT.reduce((sum, part, axis) => sum + part * normals[3 * face + axis]!, 0);
  return DARKEST + (1 - DARKEST) * Math.max(0, cos);
}

/**
 * The same faces cut until no side is longer than asked for or there are `most` of them: the order in which they hide each
 * other is found from their middles, which is wrong for long triangles beside small ones. Example: a face with one side of 20 mm at
 * most 10 mm: cut in two across that side.
 */
export function cutFaces(faces: readonly DrawnFace[], longestMm: number, most: number): DrawnFace[] {
  let cut = [...faces];
  for (;;) {
    const longs = cut.filter((face) => longestSide(face).lengthMm > longestMm);
    if (longs.length === 0 || cut.length + longs.length > most) return cut;
    cut = cut.flatMap((face) => (longestSide(face).lengthMm > longestMm ? halves(face) : [face]));
  }
}

function longestSide({ corners }: DrawnFace): { side: number; lengthMm: number } {
  const lengths = corners.map((from, side) => {
    const to = corners[(side + 1) % 3]!;
    return Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  });
  const lengthMm = Math.max(...lengths);
  return { side: lengths.indexOf(lengthMm), lengthMm };
}

function halves({ corners, edges, light }: DrawnFace): [DrawnFace, DrawnFace] {
  const { side } = longestSide({ corners, edges, light });
  const [one, two, three] = [side, (side + 1) % 3, (side + 2) % 3];
  const [a, b, c] = [corners[one]!, corners[two]!, corners[three]!];
  const middle: Seen = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
  return [
    { corners: [a, middle, c], edges: [edges[one]!, false, edges[three]!], light },
    { corners: [middle, b, c], edges: [edges[one]!, edges[two]!, false], light },
  ];
}
