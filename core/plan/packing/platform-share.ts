import { depositionMin } from "../../estimate/print-time.ts";
import type { MachineClass, PlanOption } from "../plan-problem.ts";

/**
 * Share of the platform that one copy takes in any packing: its footprint with half a gap around, of the platform with half
 * a gap around. Example: 40 x 30 mm with a gap of 5 on 240 x 240: 45 x 35 / 245^2 = 0.02624.
 */
export function platformShare({ platformMm, partGapMm }: MachineClass, option: PlanOption): number {
  const { x, y } = option.route.footprintMm;
  const part = (x + partGapMm) * (y + partGapMm);
  const platform = (platformMm.x + partGapMm) * (platformMm.y + partGapMm);
  return Math.min(part / platform, 1 / Math.max(1, option.platformCopies));
}

/** No build of which every copy takes at least this option's time and room runs longer, min. Waiting is longest for few. */
export function longestSharedRunMin(machineClass: MachineClass, option: PlanOption): number {
  const { route, copiesMin } = option;
  const perCopyMin = depositionMin({ route, copies: copiesMin }) / copiesMin;
  return route.fixedMin + 1 + perCopyMin / platformShare(machineClass, option);
}
