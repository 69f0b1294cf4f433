import { measuredStanding } from "../shop/directions-up.ts";
import type { Part } from "../shop/part.ts";
import { beadAreaMm2, massKg } from "./bead.ts";
import { fewestCopies, mostBondingCopies } from "./copies.ts";
import type { CopyLimits } from "./copies.ts";
import type { Deposit } from "./deposit.ts";
import { layerLimits } from "./layer-limits.ts";
import { ownLimits } from "./own-limits.ts";
import { layerRefusal } from "./layer-reasons.ts";
import type { LayerRefusal } from "./layer-reasons.ts";
import { layerGroups } from "./layer-groups.ts";
import { paceMmPerS } from "./pace.ts";
import type { PaceInput } from "./pace.ts";
import type { Route } from "./route.ts";
import { thinRefusal } from "./thin-regions.ts";

const CM3_PER_H_OF_MM3_PER_S = 3.6;
const KG_PER_G = 1e-3;

/** One way of making a part, tried: a route still without its cautions, or why its layer times do not work. */
export type Attempt =
  | { readonly route: Route; readonly deposit: Deposit }
  | { readonly route: null; readonly refusal: DepositRefusal };

/** A refusal with what was refused. */
export interface DepositRefusal extends LayerRefusal {
  readonly deposit: Deposit;
}

/**
 * Tries one deposit with one feedstock: speed is the machine's or what the melt limit allows, layer times and their limits
 * give the copies that may share a build.
 */
export function attempt(input: PaceInput, deposit: Deposit): Attempt {
  const { part, machine, feedstock } = input;
  const thin = thinRefusal(part, deposit);
  if (thin) return { route: null, refusal: { ...thin, deposit } };
  const speed = paceMmPerS(machine, feedstock, deposit);
  const window = layerLimits(machine, feedstock, deposit.bead.layerHeightMm, deposit.wallWidthMm);
  const limits: CopyLimits = {
    layerGroups: layerGroups(machine, deposit, speed),
    layerChangeS: machine.layerChangeS,
    shortestLayerS: window.shortestS,
    longestLayerS: window.longestS,
    longestWaitS: machine.maxWaitPerLayerS ?? Number.POSITIVE_INFINITY,
    platformCopies: deposit.standing.copies,
    borneQuickLayers: borneQuickLayers(part, deposit),
  };
  const refusal = layerRefusal(limits);
  if (!refusal) return { route: routeOf(input, deposit, speed, limits), deposit };
  const own = refusal.reason.code === "layer-too-slow" ? ownLimits(input, deposit, speed, limits) : null;
  if (!own || layerRefusal(own)) return { route: null, refusal: { ...refusal, deposit } };
  return { route: routeOf(input, deposit, speed, own), deposit };
}

/** Where layers are known one by one, a few quick ones such as the tip of a cone are a caution and keep no part away. */
function borneQuickLayers(part: Part, { standing, layerCount }: Deposit): number {
  return measuredStanding(part, standing.up) ? Math.max(1, Math.floor(BORNE_SHARE * layerCount)) : 0;
}

/** Common practice, no source: the operator watches the last few layers of a tip. */
const BORNE_SHARE = 0.02;

function routeOf(input: PaceInput, deposit: Deposit, speed: number, limits: CopyLimits): Route {
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
    orientation: standing.up,
    ...(standing.rotationDeg === 0 ? {} : { rotationDeg: standing.rotationDeg }),
    footprintMm: standing.footprintMm,
    heightMm: standing.heightMm,
    copiesMin: fewestCopies(limits),
    copiesMax: Math.min(limits.platformCopies, mostBondingCopies(limits)),
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
