import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import { beadAreaMm2, massKg, speedMmPerS } from "./bead.ts";
import { fewestCopies, mostBondingCopies } from "./copies.ts";
import type { CopyLimits } from "./copies.ts";
import type { Deposit } from "./deposit.ts";
import { layerLimits } from "./layer-limits.ts";
import { layerRefusal } from "./layer-reasons.ts";
import type { LayerRefusal } from "./layer-reasons.ts";
import { layerGroups } from "./layer-groups.ts";
import { flowLimitMm3PerS } from "./melt-limit.ts";
import type { Route } from "./route.ts";

const CM3_PER_H_OF_MM3_PER_S = 3.6;
const KG_PER_G = 1e-3;

/** What an attempt needs to know beside the deposit. */
export interface AttemptInput {
  readonly part: Part;
  readonly machine: Machine;
  readonly feedstock: Feedstock;
}

/** One way of making a part, tried: a route still without its cautions, or why its layer times do not work. */
export type Attempt =
  | { readonly route: Route; readonly deposit: Deposit }
  | { readonly route: null; readonly refusal: LayerRefusal };

/**
 * Tries one deposit with one feedstock: speed is the machine's or what the melt limit allows, layer times and their limits
 * give the copies that may share a build.
 */
export function attempt(input: AttemptInput, deposit: Deposit): Attempt {
  const { machine, feedstock } = input;
  const { beadWidthMm, layerHeightMm } = deposit.bead;
  const flowLimit = flowLimitMm3PerS(deposit.nozzle, feedstock);
  const speed = Math.min(machine.maxSpeedMmPerS, speedMmPerS(flowLimit, beadWidthMm, layerHeightMm));
  const window = layerLimits(machine, feedstock, layerHeightMm, deposit.wallWidthMm);
  const limits: CopyLimits = {
    layerGroups: layerGroups(machine, deposit, speed),
    layerChangeS: machine.layerChangeS,
    shortestLayerS: window.shortestS,
    longestLayerS: window.longestS,
    longestWaitS: machine.maxWaitPerLayerS ?? Number.POSITIVE_INFINITY,
    platformCopies: deposit.standing.copies,
  };
  const refusal = layerRefusal(limits);
  if (refusal) return { route: null, refusal };
  return { route: routeOf(input, deposit, speed, limits), deposit };
}

function routeOf(input: AttemptInput, deposit: Deposit, speed: number, limits: CopyLimits): Route {
  const { part, machine, feedstock } = input;
  const { standing, bead, nozzle } = deposit;
  const flowMm3PerS = speed * beadAreaMm2(bead.beadWidthMm, bead.layerHeightMm);
  const supportKgPerCopy = massKg(deposit.supportMm3, feedstock.densityKgPerM3);
  const startsKg = deposit.starts * machine.startPurgeG * KG_PER_G;
  return {
    partId: part.id,
    machineId: machine.id,
    process: machine.process,
    nozzleId: nozzle.id,
    feedstockId: feedstock.id,
    layerHeightMm: bead.layerHeightMm,
    beadWidthMm: bead.beadWidthMm,
    orientation: standing.axis,
    footprintMm: standing.footprintMm,
    heightMm: standing.heightMm,
    copiesMin: fewestCopies(limits),
    copiesMax: Math.min(standing.copies, mostBondingCopies(limits)),
    layerGroups: limits.layerGroups,
    layerChangeS: machine.layerChangeS,
    shortestLayerS: limits.shortestLayerS,
    longestLayerS: limits.longestLayerS,
    timeFactor: machine.timeFactor,
    fixedMin: machine.warmUpMin + machine.coolDownMin,
    massKgPerCopy: massKg(deposit.volumeMm3, feedstock.densityKgPerM3) + supportKgPerCopy + startsKg,
    supportKgPerCopy,
    flowCm3PerH: flowMm3PerS * CM3_PER_H_OF_MM3_PER_S,
    cautions: [],
  };
}
