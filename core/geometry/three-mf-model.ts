import type { LengthUnit } from "./length-unit.ts";
import type { Mesh } from "./mesh.ts";
import type { Transform } from "./transform.ts";

/** An object put somewhere: an item of the build, or a component of another object. */
export interface Placement {
  readonly objectId: string;
  readonly transform: Transform;
}

/** An object of a 3MF: a mesh in the file's unit, or components, which are other objects. */
export interface ModelObject {
  readonly id: string;
  /** as the file names it, else empty */
  readonly name: string;
  /** "model" is the part; "support", "solidsupport", "surface" and "other" are not */
  readonly type: string;
  readonly mesh: Mesh | null;
  readonly components: readonly Placement[];
}

/** A 3MF model as its XML says it, nothing placed yet. */
export interface ThreeMfModel {
  readonly unit: LengthUnit;
  readonly objects: ReadonlyMap<string, ModelObject>;
  readonly items: readonly Placement[];
}

/** Objects, components and items of one file together: far more than any has, few enough for the memory. */
export const MOST_ENTRIES = 100_000;

/** How an object is called in a sentence. Example: `object 3 "wheel"`. */
export function objectWords({ id, name }: ModelObject): string {
  return name === "" ? `object ${id}` : `object ${id} "${name}"`;
}
