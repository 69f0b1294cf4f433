import { readFile, stat } from "node:fs/promises";
import { basename } from "node:path";
import { type BodyReading, DEFAULT_LIMITS } from "../core/geometry/body-reading.ts";
import type { LengthUnit } from "../core/geometry/length-unit.ts";
import { readBody } from "../core/geometry/read-body.ts";
import type { Finding } from "../core/units/finding.ts";
import { fileFinding, readingWords } from "./file-finding.ts";
import { sha256 } from "./store/sha256.ts";

/** A mesh file as read. */
export interface BodyFile {
  readonly bytes: number;
  readonly sha256: string;
  readonly reading: BodyReading;
}

/** Reads one mesh file; null: the unit is the file's own or a guess. Nothing throws for a bad file: it comes back as a finding. */
export async function readBodyFile(path: string, unit: LengthUnit | null): Promise<BodyFile | Finding> {
  const content = await readContent(path);
  if (!(content instanceof Uint8Array)) return content;
  const reading = readBody(content, { fileName: basename(path), unit });
  return { bytes: content.length, sha256: sha256(content), reading };
}

/** Bytes of a file that may be a body; the size is looked at first, so that nothing huge is read in vain. */
async function readContent(path: string): Promise<Uint8Array | Finding> {
  try {
    const info = await stat(path);
    if (!info.isFile() && !info.isDirectory()) return fileFinding(path, NO_FILE);
    if (info.size > DEFAULT_LIMITS.maxFileBytes) return fileFinding(path, TOO_LARGE);
    return await readFile(path);
  } catch (error) {
    return fileFinding(path, readingWords(error, "the mesh files"));
  }
}

const NO_FILE = "this is a pipe or a device, not a file. Name a mesh file.";
const TOO_LARGE = `the file is larger than ${DEFAULT_LIMITS.maxFileBytes / 1e6} MB; save the body with fewer triangles.`;
