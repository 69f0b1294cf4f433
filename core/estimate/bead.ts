import { S_PER_H } from "../units/conversions.ts";

/**
 * Flow area of a bead that lies side by side with others at a pitch of its width, mm2. Volume-conserving, so it is used for
 * every mass and time. Example: 0.45 x 0.20 mm gives 0.09 mm2.
 */
export function beadAreaMm2(beadWidthMm: number, layerHeightMm: number): number {
  return beadWidthMm * layerHeightMm;
}

/**
 * Area of one bead that lies alone, with rounded edges, mm2: a rectangle with a half circle at either side. A bead is never
 * narrower than it is high. Example: 0.45 x 0.20 mm gives 0.08142 mm2.
 */
export function freeBeadAreaMm2(beadWidthMm: number, layerHeightMm: number): number {
  if (beadWidthMm < layerHeightMm) {
    throw new RangeError(`bead narrower than high: ${beadWidthMm} mm wide, ${layerHeightMm} mm high`);
  }
  return (beadWidthMm - layerHeightMm) * layerHeightMm + (Math.PI * layerHeightMm ** 2) / 4;
}

/** Mass flow of a volume flow of solid, kg/h. Example: 5.4 mm3/s at 1240 kg/m3 gives 0.0241056 kg/h. */
export function massFlowKgPerH(flowMm3PerS: number, densityKgPerM3: number): number {
  return massKg(flowMm3PerS, densityKgPerM3) * S_PER_H;
}

/** Speed at which a bead takes a given volume flow, mm/s. Example: 5.4 mm3/s in 0.45 x 0.20 mm gives 60 mm/s. */
export function speedMmPerS(flowMm3PerS: number, beadWidthMm: number, layerHeightMm: number): number {
  return flowMm3PerS / beadAreaMm2(beadWidthMm, layerHeightMm);
}

/** Mass of a volume of solid, kg. Example: 15 273.907 mm3 at 1240 kg/m3 gives 0.0189396 kg. */
export function massKg(volumeMm3: number, densityKgPerM3: number): number {
  return volumeMm3 * MM3_TO_M3 * densityKgPerM3;
}

const MM3_TO_M3 = 1e-9;
