import { ABSURD_COORDINATE, type Reading, ReadStop } from "./body-reading.ts";

const MOST_NAMED = 6;

/** Triangles of one file that cannot be used as they are. Triangles count from 1 in sentences. */
export class BadTriangles {
  /** triangles of which two corners are the same point: left out, the surface stays as closed as it was */
  withoutArea = 0;
  #absurd = 0;
  readonly #named: number[] = [];

  /** Notes a triangle, counted from 0, with a coordinate that is no number or larger than any body. */
  absurd(triangle: number): void {
    this.#absurd++;
    if (this.#named.length < MOST_NAMED) this.#named.push(triangle + 1);
  }

  /** Warns of triangles left out; stops the reading when coordinates cannot be used. */
  tell(reading: Reading): void {
    if (this.#absurd > 0) throw new ReadStop("absurd-coordinates", this.#absurdWords());
    warnWithoutArea(this.withoutArea, reading);
  }

  #absurdWords(): string {
    const hidden = this.#absurd - this.#named.length;
    const which = `${this.#named.join(", ")}${hidden > 0 ? ` and ${hidden} more` : ""}`;
    return (
      `triangle ${which}: a coordinate is not a number or not below ${ABSURD_COORDINATE}; ` +
      "the file is damaged, save the body again"
    );
  }
}

/** Warns of triangles that were left out because two of their corners are the same point. */
export function warnWithoutArea(count: number, reading: Reading): void {
  if (count === 0) return;
  reading.warn(
    "triangles-without-area",
    `${count === 1 ? "one triangle has" : `${count} triangles have`} two corners at the same point and so no area; ` +
      "left out, which changes neither volume nor surface",
  );
}
