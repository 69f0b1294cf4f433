import type { SaxesTagNS } from "saxes";
import { type Reading, ReadStop } from "./body-reading.ts";
import { unpackEntry } from "./unpack-entry.ts";
import { XmlPieces } from "./xml-pieces.ts";
import type { ZipEntry } from "./zip-directory.ts";

const RELATIONSHIPS = "_rels/.rels";
const RELATIONSHIPS_NAMESPACE = "http://schemas.openxmlformats.org/package/2006/relationships";
/** How the type of the relationship to the model ends; what comes before is a year. */
const MODEL_TYPE_END = "/3dmodel";
const MOST_RELATIONSHIP_BYTES = 1_000_000;

/**
 * The part that holds the model, which the package's relationships name (ECMA-376-2, Open Packaging Conventions; 3MF core
 * specification, 3D payload). Its path is free: "3D/3dmodel.model" is only usual.
 */
export function findRootModel(bytes: Uint8Array, entries: readonly ZipEntry[], reading: Reading): ZipEntry {
  const relationships = entryNamed(entries, RELATIONSHIPS);
  if (!relationships) {
    throw new ReadStop("not-3mf", "it is a ZIP package but no 3MF (_rels/.rels is missing); unpack it first");
  }
  if (relationships.unpackedBytes > MOST_RELATIONSHIP_BYTES) {
    throw new ReadStop("not-3mf", `its part ${RELATIONSHIPS} is far too large; save it again as 3MF`);
  }
  const targets = new Set<string>();
  const xml = new XmlPieces(RELATIONSHIPS, {
    open: (tag) => noteTarget(tag, targets),
    close: () => {},
  });
  unpackEntry(bytes, relationships, reading, (piece) => xml.write(piece));
  xml.end();
  return modelOf(entries, [...targets]);
}

function modelOf(entries: readonly ZipEntry[], [target, ...others]: readonly string[]): ZipEntry {
  if (target === undefined) {
    throw new ReadStop(
      "not-3mf",
      "it is a package of another kind, no 3MF: it names no 3D model; save the body as 3MF or STL",
    );
  }
  if (others.length > 0) {
    throw new ReadStop("several-models", "it names several root models where 3MF has one; save it again");
  }
  const entry = entryNamed(entries, target);
  if (entry) return entry;
  throw new ReadStop("model-missing", `the model that it names, ${target}, is not in it; save it again`);
}

function noteTarget({ uri, local, attributes }: SaxesTagNS, targets: Set<string>): void {
  if (uri !== RELATIONSHIPS_NAMESPACE || local !== "Relationship") return;
  if (!attributes.Type?.value.endsWith(MODEL_TYPE_END)) return;
  targets.add(partName(attributes.Target?.value ?? ""));
}

function entryNamed(entries: readonly ZipEntry[], name: string): ZipEntry | undefined {
  const wanted = name.toLowerCase();
  const found = entries.filter((entry) => partName(entry.name).toLowerCase() === wanted);
  if (found.length > 1) {
    throw new ReadStop("part-twice", `its part ${name} is there ${found.length} times; save it again`);
  }
  return found[0];
}

/** The path of a part from the package's root without a leading slash. Example: "/3D/./a%20b.model" gives "3D/a b.model". */
function partName(target: string): string {
  const steps: string[] = [];
  for (const step of unescaped(target).replaceAll("\\", "/").split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "" && step !== ".") steps.push(step);
  }
  return steps.join("/");
}

function unescaped(target: string): string {
  try {
    return decodeURIComponent(target);
  } catch {
    return target;
  }
}
