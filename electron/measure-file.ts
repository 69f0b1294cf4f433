import { bodyFindings } from "../core/geometry/body-findings.ts";
import type { LengthUnit } from "../core/geometry/length-unit.ts";
import { type BodyFacts, bodyFacts } from "../core/report/body-facts.ts";
import { bodyLines } from "../core/report/body-text.ts";
import { countText, fixedText } from "../core/report/display.ts";
import { visibleText } from "../core/report/plain-text.ts";
import type { Finding } from "../core/units/finding.ts";
import { readBodyFile } from "./read-body-file.ts";

/** One mesh file as measured; `facts` null: it cannot be used, the findings say why. */
export interface MeasuredFile {
  readonly path: string;
  readonly bytes: number;
  readonly unit: LengthUnit | null;
  readonly unitIsGuess: boolean;
  readonly bodies: readonly { readonly name: string; readonly triangles: number }[];
  readonly facts: BodyFacts | null;
  readonly findings: readonly Finding[];
}

/** Reads and measures one mesh file. */
export async function measureFile(path: string, unit: LengthUnit | null): Promise<MeasuredFile> {
  const nothing = { path, bytes: 0, unit: null, unitIsGuess: false, bodies: [], facts: null };
  const file = await readBodyFile(path, unit);
  if (!("reading" in file)) return { ...nothing, findings: [file] };
  const { reading, bytes } = file;
  if (reading.mesh === null) return { ...nothing, bytes, findings: reading.findings };
  const facts = bodyFacts(reading.mesh);
  return {
    path,
    bytes,
    unit: reading.unit,
    unitIsGuess: reading.unitIsGuess,
    bodies: reading.bodies.map(({ name, triangles }) => ({ name, triangles })),
    facts,
    findings: [...reading.findings, ...bodyFindings(facts.measures, path)],
  };
}

/** One measured file as lines for a terminal; none where it could not be measured. */
export function measuredLines({ path, bytes, unit, unitIsGuess, bodies, facts }: MeasuredFile): string[] {
  if (!facts) return [];
  const inside = bodies.length > 1 ? `, ${countText(bodies.length, "body", "bodies")} built together` : "";
  const kilobytes = `${fixedText(bytes / 1000, bytes < 1e4 ? 1 : 0)} kB`;
  const head = `${visibleText(path)} (${kilobytes}, unit ${unit}${unitIsGuess ? " assumed" : ""}${inside})`;
  return [head, ...bodyLines(facts)];
}

/** One measured file as `--json` prints it. */
export function measuredDocument({ facts, ...file }: MeasuredFile): unknown {
  return { ...file, measures: facts?.measures ?? null, standings: facts?.standings ?? [] };
}
