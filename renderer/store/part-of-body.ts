import type { Part } from "../../core/shop/part.ts";
import { usualPart } from "../../core/shop/usual-part.ts";
import { nextId } from "./next-id.ts";

const MOST_ID_CHARS = 60;

/** A part to start from, named after its file. Example: "Clip tray.stl" gives part "clip-tray" with name "Clip tray". */
export function partOfBody(fileName: string, geometry: Part["geometry"], taken: ReadonlySet<string>): Part {
  const name = fileName.replace(/\.[^.]*$/, "").slice(0, 200) || "part";
  const plain =
    name
      .normalize("NFKD")
      .replace(/[^A-Za-z0-9]+/g, "-")
      .replace(/^-|-$/g, "")
      .toLowerCase()
      .slice(0, MOST_ID_CHARS) || "part";
  return usualPart({ id: taken.has(plain) ? nextId(plain, taken) : plain, name }, geometry);
}

/** A cube of 20 mm, known by measures alone, to be overwritten by those of the part or by its file. */
export function newPart(taken: ReadonlySet<string>): Part {
  const measures = { volumeMm3: 8000, areaMm2: 2400, boxMm: { x: 20, y: 20, z: 20 } };
  return {
    ...partOfBody("part-0", { kind: "measures", measures }, new Set()),
    id: nextId("part-0", taken),
    name: "New part",
  };
}
