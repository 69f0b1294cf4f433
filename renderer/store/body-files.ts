import type { Change } from "../../core/shop/change.ts";
import type { LengthUnit } from "../../core/geometry/length-unit.ts";
import type { Part } from "../../core/shop/part.ts";
import { askBodies } from "../worker/body-client.ts";
import type { MeasuredFile } from "../worker/body-messages.ts";
import { partOfBody } from "./part-of-body.ts";
import type { Stores } from "./stores.ts";
import { askUnit } from "./unit-question.ts";

/** Ends of names of the files that hold bodies. */
const BODY_FILE = /\.(stl|3mf)$/i;

type MeshGeometry = Extract<Part["geometry"], { kind: "mesh" }>;

/** True for files that hold bodies by their name. */
export function isBodyFile(file: File): boolean {
  return BODY_FILE.test(file.name);
}

/** A file as it was read, with what it measures in one unit. */
interface ReadFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly known: MeasuredFile;
}

/**
 * Takes dropped STL and 3MF files as new parts: measures each body, asks for the unit where files name none, keeps the files
 * beside the shop, adds the parts in one step of undo.
 */
export async function addBodyFiles(files: readonly File[], stores: Stores): Promise<void> {
  const { shop, notes, selection } = stores;
  notes.tell(
    files.length === 1 ? "The file is read and measured." : `${files.length} files are read and measured.`,
  );
  const geometries = await geometriesOf(files, undefined, stores);
  const taken = new Set(shop.shop().parts.map(({ id }) => id));
  const parts = geometries.map(({ name, geometry }) => {
    const part = partOfBody(name, geometry, taken);
    taken.add(part.id);
    return part;
  });
  if (parts.length === 0) return;
  const words = parts.length === 1 ? `new part ${parts[0]?.id}` : `${parts.length} new parts`;
  shop.apply(
    words,
    parts.map((entry): Change => ({ kind: "put", list: "parts", entry, at: null })),
  );
  selection.choose({ partId: parts[0]?.id ?? null });
  notes.tell(`Measured and taken: ${words}. Look at needs and surface before it is planned.`);
}

/** Takes another file as the body of a part that is there. */
export async function replaceBody(part: Part, file: File, stores: Stores): Promise<void> {
  const [read] = await geometriesOf([file], part.buildDirections, stores);
  if (!read) return;
  const entry = { ...part, geometry: read.geometry };
  stores.shop.apply(`body of ${part.id}`, [{ kind: "put", list: "parts", entry, at: null }]);
}

/** Measures the mesh of a part again: in another unit, or with other directions up. `what` stands after "Undo". */
export async function remeasure(
  part: Part,
  changed: { readonly unit?: LengthUnit; readonly buildDirections?: Part["buildDirections"] },
  what: string,
  stores: Stores,
): Promise<void> {
  const { host, shop, notes } = stores;
  const { geometry } = part;
  if (geometry.kind !== "mesh") return;
  const answer = await host.call("readMesh", { handle: shop.opened.handle, partId: part.id });
  if (!answer.ok) return notes.alarm(answer.trouble.sentence);
  if (answer.value.status === "failed") return notes.alarm(answer.value.sentence);
  const { bytes, fileName } = answer.value;
  const { unit = geometry.unit, buildDirections = part.buildDirections } = changed;
  const { measures, findings } = await measured(bytes, fileName, unit, buildDirections);
  for (const { severity, sentence } of findings) if (severity === "error") notes.alarm(sentence);
  if (!measures) return;
  const { buildDirections: _, ...rest } = part;
  const own = buildDirections && buildDirections.length > 0 ? { buildDirections } : {};
  const entry = { ...rest, ...own, geometry: { ...geometry, unit, measures } };
  shop.apply(what, [{ kind: "put", list: "parts", entry, at: null }]);
}

interface NamedGeometry {
  readonly name: string;
  readonly geometry: MeshGeometry;
}

async function geometriesOf(
  files: readonly File[],
  buildDirections: Part["buildDirections"],
  stores: Stores,
): Promise<NamedGeometry[]> {
  const read: ReadFile[] = [];
  for (const file of files) read.push(...(await readOne(file, buildDirections, stores)));
  const guessed = read.filter((file) => file.known.unitIsGuess);
  const sizes = guessed.map(({ name, known }) => ({ name, largestSide: largestSideOf(known) }));
  const unit = guessed.length > 0 ? await askUnit(sizes) : "millimeter";
  if (unit === null) return [];
  const geometries: NamedGeometry[] = [];
  for (const file of read) {
    const isOther = file.known.unitIsGuess && unit !== file.known.unit;
    const known = isOther ? await measured(file.bytes, file.name, unit, buildDirections) : file.known;
    geometries.push(...(await storedGeometry(file, known, stores)));
  }
  return geometries;
}

/** None where it cannot be read or measured, which is said. */
async function readOne(
  file: File,
  buildDirections: Part["buildDirections"],
  { notes }: Stores,
): Promise<ReadFile[]> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const known = await measured(bytes, file.name, null, buildDirections);
    for (const { severity, sentence } of known.findings)
      notes[severity === "error" ? "alarm" : "tell"](sentence);
    return known.measures ? [{ name: file.name, bytes, known }] : [];
  } catch (error) {
    notes.alarm(error instanceof Error ? error.message : `${file.name} cannot be read.`);
    return [];
  }
}

function measured(
  bytes: Uint8Array,
  fileName: string,
  unit: LengthUnit | null,
  buildDirections: Part["buildDirections"],
): Promise<MeasuredFile> {
  return askBodies({ kind: "measure", bytes, fileName, unit, buildDirections });
}

/** The file kept beside the shop, as a part names it; none where it cannot be kept, which is said. */
async function storedGeometry(
  { name, bytes }: ReadFile,
  { measures, unit }: MeasuredFile,
  { host, shop, notes }: Stores,
): Promise<NamedGeometry[]> {
  if (!measures) return [];
  const answer = await host.call("storeMesh", { handle: shop.opened.handle, fileName: name, bytes });
  if (answer.ok && answer.value.status === "stored") {
    const { file, sha256 } = answer.value;
    return [{ name, geometry: { kind: "mesh", file, sha256, unit, measures } }];
  }
  const sentence = answer.ok
    ? answer.value.status === "failed" && answer.value.sentence
    : answer.trouble.sentence;
  if (sentence) notes.alarm(sentence);
  return [];
}

function largestSideOf({ measures }: MeasuredFile): number {
  if (!measures) return 0;
  const { x, y, z } = measures.boxMm;
  return Math.max(x, y, z);
}
