import type { Bodies, Reading } from "./body-reading.ts";
import { type LengthUnit, MM_PER_UNIT } from "./length-unit.ts";
import { placeObjects } from "./place-objects.ts";
import { ThreeMfModelReader } from "./read-three-mf-model.ts";
import { findRootModel } from "./root-model.ts";
import { refuseUnpacked, unpackEntry } from "./unpack-entry.ts";
import { XmlPieces } from "./xml-pieces.ts";
import { readZipDirectory } from "./zip-directory.ts";

/**
 * Reads a 3MF by its core specification (3MF Consortium, version 1.x): the build with all its items placed, in mm. The model
 * is read as it is unpacked, so its text is never whole in memory. The caller's unit, where given, overrules the file's.
 * Example: the consortium's box.3mf gives one body of 12 triangles, 6000 mm3.
 */
export function readThreeMf(
  bytes: Uint8Array,
  reading: Reading,
  given: LengthUnit | null,
): Bodies & { readonly unit: LengthUnit } {
  const entries = readZipDirectory(bytes);
  refuseUnpacked(entries, reading);
  const root = findRootModel(bytes, entries, reading);
  const listener = new ThreeMfModelReader(reading);
  const xml = new XmlPieces(root.name, listener);
  unpackEntry(bytes, root, reading, (piece) => xml.write(piece));
  xml.end();
  const model = listener.taken();
  const unit = given ?? model.unit;
  if (unit !== model.unit) {
    reading.warn("unit-overruled", `it says that its unit is ${model.unit}, but is read in ${unit}, as told`);
  }
  return { ...placeObjects(model, reading, MM_PER_UNIT[unit]), unit };
}
