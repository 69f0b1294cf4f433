import { ABSURD_COORDINATE, type Reading, ReadStop } from "./body-reading.ts";
import { BadTriangles } from "./bad-triangles.ts";
import type { Mesh } from "./mesh.ts";
import { withoutUnusedCorners } from "./split-mesh.ts";
import { FloatWelder } from "./weld-floats.ts";

const HEADER_BYTES = 80;
const START_BYTES = HEADER_BYTES + 4;
const TRIANGLE_BYTES = 50;
/** the stored normal, three float32, comes first and is not used */
const NORMAL_BYTES = 12;

/** Bits of a float32 without its sign: in the order of its size, with endless numbers and those that are none above all. */
const MAGNITUDE = 0x7fffffff;
const ABSURD_BITS = new Int32Array(Float32Array.of(ABSURD_COORDINATE).buffer)[0] ?? 0;

/** How many triangles a binary STL claims, or null where the file is too short to claim any. */
export function claimedTriangles(bytes: Uint8Array): number | null {
  if (bytes.length < START_BYTES) return null;
  return new DataView(bytes.buffer, bytes.byteOffset).getUint32(HEADER_BYTES, true);
}

/** Bytes that a binary STL of so many triangles has. Example: 12 triangles have 684 bytes. */
export function binaryStlBytes(triangles: number): number {
  return START_BYTES + TRIANGLE_BYTES * triangles;
}

/**
 * Reads a binary STL whose claimed triangles are all there: 80 bytes of anything, a count, then 50 bytes a triangle
 * (normal and three corners as little-endian float32, two bytes more). Corners at equal coordinates are welded.
 * Example: 12 triangles of a box give 8 corners.
 */
export function readBinaryStl(bytes: Uint8Array, reading: Reading, mmPerUnit: number): Mesh {
  const count = claimedTriangles(bytes) ?? 0;
  const excess = bytes.length - binaryStlBytes(count);
  if (excess > 0) {
    reading.warn(
      "bytes-after-end",
      `${excess} bytes follow the last of the ${count} triangles that it announces; they are not read`,
    );
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const welder = new FloatWelder(Math.ceil(count / 2));
  const bad = new BadTriangles();
  const triangles = new Uint32Array(3 * count);
  let kept = 0;
  for (let triangle = 0; triangle < count; triangle++) {
    const at = START_BYTES + TRIANGLE_BYTES * triangle + NORMAL_BYTES;
    const a = cornerAt(view, at, welder);
    const b = cornerAt(view, at + 12, welder);
    const c = cornerAt(view, at + 24, welder);
    if (a < 0 || b < 0 || c < 0) bad.absurd(triangle);
    else if (a === b || b === c || c === a) bad.withoutArea++;
    else {
      triangles[kept] = a;
      triangles[kept + 1] = b;
      triangles[kept + 2] = c;
      kept += 3;
    }
  }
  bad.tell(reading);
  if (kept === 0) throw new ReadStop("no-triangles", "the STL holds no triangle; save the body again");
  const cornersMm = welder.corners(mmPerUnit);
  if (kept === triangles.length) return { cornersMm, triangles };
  return withoutUnusedCorners({ cornersMm, triangles: triangles.slice(0, kept) });
}

/** The number of the welded corner stored at a place, or -1 where a coordinate is no number or absurd. */
function cornerAt(view: DataView, at: number, welder: FloatWelder): number {
  const x = view.getInt32(at, true);
  const y = view.getInt32(at + 4, true);
  const z = view.getInt32(at + 8, true);
  const isSound =
    (x & MAGNITUDE) < ABSURD_BITS && (y & MAGNITUDE) < ABSURD_BITS && (z & MAGNITUDE) < ABSURD_BITS;
  return isSound ? welder.cornerAt(x, y, z) : -1;
}
