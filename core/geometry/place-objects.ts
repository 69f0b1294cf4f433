import { ABSURD_COORDINATE, type Bodies, type Reading, ReadStop } from "./body-reading.ts";
import { warnOfOverlap } from "./boxes-overlap.ts";
import type { Mesh } from "./mesh.ts";
import { countPlaced, type PlacedCounts } from "./placed-counts.ts";
import { type ModelObject, objectWords, type Placement, type ThreeMfModel } from "./three-mf-model.ts";
import { type Transform, thenTransform, volumeFactor } from "./transform.ts";

/**
 * Puts the items of the build where the file says and joins them: components within components, each with the transforms of
 * all around it (component first). A mirroring transform turns its triangles round, so that their outside stays outside.
 * Example: one cylinder in six items gives six bodies, and six times its volume together.
 */
export function placeObjects(model: ThreeMfModel, reading: Reading, mmPerUnit: number): Bodies {
  const counts = countPlaced(model, reading);
  const placer = new Placer(model, counts, [mmPerUnit, 0, 0, 0, mmPerUnit, 0, 0, 0, mmPerUnit, 0, 0, 0]);
  const stretches = model.items
    .map((item) => placer.placeItem(item))
    .filter(({ triangles }) => triangles > 0);
  if (stretches.length === 0) {
    throw new ReadStop("no-triangles", "nothing that it builds has a triangle; save the body again");
  }
  warnOfOverlap(placer.leaves, reading);
  const { mesh } = placer;
  const [only] = stretches;
  if (only && stretches.length === 1)
    return { bodies: [{ name: only.name, mesh, triangles: only.triangles }], mesh };
  const bodies = stretches.map(({ name, triangles, fromCorner, fromTriangle }, place) => ({
    name,
    triangles,
    mesh: cutOut(mesh, fromCorner, stretches[place + 1]?.fromCorner, fromTriangle, triangles),
  }));
  return { bodies, mesh };
}

/** Where one item's corners and triangles begin in the whole, and how many triangles it has. */
interface Stretch {
  readonly name: string;
  readonly fromCorner: number;
  readonly fromTriangle: number;
  readonly triangles: number;
}

class Placer {
  readonly mesh: Mesh;
  /** each mesh as placed; their corners are views of the whole's */
  readonly leaves: Mesh[] = [];
  readonly #model: ThreeMfModel;
  readonly #toMm: Transform;
  #corners = 0;
  #triangles = 0;

  constructor(model: ThreeMfModel, { corners, triangles }: PlacedCounts, toMm: Transform) {
    this.#model = model;
    this.#toMm = toMm;
    this.mesh = { cornersMm: new Float64Array(3 * corners), triangles: new Uint32Array(3 * triangles) };
  }

  placeItem(item: Placement): Stretch {
    const [fromCorner, fromTriangle] = [this.#corners, this.#triangles];
    const object = this.#model.objects.get(item.objectId);
    if (object) this.#place(object, thenTransform(item.transform, this.#toMm));
    const name = object?.name || `object ${item.objectId}`;
    return { name, fromCorner, fromTriangle, triangles: this.#triangles - fromTriangle };
  }

  #place(object: ModelObject, transform: Transform): void {
    if (object.type !== "model") return;
    if (object.mesh && object.mesh.triangles.length > 0) this.#copy(object.mesh, object, transform);
    for (const component of object.components) {
      const inner = this.#model.objects.get(component.objectId);
      if (inner) this.#place(inner, thenTransform(component.transform, transform));
    }
  }

  #copy({ cornersMm, triangles }: Mesh, object: ModelObject, transform: Transform): void {
    const factor = volumeFactor(transform);
    if (factor === 0) {
      throw new ReadStop("transform", `${objectWords(object)} is flattened by its transform; save it again`);
    }
    const corners = this.#copyCorners(cornersMm, object, transform);
    const from = 3 * this.#triangles;
    for (let at = 0; at < triangles.length; at += 3) {
      const second = factor < 0 ? at + 2 : at + 1;
      const third = factor < 0 ? at + 1 : at + 2;
      this.mesh.triangles[from + at] = (triangles[at] ?? 0) + this.#corners;
      this.mesh.triangles[from + at + 1] = (triangles[second] ?? 0) + this.#corners;
      this.mesh.triangles[from + at + 2] = (triangles[third] ?? 0) + this.#corners;
    }
    this.leaves.push({ cornersMm: corners, triangles });
    this.#corners += corners.length / 3;
    this.#triangles += triangles.length / 3;
  }

  #copyCorners(cornersMm: Float64Array, object: ModelObject, transform: Transform): Float64Array {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0, dx = 0, dy = 0, dz = 0] = transform;
    const placed = this.mesh.cornersMm.subarray(3 * this.#corners, 3 * this.#corners + cornersMm.length);
    for (let at = 0; at < cornersMm.length; at += 3) {
      const x = cornersMm[at] ?? 0;
      const y = cornersMm[at + 1] ?? 0;
      const z = cornersMm[at + 2] ?? 0;
      placed[at] = x * a + y * d + z * g + dx;
      placed[at + 1] = x * b + y * e + z * h + dy;
      placed[at + 2] = x * c + y * f + z * i + dz;
    }
    if (placed.every((coordinate) => Math.abs(coordinate) < 1000 * ABSURD_COORDINATE)) return placed;
    throw new ReadStop(
      "absurd-coordinates",
      `${objectWords(object)} is put too far away or made too large by its transform; save it again`,
    );
  }
}

function cutOut(
  mesh: Mesh,
  fromCorner: number,
  toCorner: number | undefined,
  fromTriangle: number,
  count: number,
): Mesh {
  const cornersMm = mesh.cornersMm.subarray(
    3 * fromCorner,
    toCorner === undefined ? undefined : 3 * toCorner,
  );
  const triangles = mesh.triangles.slice(3 * fromTriangle, 3 * (fromTriangle + count));
  for (let at = 0; at < triangles.length; at++) triangles[at] = (triangles[at] ?? 0) - fromCorner;
  return { cornersMm, triangles };
}
