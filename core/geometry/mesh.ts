/**
 * A body as triangles, in millimetres. Corners are shared: two triangles that meet at a point name the same corner number
 * there (readers weld equal coordinates). Seen from outside, the corners of a triangle go counter-clockwise.
 * Example: a tetrahedron has 4 corners (12 coordinates) and 4 triangles (12 corner numbers).
 */
export interface Mesh {
  /** x, y, z of one corner after the other, mm */
  readonly cornersMm: Float64Array;
  /** three corner numbers for each triangle */
  readonly triangles: Uint32Array;
}
