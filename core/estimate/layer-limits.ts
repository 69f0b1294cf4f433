import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { LayerWindow } from "./layer-window.ts";
import { tabledWindow } from "./window-table.ts";

/** Natural convection on a wall, W/(m2 K), and emissivity of a polymer: inputs of the published growing-wall example. */
export const CONVECTION_W_PER_M2K = 7;
const EMISSIVITY = 0.85;

/** Shortest layer of small filament parts: 5 to 15 s is common practice, no source. */
const FILAMENT_SHORTEST_S = 10;

/**
 * Temperature at which a machine lays a feedstock, degC: the middle of its range, or the machine's hottest if that is lower.
 * Example: 190 to 230 degC gives 210.
 */
export function depositC(machine: Machine, feedstock: Feedstock): number {
  return Math.min((feedstock.nozzleC.min + feedstock.nozzleC.max) / 2, machine.maxNozzleC);
}

/**
 * Shortest and longest layer time, s. Pellet: from the temperature of a growing wall of that thickness. Filament: 10 s and no
 * longest (the weld is judged by weld-time.ts). The shop's own limits on the feedstock overrule either.
 * Example: filament without own limits gives 10 s to Infinity.
 */
export function layerLimits(
  machine: Machine,
  feedstock: Feedstock,
  layerHeightMm: number,
  wallWidthMm: number,
): LayerWindow {
  const { minLayerS, maxLayerS } = feedstock;
  if (minLayerS !== undefined && maxLayerS !== undefined)
    return { shortestS: minLayerS, longestS: maxLayerS };
  const computed = computedLimits(machine, feedstock, layerHeightMm, wallWidthMm);
  return { shortestS: minLayerS ?? computed.shortestS, longestS: maxLayerS ?? computed.longestS };
}

function computedLimits(
  machine: Machine,
  feedstock: Feedstock,
  layerHeightMm: number,
  wallWidthMm: number,
): LayerWindow {
  if (machine.process === "filament") {
    return { shortestS: FILAMENT_SHORTEST_S, longestS: Number.POSITIVE_INFINITY };
  }
  const stuff = {
    layerHeightMm,
    depositC: depositC(machine, feedstock),
    platformC: feedstock.platformC,
    airC: machine.chamberC,
    densityKgPerM3: feedstock.densityKgPerM3,
    specificHeatJPerKgK: feedstock.specificHeatJPerKgK,
    conductivityWPerMK: feedstock.conductivityWPerMK,
    convectionWPerM2K: CONVECTION_W_PER_M2K,
    emissivity: EMISSIVITY,
  };
  return tabledWindow(stuff, { carryC: feedstock.carryC, bondC: feedstock.bondC }, wallWidthMm);
}
