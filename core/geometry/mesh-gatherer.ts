import { ABSURD_COORDINATE, type Reading, ReadStop } from "./body-reading.ts";
import { decimalOfText } from "./decimal.ts";
import { GrowingNumbers } from "./growing.ts";
import type { Mesh } from "./mesh.ts";
import { withoutUnusedCorners } from "./split-mesh.ts";
import { Welder } from "./weld.ts";

const WHOLE = /^\s*\+?\d{1,10}\s*$/;

/** Takes the vertices and triangles of one 3MF object as the file gives them, and welds equal vertices. */
export class MeshGatherer {
  /** triangles that name one vertex twice, or two at one point: left out */
  withoutArea = 0;
  readonly #object: string;
  readonly #welder = new Welder(0);
  /** the welded corner of each vertex */
  readonly #corners = new GrowingNumbers();
  readonly #triangles = new GrowingNumbers();

  constructor(object: string) {
    this.#object = object;
  }

  get triangles(): number {
    return this.#triangles.length / 3;
  }

  vertex(x: string | undefined, y: string | undefined, z: string | undefined): void {
    const corner = this.#welder.cornerAt(this.#coordinate(x), this.#coordinate(y), this.#coordinate(z));
    this.#corners.push(corner);
  }

  triangle(v1: string | undefined, v2: string | undefined, v3: string | undefined): void {
    const a = this.#corner(v1);
    const b = this.#corner(v2);
    const c = this.#corner(v3);
    if (a === b || b === c || c === a) {
      this.withoutArea++;
      return;
    }
    this.#triangles.push(a);
    this.#triangles.push(b);
    this.#triangles.push(c);
  }

  /** The mesh in the file's unit. */
  taken(): Mesh {
    return withoutUnusedCorners({ cornersMm: this.#welder.corners(1), triangles: this.#triangles.taken() });
  }

  refuseMoreThan({ limits }: Reading): void {
    if (this.#corners.length > 3 * limits.maxTriangles) {
      throw new ReadStop(
        "too-many-triangles",
        `${this.#object} has more vertices than ${limits.maxTriangles} triangles can have, the most that are read; save it with fewer`,
      );
    }
  }

  #coordinate(text = ""): number {
    const value = decimalOfText(text) ?? NaN;
    if (Math.abs(value) < ABSURD_COORDINATE) return value;
    throw new ReadStop(
      "absurd-coordinates",
      `${this.#object}, vertex ${this.#corners.length}: "${text.slice(0, 30)}" is not a coordinate ` +
        `(a number with a decimal point, below ${ABSURD_COORDINATE}); save it again`,
    );
  }

  #corner(text = ""): number {
    const vertex = WHOLE.test(text) ? Number(text) : NaN;
    if (vertex < this.#corners.length) return this.#corners.at(vertex);
    throw new ReadStop(
      "no-such-vertex",
      `${this.#object}, triangle ${this.triangles + this.withoutArea}: it names vertex "${text.slice(0, 30)}", ` +
        `but there are ${this.#corners.length}, counted from 0; save it again`,
    );
  }
}
