import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { measuresOfBody } from "../../core/estimate/part-measures.ts";
import { readBody } from "../../core/geometry/read-body.ts";
import type { Part } from "../../core/shop/part.ts";
import type { PartPlan } from "./part-kinds.ts";

const ASSETS = new URL("../", import.meta.url);

/** A part with its mesh from assets/bodies/, which bears its id, measured. */
export function withBody(plan: PartPlan): Part {
  const file = ["stl", "3mf"]
    .map((ending) => `bodies/${plan.id}.${ending}`)
    .find((path) => existsSync(new URL(path, ASSETS)));
  if (!file) throw new RangeError(`no mesh file for ${plan.id}: run assets/demo/make-bodies.ts first`);
  const bytes = readFileSync(new URL(file, ASSETS));
  const reading = readBody(new Uint8Array(bytes), {
    fileName: file,
    unit: file.endsWith(".stl") ? "millimeter" : null,
  });
  if (reading.mesh === null) throw new RangeError(reading.findings[0]?.sentence);
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  const measures = measuresOfBody(reading.mesh, { orientations: plan.orientations });
  return { ...plan, geometry: { kind: "mesh", file, sha256, unit: reading.unit, measures } };
}
