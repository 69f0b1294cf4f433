import { basename } from "node:path";
import type { LengthUnit } from "../core/geometry/length-unit.ts";
import type { Mesh } from "../core/geometry/mesh.ts";
import { shortText } from "../core/report/plain-text.ts";
import type { Part } from "../core/shop/part.ts";
import { usualPart } from "../core/shop/usual-part.ts";
import type { Finding } from "../core/units/finding.ts";
import { readPartBody } from "./read-part-body.ts";

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
  const name = shortText(basename(path), NAME_CHARS);
  const part = usualPart({ id: name, name }, { kind: "mesh", file: basename(path), ...measured });
  return { part, mesh, findings };
}

/** What was assumed of a part from a file, in one sentence. */
export function assumedText(part: Part, quantity: number): string {
  const copies = quantity === 1 ? "1 copy" : `${quantity} copies`;
  return `Assumed: ${copies}, ${part.shells} walls, ${part.infillPct} % infill, ${part.solidLayers} solid layers below and above, smallest detail ${Number(part.smallestFeatureMm.toFixed(2))} mm, any layer height, any material, supports allowed, no finishing. Put the part into the shop to say otherwise.`;
}
