import { measuresOfBody } from "../core/estimate/part-measures.ts";
import { bodyFindings } from "../core/geometry/body-findings.ts";
import type { LengthUnit } from "../core/geometry/length-unit.ts";
import { measureBody } from "../core/geometry/measure.ts";
import type { Mesh } from "../core/geometry/mesh.ts";
import type { Measures, Part } from "../core/shop/part.ts";
import type { Finding } from "../core/units/finding.ts";
import { readBodyFile } from "./read-body-file.ts";

/** A mesh file measured as a part's body. */
export interface PartBody {
  readonly mesh: Mesh;
  readonly unit: LengthUnit;
  readonly sha256: string;
  readonly measures: Measures;
}

/** How the file is read and spoken of. */
export interface PartBodyOptions {
  /** null: the file's own unit, or a guess */
  readonly unit: LengthUnit | null;
  /** what findings about the body call it */
  readonly name: string;
  readonly buildDirections?: Part["buildDirections"];
  readonly orientations?: Part["orientations"];
}

/** Reads and measures one mesh file as the body of a part; no body where anything about it is an error. */
export async function readPartBody(
  path: string,
  { unit, name, ...directions }: PartBodyOptions,
): Promise<{ body: PartBody | null; findings: readonly Finding[] }> {
  const file = await readBodyFile(path, unit);
  if (!("reading" in file)) return { body: null, findings: [file] };
  const { reading, sha256 } = file;
  if (reading.mesh === null) return { body: null, findings: reading.findings };
  const { mesh } = reading;
  const body = measureBody(mesh);
  const findings = [...reading.findings, ...bodyFindings(body, name)];
  if (findings.some(({ severity }) => severity === "error")) return { body: null, findings };
  const measures = measuresOfBody(mesh, { body, ...directions });
  return { body: { mesh, unit: reading.unit, sha256, measures }, findings };
}
