import type { Finding } from "../units/finding.ts";
import type { LengthUnit } from "./length-unit.ts";
import type { Mesh } from "./mesh.ts";

/** One body of a file, placed as the file says. */
export interface Body {
  readonly name: string;
  readonly mesh: Mesh;
  readonly triangles: number;
}

/** Bodies of a file, and all of them together, in mm. */
export interface Bodies {
  readonly bodies: readonly Body[];
  readonly mesh: Mesh;
}

/** What a file holds, with warnings; or no mesh, with the error that says why. */
export type BodyReading =
  | (Bodies & {
      readonly unit: LengthUnit;
      /** true: neither the file nor the caller told the unit */
      readonly unitIsGuess: boolean;
      readonly findings: readonly Finding[];
    })
  | { readonly mesh: null; readonly findings: readonly Finding[] };

/** How large a file may be; what is not given is as in `DEFAULT_LIMITS`. */
export interface ReadLimits {
  readonly maxFileBytes?: number;
  /** more triangles than this are read, with a warning */
  readonly warnTriangles?: number;
  readonly maxTriangles?: number;
  /** most bytes that a packed file may unpack to, all its parts together */
  readonly maxUnpackedBytes?: number;
  /** most bytes that one packed byte may become; ordinary models have 5 to 20 */
  readonly maxUnpackedRatio?: number;
}

export const DEFAULT_LIMITS: Required<ReadLimits> = {
  maxFileBytes: 500_000_000,
  warnTriangles: 2_000_000,
  maxTriangles: 10_000_000,
  maxUnpackedBytes: 1_000_000_000,
  maxUnpackedRatio: 200,
};

/** Coordinates at or above this, in the file's unit, are damage: 1000 km if it is in mm. */
export const ABSURD_COORDINATE = 1e9;

/** What is being read: its limits, and where doubts about it go. */
export interface Reading {
  readonly limits: Required<ReadLimits>;
  /** `what` completes a sentence that begins with the file's name */
  readonly warn: (code: string, what: string) => void;
}

/** Ends the reading of a file that cannot be used; `what` completes a sentence that begins with the file's name. */
export class ReadStop extends Error {
  readonly code: string;
  constructor(code: string, what: string) {
    super(what);
    this.code = code;
  }
}

/** Ends the reading of a file with more triangles than are read. */
export function tooManyTriangles({ limits }: Reading): never {
  throw new ReadStop(
    "too-many-triangles",
    `it holds more than ${limits.maxTriangles} triangles, the most that are read; save it with fewer`,
  );
}
