import type { Axis, Part } from "../shop/part.ts";
import { fillsItsBox } from "./fit.ts";

/** Density of support structures: common practice, no source. */
const SUPPORT_DENSITY = 0.15;

/**
 * Surface that hangs over when an axis of the part is vertical, mm2. It is measured with z vertical; a body that fills its box
 * has none either way, and for any other body the figure along x and y is taken to be the same (a caution says so).
 */
export function overhangMm2(part: Part, axis: Axis): number {
  const { measures } = part.geometry;
  if (axis !== "z" && fillsItsBox(measures)) return 0;
  return measures.overhangAreaMm2 ?? 0;
}

/**
 * Volume of support under an overhang, mm3: area times half the part's height, filled to 15 % (both common practice; the
 * true height under each facet needs the mesh). Example: 200 mm2 in a part 20 mm high: 300 mm3.
 */
export function supportVolumeMm3(overhangAreaMm2: number, heightMm: number): number {
  return SUPPORT_DENSITY * overhangAreaMm2 * (heightMm / 2);
}
