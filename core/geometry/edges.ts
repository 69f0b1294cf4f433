import type { Mesh } from "./mesh.ts";

/** Mate of a half-edge that no other triangle meets. */
export const ALONE = -1;

/** Mate of the half-edges of a triangle that names one corner twice: its neighbours meet each other, as if it were not there. */
export const FOLDED = -2;

/**
 * Which sides of triangles meet. Side k of triangle t is half-edge 3t + k; it goes from corner k to the next corner of the
 * triangle. On a closed body each half-edge has one mate that goes the other way.
 */
export interface EdgePairs {
  /** for each half-edge the half-edge it meets, or ALONE or FOLDED */
  readonly mates: Int32Array;
  /** edges where a triangle is missing on one side */
  readonly openEdges: number;
  /** pairs of triangles that go along an edge the same way: one of them is turned inside out */
  readonly misturnedEdges: number;
  /** edges at which more than two triangles meet */
  readonly crowdedEdges: number;
}

/**
 * Pairs the half-edges of a mesh, in time linear in triangles: each looks up its two corners in an open hash table.
 * Where more than two triangles meet, those that come after each other in the mesh and go opposite ways are paired.
 * Example: a tetrahedron has 12 half-edges, all with a mate; without one triangle, 3 are alone and 3 edges are open.
 */
export function pairEdges({ triangles }: Mesh): EdgePairs {
  const mates = new Int32Array(triangles.length).fill(ALONE);
  const table = new Int32Array(2 ** Math.ceil(Math.log2(SPARE * triangles.length + 1))).fill(EMPTY);
  const rest: number[] = [];
  for (let first = 0; first < triangles.length; first += 3) {
    const a = triangles[first]!;
    const b = triangles[first + 1]!;
    const c = triangles[first + 2]!;
    if (a === b || b === c || c === a) {
      mates.fill(FOLDED, first, first + 3);
      continue;
    }
    if (!pair(triangles, mates, table, first, a, b)) rest.push(first);
    if (!pair(triangles, mates, table, first + 1, b, c)) rest.push(first + 1);
    if (!pair(triangles, mates, table, first + 2, c, a)) rest.push(first + 2);
  }
  const irregular = settleRest(triangles, mates, table, rest);
  let openEdges = 0;
  for (const mate of mates) if (mate === ALONE) openEdges++;
  return { mates, openEdges, ...irregular };
}

/** The half-edge after this one in its triangle. Example: 3, 4, 5 give 4, 5, 3. */
export function nextInTriangle(halfEdge: number): number {
  return halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1;
}

const EMPTY = -1;

/** Places in the table for each half-edge: full to three quarters at most, where no edge has two sides. */
const SPARE = 4 / 3;

/** Places tried in a row before it goes on elsewhere in the table; a power of two. */
const RUN = 8;

/** Pairs a half-edge with the one that was first at its edge; false where that has a mate already or goes the same way. */
function pair(
  triangles: Uint32Array,
  mates: Int32Array,
  table: Int32Array,
  halfEdge: number,
  start: number,
  end: number,
): boolean {
  const other = firstAtEdge(triangles, table, halfEdge, start, end);
  if (other === halfEdge) return true;
  if (mates[other] !== ALONE || triangles[other] === start) return false;
  mates[other] = halfEdge;
  mates[halfEdge] = other;
  return true;
}

/**
 * The half-edge that came first at this edge; the given one itself, entered in the table, where it is the first. Edges of
 * corners with near numbers begin near each other in the table, so that a mesh in good order is fast; where it is crowded
 * there, the search goes on at mixed places, so that no mesh is slow.
 */
function firstAtEdge(
  triangles: Uint32Array,
  table: Int32Array,
  halfEdge: number,
  start: number,
  end: number,
): number {
  const mask = table.length - 1;
  const low = start < end ? start : end;
  const high = start < end ? end : start;
  let slot = (Math.imul(low, 3) + Math.imul(high, 5)) & mask;
  for (let tries = 1; ; tries++) {
    const other = table[slot]!;
    if (other === EMPTY) {
      table[slot] = halfEdge;
      return halfEdge;
    }
    const otherStart = triangles[other]!;
    const otherEnd = triangles[nextInTriangle(other)]!;
    if (otherStart === end && otherEnd === start) return other;
    if (otherStart === start && otherEnd === end) return other;
    slot = tries % RUN === 0 ? mixed(low, high, tries) & mask : (slot + 1) & mask;
  }
}

/** A number that seems random (multiply, shift and fold: the finish of "murmur", public domain). */
function mixed(low: number, high: number, tries: number): number {
  let bits = Math.imul(low + tries, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 16), 0xc2b2ae35);
  return bits ^ (bits >>> 13);
}

/** Pairs the half-edges at edges where not just two meet that go opposite ways, and counts what is wrong there. */
function settleRest(
  triangles: Uint32Array,
  mates: Int32Array,
  table: Int32Array,
  rest: readonly number[],
): Pick<EdgePairs, "misturnedEdges" | "crowdedEdges"> {
  const tally = { misturnedEdges: 0, crowdedEdges: 0 };
  if (rest.length === 0) return tally;
  const lastPlace = new Int32Array(triangles.length).fill(EMPTY);
  const placeBefore = Int32Array.from(rest, (halfEdge, place) => {
    const end = triangles[nextInTriangle(halfEdge)]!;
    const first = firstAtEdge(triangles, table, halfEdge, triangles[halfEdge]!, end);
    const before = lastPlace[first]!;
    lastPlace[first] = place;
    return before;
  });
  for (let first = 0; first < lastPlace.length; first++) {
    if (lastPlace[first] === EMPTY) continue;
    const halfEdges: number[] = [];
    for (let place = lastPlace[first]!; place !== EMPTY; place = placeBefore[place]!)
      halfEdges.push(rest[place]!);
    if (mates[first]! >= 0) halfEdges.push(mates[first]!);
    halfEdges.push(first);
    if (halfEdges.length > 2) tally.crowdedEdges++;
    tally.misturnedEdges += joinAll(triangles, mates, halfEdges.toReversed());
  }
  return tally;
}

/** Joins half-edges of the two ways in the order they come, then what is left of one way; gives the pairs of the same way. */
function joinAll(triangles: Uint32Array, mates: Int32Array, halfEdges: readonly number[]): number {
  const waiting: number[] = [];
  for (const halfEdge of halfEdges) {
    const other = waiting[0];
    if (other === undefined || triangles[other] === triangles[halfEdge]) waiting.push(halfEdge);
    else join(mates, waiting.shift()!, halfEdge);
  }
  const samePairs = Math.floor(waiting.length / 2);
  for (let at = 0; at < samePairs; at++) join(mates, waiting[2 * at]!, waiting[2 * at + 1]!);
  if (waiting.length % 2 === 1) mates[waiting.at(-1)!] = ALONE;
  return samePairs;
}

function join(mates: Int32Array, one: number, other: number): void {
  mates[one] = other;
  mates[other] = one;
}
