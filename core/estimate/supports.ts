import { axisOf, measuredStanding } from "../shop/directions-up.ts";
import type { Part } from "../shop/part.ts";
import { areaInside } from "../shop/standing.ts";
import { fillsItsBox } from "./fit.ts";

/** Density of support structures: common practice, no source. */
const SUPPORT_DENSITY = 0.15;

/**
 * Surface that hangs over with a direction of the part up, mm2. Where a mesh was measured it is known for every direction.
 * By measures alone it is known with z vertical; a body that fills its box has none either way, and for any other body the
 * figure along x and y is taken to be the same (a caution says so).
 */
export function overhangMm2(part: Part, up: string): number {
  const measured = measuredStanding(part, up);
  if (measured) return measured.overhangAreaMm2;
  const { measures } = part.geometry;
  if (axisOf(up) !== "z" && fillsItsBox(measures)) return 0;
  return measures.overhangAreaMm2 ?? 0;
}

/**
 * Volume of support for one copy with a direction of the part up, mm3: the space under what hangs over, filled to 15 %
 * (common practice, no source), and no more space than the footprint's prism has beside the part. By measures alone that
 * space is the overhang times half the height. Example: 2000 mm3 measured under an overhang: 300 mm3.
 */
export function supportMm3(part: Part, up: string, heightMm: number): number {
  const measured = measuredStanding(part, up);
  if (measured) {
    const besideMm3 = areaInside(measured.hullMm) * measured.heightMm - part.geometry.measures.volumeMm3;
    return SUPPORT_DENSITY * Math.min(measured.supportVolumeMm3, Math.max(0, besideMm3));
  }
  return supportVolumeMm3(overhangMm2(part, up), heightMm);
}

/**
 * Volume of support under an overhang, mm3: area times half the part's height, filled to 15 % (both common practice; the
 * true height under each facet needs the mesh). Example: 200 mm2 in a part 20 mm high: 300 mm3.
 */
export function supportVolumeMm3(overhangAreaMm2: number, heightMm: number): number {
  return SUPPORT_DENSITY * overhangAreaMm2 * (heightMm / 2);
}

/**
 * What hangs over with a direction up as a share of the footprint, for a machine that builds without support. It is 0 where it
 * is not known: by measures alone an overhang is a caution. Example: 200 mm2 over a footprint of 2000 mm2 give 0.1.
 */
export function unsupportedShare(part: Part, up: string): number {
  const measured = measuredStanding(part, up);
  return measured ? measured.overhangAreaMm2 / areaInside(measured.hullMm) : 0;
}
