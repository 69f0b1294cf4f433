import { type Reading, ReadStop, tooManyTriangles } from "./body-reading.ts";
import { type ModelObject, objectWords, type Placement, type ThreeMfModel } from "./three-mf-model.ts";

/** What a placed object or build takes, all its components included. */
export interface PlacedCounts {
  readonly corners: number;
  readonly triangles: number;
  readonly placements: number;
}

/** A few components within components can stand for billions: no build has more pieces than this. */
const MOST_PLACEMENTS = 100_000;
const DEEPEST = 100;
const NOTHING: PlacedCounts = { corners: 0, triangles: 0, placements: 0 };

/**
 * Counts what the build takes before anything is made, each object once however often it is used, and checks what it refers
 * to: no cycle, no unknown object, no more than the limits. Example: one box of 12 triangles in 6 items takes 72.
 */
export function countPlaced(model: ThreeMfModel, reading: Reading): PlacedCounts {
  if (model.items.length === 0) {
    throw new ReadStop(
      "nothing-to-build",
      "its build has no item, so it makes nothing; save it again with the body in the build",
    );
  }
  const counter = new Counter(model);
  const total = counter.sum(model.items, "the build", 0);
  counter.warnOfLeftOut(reading);
  if (total.triangles > reading.limits.maxTriangles) tooManyTriangles(reading);
  if (total.placements > MOST_PLACEMENTS) {
    throw new ReadStop(
      "too-many-objects",
      `its components within components make more than ${MOST_PLACEMENTS} pieces, the most that are read; save it with fewer`,
    );
  }
  return total;
}

class Counter {
  readonly #model: ThreeMfModel;
  readonly #known = new Map<string, PlacedCounts>();
  /** objects whose components are being counted */
  readonly #open = new Set<string>();
  readonly #leftOut = new Set<ModelObject>();

  constructor(model: ThreeMfModel) {
    this.#model = model;
  }

  sum(placements: readonly Placement[], of: string, depth: number): PlacedCounts {
    let { corners, triangles, placements: pieces } = NOTHING;
    for (const { objectId } of placements) {
      const object = this.#model.objects.get(objectId);
      if (!object) {
        throw new ReadStop(
          "no-such-object",
          `${of} refers to object "${objectId.slice(0, 30)}", which is not in the file; save it again`,
        );
      }
      const inner = this.#countOf(object, depth);
      corners += inner.corners;
      triangles += inner.triangles;
      pieces += inner.placements;
    }
    return { corners, triangles, placements: pieces };
  }

  warnOfLeftOut(reading: Reading): void {
    for (const object of [...this.#leftOut].slice(0, MOST_NAMED)) {
      reading.warn(
        "not-a-part",
        `${objectWords(object)} is of type ${object.type.slice(0, 30)}, not part of the body, and left out`,
      );
    }
    const more = this.#leftOut.size - MOST_NAMED;
    if (more > 0) reading.warn("not-a-part", `${more} more objects are not of type model and left out`);
  }

  #countOf(object: ModelObject, depth: number): PlacedCounts {
    if (object.type !== "model") {
      this.#leftOut.add(object);
      return NOTHING;
    }
    const known = this.#known.get(object.id);
    if (known) return known;
    this.#refuseNesting(object, depth);
    this.#open.add(object.id);
    const inner = this.sum(object.components, objectWords(object), depth + 1);
    this.#open.delete(object.id);
    const counts = {
      corners: inner.corners + (object.mesh?.cornersMm.length ?? 0) / 3,
      triangles: inner.triangles + (object.mesh?.triangles.length ?? 0) / 3,
      placements: inner.placements + 1,
    };
    this.#known.set(object.id, counts);
    return counts;
  }

  #refuseNesting(object: ModelObject, depth: number): void {
    if (this.#open.has(object.id)) {
      throw new ReadStop(
        "object-in-itself",
        `${objectWords(object)} is a component of itself; save it again`,
      );
    }
    if (depth > DEEPEST) {
      throw new ReadStop(
        "too-deep",
        `its components lie more than ${DEEPEST} deep in each other; save it with fewer levels`,
      );
    }
  }
}

const MOST_NAMED = 3;
