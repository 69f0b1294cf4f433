import type { Machine } from "../shop/machine.ts";
import { beadAreaMm2 } from "./bead.ts";
import type { Deposit, PathLayers } from "./deposit.ts";
import { depositS } from "./layer-work.ts";
import { cornerSpeedMmPerS } from "./motion-time.ts";
import type { LayerGroup } from "./route.ts";

const RIGHT_ANGLE_DEG = 90;

/** What layers of one deposit take, at one speed. */
export type LayerWork = (layer: PathLayers) => number;

/**
 * Work in one layer for one copy at a given speed, s: its path with corners of 90 degrees, a move for each island, and
 * supports spread evenly over the layers.
 * Example: the box of layer-work.ts at 60 mm/s: 24.4275 s, or 94.6695 s where it is solid.
 */
export function layerWork(machine: Machine, deposit: Deposit, speedMmPerS: number): LayerWork {
  const { accelerationMmPerS2, cornerDeviationMm, travelS } = machine;
  const cornerMmPerS = cornerSpeedMmPerS(accelerationMmPerS2, cornerDeviationMm, RIGHT_ANGLE_DEG);
  const motion = { speedMmPerS, accelerationMmPerS2, cornerMmPerS };
  const { beadWidthMm, layerHeightMm } = deposit.bead;
  const flowMm3PerS = speedMmPerS * beadAreaMm2(beadWidthMm, layerHeightMm);
  const supportS = deposit.supportMm3 / deposit.layerCount / flowMm3PerS;
  return (layer) =>
    depositS(layer.path, layer, motion) + (layer.islands - deposit.continuing) * travelS + supportS;
}

/**
 * Time of each kind of layer for one copy. Kinds within 2 % of each other are one group at their mean, so the sum is kept.
 * Example: the box of layer-work.ts at 60 mm/s: 92 layers of 24.4275 s and 8 solid ones of 94.6695 s.
 */
export function layerGroups(machine: Machine, deposit: Deposit, speedMmPerS: number): readonly LayerGroup[] {
  const last = lastGroups.get(deposit);
  if (last?.machine === machine && last.speedMmPerS === speedMmPerS) return last.groups;
  const workS = layerWork(machine, deposit, speedMmPerS);
  const each = deposit.layers.map((layer) => ({ count: layer.count, workS: workS(layer) }));
  const groups = each.length <= FEW ? each : fewer(each);
  lastGroups.set(deposit, { machine, speedMmPerS, groups });
  return groups;
}

/** What was asked of a deposit last: most feedstocks are laid at the machine's own speed, one after the other. */
const lastGroups = new WeakMap<
  Deposit,
  { readonly machine: Machine; readonly speedMmPerS: number; readonly groups: readonly LayerGroup[] }
>();

function fewer(groups: readonly LayerGroup[]): LayerGroup[] {
  const alike = new Map<number, LayerGroup>();
  for (const { count, workS } of groups) {
    const step = Math.round(Math.log(workS) / Math.log(STEP));
    const known = alike.get(step) ?? { count: 0, workS: 0 };
    const together = known.count + count;
    alike.set(step, { count: together, workS: (known.count * known.workS + count * workS) / together });
  }
  return [...alike.values()];
}

const STEP = 1.02;
/** So few groups are left as they are. */
const FEW = 8;
