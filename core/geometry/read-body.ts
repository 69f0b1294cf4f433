import type { Finding } from "../units/finding.ts";
import {
  type Bodies,
  type BodyReading,
  DEFAULT_LIMITS,
  type Reading,
  type ReadLimits,
  ReadStop,
} from "./body-reading.ts";
import { fileKind } from "./file-kind.ts";
import { type LengthUnit, MM_PER_UNIT } from "./length-unit.ts";
import { boxOf, largestSideMm } from "./mesh-box.ts";
import { readThreeMf } from "./read-3mf.ts";
import { readStlBinary, readStlText } from "./read-stl.ts";
import { binaryStlBytes } from "./read-binary-stl.ts";
import { warnOfAbsurdSize } from "./unit-doubt.ts";

interface ReadOptions {
  readonly fileName: string;
  /** null: the file's own, else a guess */
  readonly unit: LengthUnit | null;
  readonly limits?: ReadLimits;
}

/**
 * Reads the bodies of a file, told by its content: STL (binary or ASCII) or 3MF. Whatever cannot be used comes back as one
 * error in a sentence; nothing is thrown for bad files. Example: a binary STL of a box gives one body of 12 triangles.
 */
export function readBody(bytes: Uint8Array, { fileName, unit, limits }: ReadOptions): BodyReading {
  const findings: Finding[] = [];
  const note = (severity: Finding["severity"]) => (code: string, what: string) =>
    findings.push({ severity, code, where: fileName, sentence: `${fileName}: ${what}.` });
  const reading: Reading = { limits: { ...DEFAULT_LIMITS, ...limits }, warn: note("warning") };
  try {
    const read = readKind(bytes, fileName, unit, reading);
    warnOfSize(read, reading);
    return { ...read, findings };
  } catch (problem) {
    if (!(problem instanceof ReadStop)) throw problem;
    note("error")(problem.code, problem.message);
    return { mesh: null, findings: findings.toReversed() };
  }
}

type Read = Bodies & { readonly unit: LengthUnit; readonly unitIsGuess: boolean };

function readKind(bytes: Uint8Array, fileName: string, unit: LengthUnit | null, reading: Reading): Read {
  refuseSize(bytes, reading);
  const found = fileKind(bytes);
  const name = fileName.replace(/^.*[/\\]/, "").replace(/\.[^.]*$/, "") || fileName;
  const guess = { unit: unit ?? "millimeter", unitIsGuess: unit === null } as const;
  switch (found.kind) {
    case "binary STL":
      return { ...readStlBinary(bytes, name, reading, MM_PER_UNIT[guess.unit]), ...guess };
    case "ASCII STL":
      return { ...readStlText(bytes, found.start, name, reading, MM_PER_UNIT[guess.unit]), ...guess };
    case "package":
      return { ...readThreeMf(bytes, reading, unit), unitIsGuess: false };
    case "cut binary STL":
      throw new ReadStop(
        "cut-short",
        `as a binary STL it announces ${found.claimed} triangles, which take ${binaryStlBytes(found.claimed)} bytes, ` +
          `but has ${bytes.length}: it was cut short or is no STL; save or copy it again`,
      );
    case "other":
      throw new ReadStop(
        "not-a-body",
        `it is ${found.what}, not a body in STL or 3MF; save the body as one of them`,
      );
  }
}

function refuseSize(bytes: Uint8Array, { limits }: Reading): void {
  if (bytes.length === 0) throw new ReadStop("empty-file", "the file is empty; save the body again");
  if (bytes.length <= limits.maxFileBytes) return;
  throw new ReadStop(
    "file-too-large",
    `the file has ${bytes.length} bytes, above the ${limits.maxFileBytes} that are read; save it with fewer triangles`,
  );
}

function warnOfSize({ mesh, unit, unitIsGuess }: Read, reading: Reading): void {
  warnOfAbsurdSize(largestSideMm(boxOf(mesh)), unit, unitIsGuess, reading);
  const triangles = mesh.triangles.length / 3;
  if (triangles <= reading.limits.warnTriangles) return;
  reading.warn(
    "many-triangles",
    `it has ${triangles} triangles, so that measuring takes long; a body with fewer says the same about a print`,
  );
}
