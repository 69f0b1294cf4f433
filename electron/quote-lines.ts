import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import Papa from "papaparse";
import type { LengthUnit } from "../core/geometry/length-unit.ts";
import type { Mesh } from "../core/geometry/mesh.ts";
import { readLinesTable, type WrittenLine } from "../core/quote/lines-table.ts";
import type { Part } from "../core/shop/part.ts";
import type { Shop } from "../core/shop/shop.ts";
import type { Finding } from "../core/units/finding.ts";
import { fileFinding, readingWords } from "./file-finding.ts";
import { readFilePart } from "./file-part.ts";

/** Lines of a CSV file, which is UTF-8; separators are guessed. Nothing throws for a bad file: it comes back as findings. */
export async function readCsvLines(
  path: string,
): Promise<{ lines: readonly WrittenLine[]; findings: readonly Finding[] }> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    return { lines: [], findings: [fileFinding(path, readingWords(error, "the table"))] };
  }
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), {
    delimitersToGuess: [",", ";", "\t", "|"],
  });
  const { lines, findings } = readLinesTable(data);
  return {
    lines,
    findings: findings.map((finding) => ({ ...finding, sentence: `${path}: ${finding.sentence}` })),
  };
}

/** Parts that are asked for, all of them in the shop now. */
export interface AskedParts {
  /** with a part for each mesh file */
  readonly shop: Shop;
  /** by what was written: the part */
  readonly partOf: ReadonlyMap<string, Part>;
  /** by part id: bodies that were read */
  readonly meshes: ReadonlyMap<string, Mesh>;
  /** parts made from a file, with settings that were assumed */
  readonly assumed: readonly Part[];
  readonly findings: readonly Finding[];
}

const MESH_NAME = /\.(stl|3mf)$/i;

/**
 * Finds what was written among the shop's parts, or reads it as a mesh file whose part a copy of the shop gets. Equal names are
 * read once. A name that is neither comes back as a finding.
 */
export async function askedParts(
  shop: Shop,
  names: readonly string[],
  unit: LengthUnit | null,
): Promise<AskedParts> {
  const partOf = new Map<string, Part>();
  const meshes = new Map<string, Mesh>();
  const assumed: Part[] = [];
  const findings: Finding[] = [];
  const parts = [...shop.parts];
  for (const name of new Set(names)) {
    const known = shop.parts.find(({ id }) => id === name);
    if (known) {
      partOf.set(name, known);
      continue;
    }
    const file = await readFilePart(name, unit);
    if (!file.part || !file.mesh) {
      findings.push(...(isNoFile(file.findings, name) ? [neither(name)] : file.findings));
      continue;
    }
    const part = { ...file.part, id: freePartId(file.part.id, parts) };
    parts.push(part);
    partOf.set(name, part);
    meshes.set(part.id, file.mesh);
    assumed.push(part);
    findings.push(...file.findings);
  }
  return { shop: { ...shop, parts }, partOf, meshes, assumed, findings };
}

function isNoFile(findings: readonly Finding[], name: string): boolean {
  return findings.some(({ code }) => code === "file") && !MESH_NAME.test(name);
}

function neither(name: string): Finding {
  return {
    severity: "error",
    code: "unknown-part",
    where: basename(name),
    sentence: `The shop has no part "${name}", and there is no mesh file of that name. Name an id of the shop, or an STL or 3MF file.`,
  };
}

/** Two files of one name in two folders are two parts. */
function freePartId(wanted: string, parts: readonly Part[]): string {
  let id = wanted;
  for (let more = 2; parts.some((part) => part.id === id); more++) id = `${wanted}-${more}`;
  return id;
}
