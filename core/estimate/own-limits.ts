import { measuredStanding } from "../shop/directions-up.ts";
import type { CopyLimits } from "./copies.ts";
import type { Deposit } from "./deposit.ts";
import { layerWork } from "./layer-groups.ts";
import { layerLimits } from "./layer-limits.ts";
import type { PaceInput } from "./pace.ts";

/**
 * Limits where every layer is judged by its own thickness: the floor of a thin-walled bin takes long, but being wide it also
 * stays warm for long. The longest layer time is then that of the slowest layer, and no more copies go than every layer
 * bears. Null where layers are not known one by one, or where one is too slow even so.
 * Example: walls bond within 65 s; a floor of 74 s that itself bonds within 130 s: longest 130 s, one copy.
 */
export function ownLimits(
  input: PaceInput,
  deposit: Deposit,
  speedMmPerS: number,
  limits: CopyLimits,
): CopyLimits | null {
  const { part, machine, feedstock } = input;
  if (!measuredStanding(part, deposit.standing.up)) return null;
  const work = layerWork(machine, deposit, speedMmPerS);
  const { layerHeightMm } = deposit.bead;
  let copies = limits.platformCopies;
  let slowest = { workS: 0, longestLayerS: limits.longestLayerS };
  for (const layer of deposit.layers) {
    const workS = work(layer);
    if (!(workS > 0 && layer.coolingMm > 0)) continue;
    const { longestS } = layerLimits(machine, feedstock, layerHeightMm, layer.coolingMm);
    const roomS = longestS - limits.layerChangeS;
    copies = Math.min(copies, Math.floor(roomS / workS + DUST_COPIES));
    if (workS > slowest.workS) slowest = { workS, longestLayerS: longestS };
  }
  if (copies < 1) return null;
  return { ...limits, platformCopies: copies, longestLayerS: slowest.longestLayerS };
}

/** Floating-point dust that must not cost a copy. */
const DUST_COPIES = 1e-9;
