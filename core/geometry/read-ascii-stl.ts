import { ABSURD_COORDINATE, type Reading, ReadStop, tooManyTriangles } from "./body-reading.ts";
import { BadTriangles } from "./bad-triangles.ts";
import { asciiOf, decimalOf } from "./decimal.ts";
import { GrowingNumbers } from "./growing.ts";
import type { Mesh } from "./mesh.ts";
import { withoutUnusedCorners } from "./split-mesh.ts";
import { StlWords } from "./stl-words.ts";
import { Welder } from "./weld.ts";

/** A named stretch of a mesh's triangles. */
export interface Solid {
  readonly name: string;
  readonly fromTriangle: number;
  readonly toTriangle: number;
}

/** Typical text of one triangle is 250 bytes; less is met rarely, and then the arrays grow. */
const USUAL_TRIANGLE_BYTES = 250;
const LONGEST_NAME_BYTES = 200;

/**
 * Reads an ASCII STL: solids one after the other, each with a name or none. Line ends, indentation and upper or lower case do
 * not matter; stored normals are not used. Corners are welded over the whole file, since some programs write each face of a
 * body as a solid. Example: two solids of 12 triangles give 24 triangles, the first solid being [0, 12).
 */
export function readAsciiStl(
  bytes: Uint8Array,
  start: number,
  reading: Reading,
  mmPerUnit: number,
): { mesh: Mesh; solids: Solid[] } {
  const parser = new AsciiStl(bytes, start, reading);
  const solids = parser.solids();
  parser.bad.tell(reading);
  const mesh = { cornersMm: parser.welder.corners(mmPerUnit), triangles: parser.triangles.taken() };
  return { mesh: withoutUnusedCorners(mesh), solids };
}

class AsciiStl {
  readonly words: StlWords;
  readonly reading: Reading;
  readonly welder: Welder;
  readonly triangles: GrowingNumbers;
  readonly bad = new BadTriangles();
  /** triangles met so far, those left out included */
  #met = 0;
  readonly #corner: [number, number, number] = [0, 0, 0];

  constructor(bytes: Uint8Array, start: number, reading: Reading) {
    const expected = Math.ceil(bytes.length / USUAL_TRIANGLE_BYTES);
    this.words = new StlWords(bytes, start);
    this.reading = reading;
    this.welder = new Welder(Math.ceil(expected / 2));
    this.triangles = new GrowingNumbers(3 * expected);
  }

  solids(): Solid[] {
    const solids: Solid[] = [];
    while (this.words.next()) {
      if (!this.words.is("solid")) this.#unexpected("solid");
      const fromTriangle = this.triangles.length / 3;
      const name = this.#nameAndFacets();
      solids.push({ name, fromTriangle, toTriangle: this.triangles.length / 3 });
    }
    return solids;
  }

  /** From the word "solid" to the end of "endsolid" with its name. */
  #nameAndFacets(): string {
    const { words } = this;
    const name = this.#name();
    while (words.next()) {
      if (words.is("facet")) this.#facet();
      else if (words.is("endsolid")) {
        this.#skipLine();
        return name;
      } else this.#unexpected("facet or endsolid");
    }
    this.reading.warn(
      "no-endsolid",
      "the text ends without endsolid, so it may have been cut short; compare its measures with the original",
    );
    return name;
  }

  /** The rest of the line after "solid", or what comes before the first facet where all is on one line. */
  #name(): string {
    const { words } = this;
    const start = words.to;
    while (words.hasMoreOnLine()) {
      const before = words.to;
      words.next();
      if (words.is("endsolid") || (words.is("facet") && this.#isFacet())) {
        words.to = before;
        break;
      }
    }
    const text = asciiOf(words.bytes, start, Math.min(words.to, start + LONGEST_NAME_BYTES));
    return text.replaceAll(/[^ -~]+/g, " ").trim();
  }

  /** True where "normal" follows the present word; does not move. */
  #isFacet(): boolean {
    const { from, to } = this.words;
    this.words.next();
    const isFacet = this.words.is("normal");
    this.words.from = from;
    this.words.to = to;
    return isFacet;
  }

  #skipLine(): void {
    const { words } = this;
    while (words.hasMoreOnLine()) {
      const before = words.to;
      words.next();
      if (words.is("solid")) {
        words.to = before;
        return;
      }
    }
  }

  #facet(): void {
    if (this.#met++ >= this.reading.limits.maxTriangles) tooManyTriangles(this.reading);
    this.#expect("normal");
    for (let number = 0; number < 3; number++) this.words.next();
    this.#expect("outer");
    this.#expect("loop");
    const a = this.#vertex();
    const b = this.#vertex();
    const c = this.#vertex();
    this.#expect("endloop");
    this.#expect("endfacet");
    if (a < 0 || b < 0 || c < 0) this.bad.absurd(this.#met - 1);
    else if (a === b || b === c || c === a) this.bad.withoutArea++;
    else {
      this.triangles.push(a);
      this.triangles.push(b);
      this.triangles.push(c);
    }
  }

  /** The number of the welded corner, or -1 where a coordinate is not a number or absurd. */
  #vertex(): number {
    this.#expect("vertex");
    let isSound = true;
    for (let axis = 0; axis < 3; axis++) {
      const value = this.#coordinate();
      this.#corner[axis] = value;
      isSound &&= Math.abs(value) < ABSURD_COORDINATE;
    }
    return isSound ? this.welder.cornerAt(...this.#corner) : -1;
  }

  #coordinate(): number {
    const { words } = this;
    words.next();
    const value = decimalOf(words.bytes, words.from, words.to);
    if (value !== null) return value;
    const word = words.shown();
    if (/^[+-]?(\d\.#)?(nan|inf|ind|1\.#)/i.test(word)) return NaN;
    if (/^[+-]?\d*,\d/.test(word)) {
      throw new ReadStop(
        "decimal-comma",
        `line ${words.line()}: "${word}" has a decimal comma; save it with decimal points`,
      );
    }
    return this.#unexpected("a number");
  }

  #expect(word: string): void {
    this.words.next();
    if (!this.words.is(word)) this.#unexpected(word);
  }

  #unexpected(expected: string): never {
    const { words } = this;
    if (words.from === words.to) {
      throw new ReadStop(
        "cut-short",
        `the text ends within triangle ${Math.max(1, this.#met)}, where ${expected} should follow; it was cut short, save it again`,
      );
    }
    throw new ReadStop(
      "not-stl",
      `line ${words.line()}: "${words.shown()}" stands where ${expected} should be; the text is no STL or damaged, save it again`,
    );
  }
}
