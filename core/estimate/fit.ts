import type { Machine } from "../shop/machine.ts";
import type { Axis, Measures } from "../shop/part.ts";

/** Lengths along the three axes, mm. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A box that stands on the platform. */
export interface StandingBox {
  readonly footprintMm: { readonly x: number; readonly y: number };
  readonly heightMm: number;
}

/**
 * A body's box with the finishing allowance on every side, stood up so that one of its own axes is vertical.
 * Example: 40 x 30 x 20 mm with 2 mm allowance and x vertical: footprint 34 x 24 mm, 44 mm high.
 */
export function standUp(box: Box, axis: Axis, allowanceMm: number): StandingBox {
  const x = box.x + 2 * allowanceMm;
  const y = box.y + 2 * allowanceMm;
  const z = box.z + 2 * allowanceMm;
  if (axis === "z") return { footprintMm: { x, y }, heightMm: z };
  if (axis === "y") return { footprintMm: { x, y: z }, heightMm: y };
  return { footprintMm: { x: y, y: z }, heightMm: x };
}

/** What of the build envelope parts may use, mm: the edge margin taken off on all four sides. Example: 250 less 5 is 240. */
export function usableMm(machine: Machine): Box {
  const { envelopeMm, edgeMarginMm } = machine;
  return { x: envelopeMm.x - 2 * edgeMarginMm, y: envelopeMm.y - 2 * edgeMarginMm, z: envelopeMm.z };
}

/** How many copies of a footprint stand on a platform, and which way round. */
export interface PlatformFill {
  readonly footprintMm: { readonly x: number; readonly y: number };
  readonly copies: number;
}

/**
 * Most copies in rows and columns with the part gap between them, all turned the same way, whichever of the two ways takes
 * more. 0 copies: not even one fits.
 * Example: 100 x 60 mm on 240 x 240 mm with a gap of 5: 2 x 3 = 6 either way.
 */
export function fillPlatform(standing: StandingBox, machine: Machine): PlatformFill {
  const usable = usableMm(machine);
  const { x, y } = standing.footprintMm;
  if (standing.heightMm > usable.z + DUST_MM) return { footprintMm: { x, y }, copies: 0 };
  const gap = machine.partGapMm;
  const straight = inRow(usable.x, x, gap) * inRow(usable.y, y, gap);
  const turned = inRow(usable.x, y, gap) * inRow(usable.y, x, gap);
  if (turned > straight) return { footprintMm: { x: y, y: x }, copies: turned };
  return { footprintMm: { x, y }, copies: straight };
}

function inRow(roomMm: number, lengthMm: number, gapMm: number): number {
  return Math.max(0, Math.floor((roomMm + gapMm + DUST_MM) / (lengthMm + gapMm)));
}

/**
 * By what factor a standing box is too long for the machine in its worst direction, turned the better way; up to 1 it fits.
 * Example: 812 mm across where 600 mm are free gives 1.353.
 */
export function excess(standing: StandingBox, machine: Machine): number {
  const usable = usableMm(machine);
  const { x, y } = standing.footprintMm;
  const across = Math.min(Math.max(x / usable.x, y / usable.y), Math.max(y / usable.x, x / usable.y));
  return Math.max(across, standing.heightMm / usable.z);
}

/**
 * Says whether a body takes up its bounding box, so that it is the same whichever way it stands.
 * Example: 24 000 mm3 in a box of 40 x 30 x 20 mm do, 20 000 mm3 do not.
 */
export function fillsItsBox({ volumeMm3, boxMm }: Measures): boolean {
  return volumeMm3 >= FULL * boxMm.x * boxMm.y * boxMm.z;
}

/** A box with edges rounded a little is a box still. */
const FULL = 0.999;
/** Floating-point dust that must not keep a part off a platform. */
const DUST_MM = 1e-6;
