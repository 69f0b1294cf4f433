import type { Solid } from "./kit.ts";

const HEADER_BYTES = 80;
const TRIANGLE_BYTES = 50;
const NAME = "demo body (invented)";

/** A body as a binary STL file in mm: a header of 80 bytes, the count, then normal, three corners and two spare bytes each. */
export function stlBytes(solid: Solid): Uint8Array {
  const { numTri, triVerts, vertProperties, numProp } = solid.getMesh();
  const bytes = new Uint8Array(HEADER_BYTES + 4 + TRIANGLE_BYTES * numTri);
  bytes.set(new TextEncoder().encode(NAME));
  const view = new DataView(bytes.buffer);
  view.setUint32(HEADER_BYTES, numTri, true);
  for (let triangle = 0; triangle < numTri; triangle += 1) {
    const corners = [0, 1, 2].map((corner) => {
      const first = (triVerts[3 * triangle + corner] ?? 0) * numProp;
      return [...vertProperties.subarray(first, first + 3)];
    });
    const numbers = [...normal(corners), ...corners.flat()];
    const start = HEADER_BYTES + 4 + TRIANGLE_BYTES * triangle;
    numbers.forEach((value, index) => view.setFloat32(start + 4 * index, value, true));
  }
  return bytes;
}

function normal(corners: number[][]): number[] {
  const [a = [], b = [], c = []] = corners;
  const from = (to: number[], axis: number) => (to[axis] ?? 0) - (a[axis] ?? 0);
  const cross = [0, 1, 2].map((axis) => {
    const [next, last] = [(axis + 1) % 3, (axis + 2) % 3];
    return from(b, next) * from(c, last) - from(b, last) * from(c, next);
  });
  const length = Math.hypot(...cross) || 1;
  return cross.map((value) => value / length);
}
