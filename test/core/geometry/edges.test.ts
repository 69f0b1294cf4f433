import { describe, expect, test } from "vitest";
import { ALONE, FOLDED, nextInTriangle, pairEdges } from "../../../core/geometry/edges.ts";
import type { Mesh } from "../../../core/geometry/mesh.ts";
import { seededRandom } from "../../../core/units/random.ts";
import { box, torus, without } from "../../fixtures/bodies.ts";

/** Triangles between corners drawn at random: edges of all kinds of wrong. */
function randomMesh(seed: number, corners: number, triangles: number): Mesh {
  const random = seededRandom(seed);
  return {
    cornersMm: new Float64Array(3 * corners),
    triangles: Uint32Array.from({ length: 3 * triangles }, () => Math.floor(random() * corners)),
  };
}

/** Counts by a plain table of edges, without any pairing. */
function countPlainly({ triangles }: Mesh) {
  const edges = new Map<string, { up: number; down: number }>();
  for (let halfEdge = 0; halfEdge < triangles.length; halfEdge++) {
    const first = halfEdge - (halfEdge % 3);
    if (new Set(triangles.subarray(first, first + 3)).size < 3) continue;
    const [start, end] = [triangles[halfEdge]!, triangles[nextInTriangle(halfEdge)]!];
    const name = `${Math.min(start, end)}-${Math.max(start, end)}`;
    const edge = edges.get(name) ?? { up: 0, down: 0 };
    edge[start < end ? "up" : "down"]++;
    edges.set(name, edge);
  }
  const counts = { openEdges: 0, misturnedEdges: 0, crowdedEdges: 0 };
  for (const { up, down } of edges.values()) {
    counts.openEdges += Math.abs(up - down) % 2;
    counts.misturnedEdges += Math.floor(Math.abs(up - down) / 2);
    counts.crowdedEdges += up + down > 2 ? 1 : 0;
  }
  return counts;
}

describe.each([
  [1, 5, 40],
  [2, 12, 30],
  [3, 40, 100],
  [4, 40, 2000],
  [5, 3000, 3000],
])("seed %i: %i corners, %i triangles at random", (seed, corners, triangles) => {
  const mesh = randomMesh(seed, corners, triangles);
  const { mates, ...counts } = pairEdges(mesh);

  test("are counted as by a plain table of edges", () => {
    expect(counts).toEqual(countPlainly(mesh));
  });

  test("are paired mutually, at the same two corners, and opposite ways wherever that is possible", () => {
    let sameWay = 0;
    for (const [halfEdge, mate] of mates.entries()) {
      if (mate < 0) continue;
      expect(mates[mate]).toBe(halfEdge);
      const ends = (each: number) => [mesh.triangles[each]!, mesh.triangles[nextInTriangle(each)]!];
      if (ends(halfEdge)[0] === ends(mate)[0]) sameWay++;
      expect(ends(halfEdge).toSorted()).toEqual(ends(mate).toSorted());
    }
    expect(sameWay).toBe(2 * counts.misturnedEdges);
    expect(mates.filter((mate) => mate === ALONE)).toHaveLength(counts.openEdges);
  });
});

test("each half-edge of a box has a mate that goes the other way", () => {
  const mesh = box(1, 2, 3);
  const { mates } = pairEdges(mesh);
  for (const [halfEdge, mate] of mates.entries()) {
    expect(mesh.triangles[mate]).toBe(mesh.triangles[nextInTriangle(halfEdge)]);
    expect(mesh.triangles[nextInTriangle(mate)]).toBe(mesh.triangles[halfEdge]);
  }
});

test("a triangle that names a corner twice is left out, and its neighbours meet", () => {
  const mesh = box(1, 2, 3);
  const folded = { cornersMm: mesh.cornersMm, triangles: Uint32Array.from([0, 1, 1, ...mesh.triangles]) };
  const { mates, openEdges } = pairEdges(folded);
  expect([...mates.subarray(0, 3)]).toEqual([FOLDED, FOLDED, FOLDED]);
  expect(openEdges).toBe(0);
});

test("an open edge of a large body is found", () => {
  expect(pairEdges(without(torus(20_000, 100, 30), 777)).openEdges).toBe(3);
});

test("two hundred thousand triangles at random, with edges of all kinds of wrong, take no more than seconds", () => {
  const startMs = performance.now();
  pairEdges(randomMesh(6, 100_000, 200_000));
  expect(performance.now() - startMs).toBeLessThan(5000);
});
