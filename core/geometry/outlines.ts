import { nextInTriangle } from "./edges.ts";
import type { Mesh } from "./mesh.ts";

/** Where a plane cuts a body: closed outlines, one after the other in shared arrays that the next cut overwrites. */
export interface Outlines {
  readonly loops: number;
  /** number of the first point of each loop; one entry more than loops */
  readonly starts: Int32Array;
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
  /** of each loop: positive around material, negative around a hole */
  readonly areaMm2: Float64Array;
  readonly lengthMm: Float64Array;
  /** of each loop: 1 where the material is at the left of its points' order, -1 where it is at the right */
  readonly sides: Int8Array;
  /** loops that had a gap, where the surface has a hole; closed by a straight line */
  readonly gaps: number;
}

/**
 * Makes a cutter for a body whose half-edges are paired (`pairEdges`). Its cut at a height takes the triangles that the plane
 * goes through and joins their segments to loops by the edges they share, never by coordinates: a loop leaves a triangle over
 * an edge and goes on in the triangle at the other side. Area by the shoelace formula; a loop with material at its left is an
 * outer one, and a cut that is all hole is taken as one of a body turned inside out.
 * Example: a tube cut across gives two loops, the outer with a positive area and the inner with a negative one.
 */
export function makeCutter(
  mesh: Mesh,
  mates: Int32Array,
): (zMm: number, triangles: Int32Array, count: number) => Outlines {
  const segmentOf = new Int32Array(mesh.triangles.length / 3);
  let scratch = makeScratch(FIRST_CAPACITY);
  return (zMm, triangles, count) => {
    if (count > scratch.capacity) scratch = makeScratch(2 * count);
    const segments = { mesh, mates, zMm, segmentOf, ...scratch };
    findSegments(segments, triangles, count);
    return joinLoops(segments, count);
  };
}

const FIRST_CAPACITY = 1024;

function makeScratch(capacity: number) {
  return {
    capacity,
    downs: new Int32Array(capacity),
    ups: new Int32Array(capacity),
    isUsed: new Uint8Array(capacity),
    starts: new Int32Array(capacity + 1),
    xMm: new Float64Array(2 * capacity),
    yMm: new Float64Array(2 * capacity),
    areaMm2: new Float64Array(capacity),
    lengthMm: new Float64Array(capacity),
    sides: new Int8Array(capacity),
  };
}

/**
 * Segments of one cut, one for each triangle. With material at its left, a segment begins on the half-edge that goes down
 * through the plane (`downs`) and ends on the one that goes up (`ups`).
 */
interface Segments extends ReturnType<typeof makeScratch> {
  readonly mesh: Mesh;
  readonly mates: Int32Array;
  readonly zMm: number;
  readonly segmentOf: Int32Array;
}

function findSegments(segments: Segments, triangles: Int32Array, count: number): void {
  const { mesh, zMm, segmentOf, downs, ups, isUsed } = segments;
  for (let segment = 0; segment < count; segment++) {
    const first = 3 * triangles[segment]!;
    const isAbove0 = mesh.cornersMm[3 * mesh.triangles[first]! + 2]! >= zMm;
    const isAbove1 = mesh.cornersMm[3 * mesh.triangles[first + 1]! + 2]! >= zMm;
    const isAbove2 = mesh.cornersMm[3 * mesh.triangles[first + 2]! + 2]! >= zMm;
    if (isAbove0 && !isAbove1) downs[segment] = first;
    else if (isAbove1 && !isAbove2) downs[segment] = first + 1;
    else downs[segment] = first + 2;
    if (!isAbove0 && isAbove1) ups[segment] = first;
    else if (!isAbove1 && isAbove2) ups[segment] = first + 1;
    else ups[segment] = first + 2;
    segmentOf[triangles[segment]!] = segment;
    isUsed[segment] = 0;
  }
}

function joinLoops(segments: Segments, count: number): Outlines {
  const { mates, downs, ups, isUsed, starts, areaMm2, sides } = segments;
  let loops = 0;
  starts[0] = 0;
  for (let segment = 0; segment < count; segment++) {
    if (isUsed[segment] === 1) continue;
    if (mates[downs[segment]!]! < 0) trace(segments, loops++, segment, downs[segment]!);
    else if (mates[ups[segment]!]! < 0) trace(segments, loops++, segment, ups[segment]!);
  }
  const gaps = loops;
  for (let segment = 0; segment < count; segment++) {
    if (isUsed[segment] === 0) trace(segments, loops++, segment, downs[segment]!);
  }
  if (isAllHole(areaMm2, loops)) {
    for (let loop = 0; loop < loops; loop++) {
      areaMm2[loop] = -areaMm2[loop]!;
      sides[loop] = -sides[loop]!;
    }
  }
  return { ...segments, loops, gaps };
}

function isAllHole(areaMm2: Float64Array, loops: number): boolean {
  let sumMm2 = 0;
  for (let loop = 0; loop < loops; loop++) sumMm2 += areaMm2[loop]!;
  return sumMm2 < 0;
}

/** Follows one loop from a segment that is entered over the given half-edge, until it closes or the surface ends. */
function trace(segments: Segments, loop: number, firstSegment: number, firstEdge: number): void {
  const { mates, downs, ups, isUsed, starts, segmentOf } = segments;
  let point = starts[loop]!;
  let along = 0;
  let segment = firstSegment;
  let entered = firstEdge;
  if (mates[firstEdge]! < 0) addPoint(segments, point++, firstEdge);
  for (;;) {
    const isAlong = entered === downs[segment];
    const left = isAlong ? ups[segment]! : downs[segment]!;
    along += isAlong ? 1 : -1;
    isUsed[segment] = 1;
    addPoint(segments, point++, left);
    entered = mates[left]!;
    if (entered < 0) break;
    segment = segmentOf[(entered / 3) | 0]!;
    if (isUsed[segment] === 1) break;
  }
  starts[loop + 1] = point;
  finishLoop(segments, loop, along < 0 ? -1 : 1);
}

function addPoint({ mesh, zMm, xMm, yMm }: Segments, point: number, halfEdge: number): void {
  const from = 3 * mesh.triangles[halfEdge]!;
  const to = 3 * mesh.triangles[nextInTriangle(halfEdge)]!;
  const fromMm = mesh.cornersMm[from + 2]!;
  const share = (zMm - fromMm) / (mesh.cornersMm[to + 2]! - fromMm);
  xMm[point] = mesh.cornersMm[from]! + share * (mesh.cornersMm[to]! - mesh.cornersMm[from]!);
  yMm[point] = mesh.cornersMm[from + 1]! + share * (mesh.cornersMm[to + 1]! - mesh.cornersMm[from + 1]!);
}

/** Area and length of a loop; the area is taken about its first point, for precision far from the origin. */
function finishLoop(segments: Segments, loop: number, side: 1 | -1): void {
  const { starts, xMm, yMm, areaMm2, lengthMm, sides } = segments;
  const first = starts[loop]!;
  const end = starts[loop + 1]!;
  const originX = xMm[first]!;
  const originY = yMm[first]!;
  let twiceMm2 = 0;
  let length = 0;
  let x = xMm[end - 1]! - originX;
  let y = yMm[end - 1]! - originY;
  for (let point = first; point < end; point++) {
    const nextX = xMm[point]! - originX;
    const nextY = yMm[point]! - originY;
    twiceMm2 += x * nextY - nextX * y;
    length += Math.sqrt((nextX - x) * (nextX - x) + (nextY - y) * (nextY - y));
    x = nextX;
    y = nextY;
  }
  areaMm2[loop] = (side * twiceMm2) / 2;
  lengthMm[loop] = length;
  sides[loop] = side;
}
