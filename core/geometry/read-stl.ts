import type { Bodies, Body, Reading } from "./body-reading.ts";
import { ReadStop, tooManyTriangles } from "./body-reading.ts";
import { warnOfOverlap } from "./boxes-overlap.ts";
import type { Mesh } from "./mesh.ts";
import { readAsciiStl, type Solid } from "./read-ascii-stl.ts";
import { claimedTriangles, readBinaryStl } from "./read-binary-stl.ts";
import { splitMesh } from "./split-mesh.ts";

/** More solids than this are faces, not bodies: some programs write every triangle as a solid. */
const MOST_SOLIDS = 1000;

/** Reads a binary STL as one body with the given name. See `readBinaryStl`. */
export function readStlBinary(bytes: Uint8Array, name: string, reading: Reading, mmPerUnit: number): Bodies {
  if ((claimedTriangles(bytes) ?? 0) > reading.limits.maxTriangles) tooManyTriangles(reading);
  return oneBody(name, readBinaryStl(bytes, reading, mmPerUnit));
}

/** Reads an ASCII STL, each solid with triangles as one body. See `readAsciiStl`. */
export function readStlText(
  bytes: Uint8Array,
  start: number,
  name: string,
  reading: Reading,
  mmPerUnit: number,
): Bodies {
  const { mesh, solids } = readAsciiStl(bytes, start, reading, mmPerUnit);
  const filled = solids.filter(({ fromTriangle, toTriangle }) => toTriangle > fromTriangle);
  if (filled.length === 0)
    throw new ReadStop("no-triangles", "the STL holds no triangle; save the body again");
  warnOfEmpty(solids.length - filled.length, reading);
  const [only] = filled;
  if (filled.length === 1) return oneBody(only?.name || name, mesh);
  if (filled.length > MOST_SOLIDS) {
    reading.warn("many-solids", `its ${filled.length} solids are taken as the faces of one body`);
    return oneBody(name, mesh);
  }
  return { bodies: bodiesOf(mesh, filled, reading), mesh };
}

function oneBody(name: string, mesh: Mesh): Bodies {
  return { bodies: [{ name, mesh, triangles: mesh.triangles.length / 3 }], mesh };
}

function bodiesOf(mesh: Mesh, solids: readonly Solid[], reading: Reading): Body[] {
  const bodies = splitMesh(mesh, solids).map((own, place) => ({
    name: solids[place]?.name || `solid ${place + 1}`,
    mesh: own,
    triangles: own.triangles.length / 3,
  }));
  warnOfOverlap(
    bodies.map((body) => body.mesh),
    reading,
  );
  return bodies;
}

function warnOfEmpty(count: number, reading: Reading): void {
  if (count === 0) return;
  const which = count === 1 ? "one solid is" : `${count} solids are`;
  reading.warn("empty-solid", `${which} without triangles and left out`);
}
