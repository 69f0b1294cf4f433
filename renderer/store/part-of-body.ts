import type { Part } from "../../core/shop/part.ts";
import { nextId } from "./next-id.ts";

const MOST_ID_CHARS = 60;

/**
 * A part to start from, named after its file: two walls, a fifth filled, any polymer, any side up. Figures are common practice,
 * no source, for the planner to overwrite. Example: "Clip tray.stl" gives part "clip-tray" with name "Clip tray".
 */
export function partOfBody(fileName: string, geometry: Part["geometry"], taken: ReadonlySet<string>): Part {
  const name = fileName.replace(/\.[^.]*$/, "").slice(0, 200) || "part";
  const plain =
    name
      .normalize("NFKD")
      .replace(/[^A-Za-z0-9]+/g, "-")
      .replace(/^-|-$/g, "")
      .toLowerCase()
      .slice(0, MOST_ID_CHARS) || "part";
  return {
    id: taken.has(plain) ? nextId(plain, taken) : plain,
    name,
    geometry,
    families: [],
    needs: {},
    smallestFeatureMm: 1.2,
    maxLayerHeightMm: 0.3,
    shells: 2,
    solidLayers: 4,
    infillPct: 20,
    supportAllowed: true,
    toolPathsReady: [],
    finishing: { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 0 },
  };
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
