import { basename, dirname } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { countText, fixedText } from "../core/report/display.ts";
import type { Measures, Part } from "../core/shop/part.ts";
import type { Finding } from "../core/units/finding.ts";
import { EXIT, UsageError } from "./exit-status.ts";
import { printFindings } from "./print-findings.ts";
import { readPartBody } from "./read-part-body.ts";
import { readShopFile } from "./read-shop-file.ts";
import { meshFileFinding, outsideWords } from "./shop-bodies.ts";
import { writeAtomically } from "./store/atomic-write.ts";
import { besideShop } from "./store/beside-shop.ts";
import { troubleOf } from "./store/file-trouble.ts";
import { freePath } from "./store/free-name.ts";

type MeshGeometry = Extract<Part["geometry"], { kind: "mesh" }>;

/**
 * Measures the mesh files of a shop's parts again and writes what has changed into the shop file, atomically, with the old file
 * kept beside it as a file whose name ends in `.bak`. Entries that the program does not understand stay as they are. Parts whose
 * file cannot be used keep their measures and are named. Status 0, or 2 where one could not be measured.
 */
export async function measureShop(path: string): Promise<number> {
  const { text, shop, findings } = await readShopFile(path);
  if (!shop) {
    printFindings(findings, ["error"]);
    return EXIT.badInput;
  }
  const fresh = new Map<string, MeshGeometry>();
  const troubles: Finding[] = [];
  const meshParts = shop.parts.filter(({ geometry }) => geometry.kind === "mesh");
  for (const part of meshParts) {
    const measured = await measurePart(path, part);
    printFindings(measured.findings);
    troubles.push(...measured.findings.filter(({ severity }) => severity === "error"));
    if (measured.geometry && !isDeepStrictEqual(measured.geometry, part.geometry))
      fresh.set(part.id, measured.geometry);
  }
  for (const part of meshParts) {
    const geometry = fresh.get(part.id);
    if (geometry) console.log(changeLine(part, geometry));
  }
  if (fresh.size > 0) await save(path, text, withGeometries(text, fresh));
  console.log(
    `${countText(meshParts.length, "part has a mesh file", "parts have a mesh file")}, ${fresh.size} changed.`,
  );
  return troubles.length > 0 ? EXIT.badInput : EXIT.planned;
}

async function measurePart(
  shopPath: string,
  part: Part,
): Promise<{ geometry: MeshGeometry | null; findings: readonly Finding[] }> {
  const { geometry } = part;
  if (geometry.kind !== "mesh") return { geometry: null, findings: [] };
  const filePath = await besideShop(shopPath, geometry.file);
  if (filePath === null) {
    return { geometry: null, findings: [meshFileFinding("error", part, outsideWords(geometry.file))] };
  }
  const { unit, file: name } = geometry;
  const { body, findings } = await readPartBody(filePath, {
    unit,
    name,
    buildDirections: part.buildDirections,
    orientations: part.orientations,
  });
  if (!body) return { geometry: null, findings };
  const { mesh: _, ...measured } = body;
  return { geometry: { ...geometry, ...measured }, findings };
}

function changeLine({ id, geometry }: Part, fresh: MeshGeometry): string {
  const pairs = [
    [boxText(geometry.measures), boxText(fresh.measures)],
    [volumeText(geometry.measures), volumeText(fresh.measures)],
  ];
  const changes = pairs.filter(([was, is]) => was !== is).map(([was, is]) => `${was} is now ${is}`);
  return `${id}: ${changes.length > 0 ? changes.join(", ") : "measured anew, same size and volume"}`;
}

function boxText({ boxMm }: Measures): string {
  return `${[boxMm.x, boxMm.y, boxMm.z].map((mm) => fixedText(mm, 2)).join(" x ")} mm`;
}

function volumeText({ volumeMm3 }: Measures): string {
  return `${fixedText(volumeMm3 / MM3_PER_CM3, 3)} cm³`;
}

const MM3_PER_CM3 = 1000;

/** The document with new geometries, everything else as it was, entries that are no part at all too. */
function withGeometries(text: string, fresh: ReadonlyMap<string, MeshGeometry>): string {
  const document = JSON.parse(text.replace(/^\uFEFF/, "")) as {
    parts: ({ id: string; geometry: unknown } | null)[];
  };
  for (const part of document.parts) {
    const geometry = part && fresh.get(part.id);
    if (geometry) part.geometry = geometry;
  }
  return `${JSON.stringify(document, null, 2)}\n`;
}

async function save(path: string, before: string, after: string): Promise<void> {
  try {
    const backup = await freePath(dirname(path), `${basename(path)}.bak`);
    await writeAtomically(backup, before);
    await writeAtomically(path, after);
    console.log(`Written to ${path}; the file as it was is ${backup}`);
  } catch (error) {
    throw new UsageError(`${path} could not be written: ${troubleOf(error).words}`);
  }
}
