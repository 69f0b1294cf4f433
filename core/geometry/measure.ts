import { type EdgePairs, pairEdges } from "./edges.ts";
import { boxOf, type MeshBox } from "./mesh-box.ts";
import type { Mesh } from "./mesh.ts";
import { type Shells, findShells, shellBoxes } from "./shells.ts";
import { sumSolid } from "./solid-sums.ts";

/** A point in the axes of the body, mm. */
export interface PointMm {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** What a body measures. */
export interface BodyMeasures {
  readonly triangles: number;
  /** never negative; cavities are taken off; means nothing where the body is not closed */
  readonly volumeMm3: number;
  /** surface, cavities included */
  readonly areaMm2: number;
  readonly boxMm: MeshBox;
  /** of the volume; the middle of the box where there is no volume */
  readonly centroidMm: PointMm;
  /** each edge has as many triangles that go one way as go the other way */
  readonly closed: boolean;
  readonly openEdges: number;
  readonly misturnedEdges: number;
  /** edges at which more than two triangles meet; a closed body may have some, as where two boxes touch along an edge */
  readonly crowdedEdges: number;
  /** pieces of surface that are not joined by edges; each cavity is one */
  readonly shells: number;
  /** shells that enclose hollow space within another shell */
  readonly cavities: number;
  /** shells turned inside out that lie in no other: their volume is taken off, most likely by mistake */
  readonly strayShells: number;
  /** the whole body is turned inside out; `volumeMm3` has been made positive */
  readonly inverted: boolean;
  /** triangles of zero area */
  readonly degenerateTriangles: number;
}

/**
 * Measures a body: volume, surface, box, centroid, and whether it is closed. Linear in triangles.
 * Example: a box of 2 x 3 x 4 mm in 12 triangles: 24 mm3, 52 mm2, closed, one shell.
 */
export function measureBody(mesh: Mesh, edges: EdgePairs = pairEdges(mesh)): BodyMeasures {
  const triangles = mesh.triangles.length / 3;
  if (triangles === 0) throw new RangeError("a body without triangles cannot be measured");
  const boxMm = boxOf(mesh);
  const middle = middleOf(boxMm);
  const shells = findShells(edges.mates);
  const zeroAreaMm2 = ZERO_AREA_SHARE * diagonalMm(boxMm) ** 2;
  const sums = sumSolid(mesh, shells, middle, zeroAreaMm2);
  const signedMm3 = sums.volumeMm3.reduce((sum, volume) => sum + volume, 0);
  const { openEdges, misturnedEdges, crowdedEdges } = edges;
  const closed = openEdges === 0 && misturnedEdges === 0;
  const turned = closed ? findTurned(mesh, shells, sums.volumeMm3, signedMm3 < 0) : NONE_TURNED;
  return {
    triangles,
    volumeMm3: Math.abs(signedMm3),
    areaMm2: sums.areaMm2,
    boxMm,
    centroidMm: centroidOf(sums.momentMm4, middle, signedMm3),
    closed,
    openEdges,
    misturnedEdges,
    crowdedEdges,
    shells: shells.count,
    ...turned,
    inverted: signedMm3 < 0,
    degenerateTriangles: sums.zeroAreaTriangles,
  };
}

/** A triangle counts as of zero area below this share of the box's diagonal squared. */
const ZERO_AREA_SHARE = 1e-14;

function middleOf({ min, max }: MeshBox): PointMm {
  return { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2, z: (min.z + max.z) / 2 };
}

function diagonalMm({ min, max }: MeshBox): number {
  return Math.hypot(max.x - min.x, max.y - min.y, max.z - min.z);
}

function centroidOf(momentMm4: PointMm, middle: PointMm, signedMm3: number): PointMm {
  if (signedMm3 === 0) return middle;
  return {
    x: middle.x + momentMm4.x / signedMm3,
    y: middle.y + momentMm4.y / signedMm3,
    z: middle.z + momentMm4.z / signedMm3,
  };
}

const NONE_TURNED = { cavities: 0, strayShells: 0 };

/** Counts the shells that are turned against the body: within the box of a larger one they are cavities. */
function findTurned(
  mesh: Mesh,
  shells: Shells,
  volumeMm3: Float64Array,
  inverted: boolean,
): Pick<BodyMeasures, "cavities" | "strayShells"> {
  const all = Array.from(volumeMm3.keys());
  const isTurned = (shell: number): boolean => volumeMm3[shell]! !== 0 && volumeMm3[shell]! < 0 !== inverted;
  const turned = all.filter(isTurned);
  if (turned.length === 0) return NONE_TURNED;
  const solid = all
    .filter((shell) => !isTurned(shell))
    .toSorted((a, b) => Math.abs(volumeMm3[b]!) - Math.abs(volumeMm3[a]!))
    .slice(0, Math.ceil(MOST_BOX_TESTS / turned.length));
  const boxes = shellBoxes(mesh, shells);
  const cavities = turned.filter((inner) => solid.some((outer) => isWithin(boxes, inner, outer))).length;
  return { cavities, strayShells: turned.length - cavities };
}

/** Keeps a mesh of countless pieces from taking long: only the largest shells are tried as the ones around a cavity. */
const MOST_BOX_TESTS = 10_000_000;

function isWithin(boxes: Float64Array, inner: number, outer: number): boolean {
  for (let axis = 0; axis < 3; axis++) {
    if (boxes[6 * inner + axis]! < boxes[6 * outer + axis]!) return false;
    if (boxes[6 * inner + axis + 3]! > boxes[6 * outer + axis + 3]!) return false;
  }
  return true;
}
