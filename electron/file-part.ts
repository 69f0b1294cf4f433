import { basename } from "node:path";
import type { LengthUnit } from "../core/geometry/length-unit.ts";
import type { Mesh } from "../core/geometry/mesh.ts";
import { shortText } from "../core/report/plain-text.ts";
import type { Measures, Part } from "../core/shop/part.ts";
import type { Finding } from "../core/units/finding.ts";
import { readPartBody } from "./read-part-body.ts";

/** What is taken of a part that is known by its mesh alone. */
const WALLS = 3;
const SOLID_LAYERS = 4;
const INFILL_PCT = 15;
/** No surface is asked for, so any nozzle's thickest layer may show. */
const ANY_LAYER_MM = 100;
const NAME_CHARS = 60;

/** A part made from a mesh file, and what was odd about the file; no part where it cannot be used. */
export interface FilePart {
  readonly part: Part | null;
  readonly mesh: Mesh | null;
  readonly findings: readonly Finding[];
}

/** Reads a mesh file as a part with usual settings, which `assumedText` tells. */
export async function readFilePart(path: string, unit: LengthUnit | null): Promise<FilePart> {
  const { body, findings } = await readPartBody(path, { unit, name: path });
  if (!body) return { part: null, mesh: null, findings };
  const { mesh, ...measured } = body;
  const geometry = { kind: "mesh", file: basename(path), ...measured } as const;
  const part = { ...usualPart(shortText(basename(path), NAME_CHARS), measured.measures), geometry };
  return { part, mesh, findings };
}

/** How much of the height may be thinner than what counts as the smallest detail: tips and edges always are. */
const THIN_SHARE = 0.1;

/** What nine tenths of the height are at least as thick as, mm. */
function smallestDetailMm({ standings, boxMm }: Measures): number {
  const cuts = standings?.find(({ up }) => up === "z")?.cuts ?? [];
  const heightMm = cuts.at(-1)?.zMm ?? 0;
  const thick = cuts
    .map(({ zMm, thinnestMm }, at) => ({ thinnestMm, heightMm: zMm - (cuts[at - 1]?.zMm ?? 0) }))
    .filter(({ thinnestMm }) => thinnestMm > 0)
    .toSorted((a, b) => a.thinnestMm - b.thinnestMm);
  let below = 0;
  const found = thick.find((cut) => (below += cut.heightMm) > THIN_SHARE * heightMm);
  return Math.min(found?.thinnestMm ?? Infinity, boxMm.x, boxMm.y, boxMm.z);
}

function usualPart(name: string, measures: Measures): Omit<Part, "geometry"> {
  return {
    id: name,
    name,
    families: [],
    needs: {},
    smallestFeatureMm: smallestDetailMm(measures),
    maxLayerHeightMm: ANY_LAYER_MM,
    shells: WALLS,
    solidLayers: SOLID_LAYERS,
    infillPct: INFILL_PCT,
    supportAllowed: true,
    toolPathsReady: [],
    finishing: { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 0 },
  };
}

/** What was assumed of a part from a file, in one sentence. */
export function assumedText(part: Part, quantity: number): string {
  const copies = quantity === 1 ? "1 copy" : `${quantity} copies`;
  return `Assumed: ${copies}, ${WALLS} walls, ${INFILL_PCT} % infill, ${SOLID_LAYERS} solid layers below and above, smallest detail ${Number(part.smallestFeatureMm.toFixed(2))} mm, any layer height, any material, supports allowed, no finishing. Put the part into the shop to say otherwise.`;
}
