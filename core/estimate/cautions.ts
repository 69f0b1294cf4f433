import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { Deposit } from "./deposit.ts";
import { dryerHopperKg } from "./drying.ts";
import { fillsItsBox } from "./fit.ts";
import { depositC } from "./layer-limits.ts";
import { slowestLayerS } from "./print-time.ts";
import type { Route } from "./route.ts";
import { say } from "./say.ts";
import { contactC, weldS } from "./weld-time.ts";

/** A route and what it was made from. */
export interface CautionInput {
  readonly part: Part;
  readonly machine: Machine;
  readonly feedstock: Feedstock;
  readonly deposit: Deposit;
  readonly route: Route;
}

/** What a person should know of a route before it is used, in sentences. Empty: nothing stands out. */
export function routeCautions(input: CautionInput): string[] {
  const process = input.machine.process === "filament" ? filamentCautions(input) : pelletCautions(input);
  return [...bodyCautions(input), ...waitCautions(input), ...process];
}

function bodyCautions({ part, deposit }: CautionInput): string[] {
  const cautions: string[] = [];
  const { axis } = deposit.standing;
  if (axis !== "z" && !fillsItsBox(part.geometry.measures)) {
    cautions.push(
      `Built with ${axis} vertical: its layers and overhang are known with z vertical only, so look at it first.`,
    );
  }
  if (deposit.unsupportedMm2 > 0) {
    cautions.push(`${say(deposit.unsupportedMm2)} mm² hang over and are built without support.`);
  }
  return cautions;
}

function waitCautions({ route }: CautionInput): string[] {
  const quickestS = Math.min(...route.layerGroups.map(({ workS }) => workS)) + route.layerChangeS;
  if (quickestS >= route.shortestLayerS) return [];
  return [
    `One copy alone waits: its quickest layer takes ${say(quickestS)} s, the shortest is ${say(route.shortestLayerS)} s.`,
  ];
}

function filamentCautions({ part, machine, feedstock, deposit }: CautionInput): string[] {
  const cautions = weldCautions(machine, feedstock, deposit.bead.layerHeightMm);
  const { boxMm } = part.geometry.measures;
  const long = Math.max(boxMm.x, boxMm.y, boxMm.z) > WARPING_MM;
  if (long && WARPS.test(feedstock.family) && machine.chamberC < feedstock.bondC - WARPING_K) {
    cautions.push(`${feedstock.name} over ${WARPING_MM} mm in air of ${say(machine.chamberC)} °C may warp.`);
  }
  return cautions;
}

function weldCautions(machine: Machine, feedstock: Feedstock, layerHeightMm: number): string[] {
  const laidC = depositC(machine, feedstock);
  const { bondC, conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK } = feedstock;
  const diffusivityM2PerS = conductivityWPerMK / (densityKgPerM3 * specificHeatJPerKgK);
  const bondingS = weldS({
    depositC: laidC,
    belowC: machine.chamberC,
    bondC,
    layerHeightMm,
    diffusivityM2PerS,
  });
  if (bondingS >= SHORT_WELD_S) return [];
  const meeting = `A fresh bead meets a layer as cool as the air at ${say(contactC(laidC, machine.chamberC))} °C`;
  if (bondingS === 0) return [`${meeting}, bonding needs ${say(bondC)} °C: weak across layers.`];
  return [`${meeting} and stays above ${say(bondC)} °C for ${say(bondingS)} s: weak across layers.`];
}

function pelletCautions({ feedstock, deposit, route }: CautionInput): string[] {
  const cautions: string[] = [];
  if (deposit.mostIslands > MANY_ISLANDS) {
    cautions.push(
      `Up to ${deposit.mostIslands} islands in a layer: each start of the screw costs time and feedstock.`,
    );
  }
  const slowestS = slowestLayerS({ route, copies: 1 });
  if (slowestS > NEAR_LIMIT * route.longestLayerS) {
    cautions.push(
      `A layer takes ${say(slowestS)} s of the ${say(route.longestLayerS)} s in which it bonds: near the edge of what the temperature model can tell.`,
    );
  }
  if (feedstock.dryH > 0) cautions.push(dryCaution(feedstock, route));
  return cautions;
}

/** A hopper dryer holds what is used while new feedstock dries, or a whole build if that is less. */
function dryCaution(feedstock: Feedstock, route: Route): string {
  const feedKgPerH = (route.flowCm3PerH * feedstock.densityKgPerM3) / CM3_PER_M3;
  const fullBuildKg = route.copiesMax * route.massKgPerCopy;
  const hopperKg = Math.min(fullBuildKg, dryerHopperKg(feedKgPerH, feedstock.dryH));
  return `Dry ${say(feedstock.dryH)} h at ${say(feedstock.dryC)} °C before use; a full build keeps up to ${say(hopperKg)} kg in the dryer.`;
}

const CM3_PER_M3 = 1e6;
/** Seppala and Migler (2016) measured about 1 s; half of that is our own line, to be set by the shop's experience. */
const SHORT_WELD_S = 0.5;
/** Families, plain or filled, that warp in cold air on parts longer than this: common practice, no source. */
const WARPS = /(^|-)(ABS|ASA|PC|PEI|PA\d*)($|-)/;
const WARPING_MM = 100;
const WARPING_K = 60;
const MANY_ISLANDS = 3;
const NEAR_LIMIT = 0.9;
