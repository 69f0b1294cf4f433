import { axisOf, measuredStanding } from "../shop/directions-up.ts";
import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { Deposit } from "./deposit.ts";
import { dryerHopperKg } from "./drying.ts";
import { fillsItsBox } from "./fit.ts";
import { layerCautions } from "./layer-cautions.ts";
import { depositC } from "./layer-limits.ts";
import { layerRanges, layersIn, layerWords } from "./layer-numbers.ts";
import { layerStack } from "./layer-stack.ts";
import type { PaceInput } from "./pace.ts";
import type { Route } from "./route.ts";
import { say } from "./say.ts";
import { thinCautions } from "./thin-regions.ts";
import { MANY_ISLANDS, wallsMeet } from "./tool-path-work.ts";
import { contactC, weldS } from "./weld-time.ts";

/** A route and what it was made from. */
export interface CautionInput extends PaceInput {
  readonly deposit: Deposit;
  readonly route: Route;
}

/** What a person should know of a route before it is used, in sentences. Empty: nothing stands out. */
export function routeCautions(input: CautionInput): string[] {
  const process = input.machine.process === "filament" ? filamentCautions(input) : pelletCautions(input);
  const thin = thinCautions(input.part, input.deposit);
  return [...bodyCautions(input), ...thin, ...layerCautions(input), ...process];
}

function bodyCautions({ part, deposit }: CautionInput): string[] {
  const cautions: string[] = [];
  const { up } = deposit.standing;
  if (!measuredStanding(part, up) && axisOf(up) !== "z" && !fillsItsBox(part.geometry.measures)) {
    cautions.push(
      `Built with ${axisOf(up)} vertical: its layers and overhang are known with z vertical only, so look at it first.`,
    );
  }
  if (deposit.unsupportedMm2 > 0) {
    cautions.push(`${say(deposit.unsupportedMm2)} mm² hang over and are built without support.`);
  }
  return cautions;
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

function pelletCautions({ part, feedstock, deposit, route }: CautionInput): string[] {
  const cautions = meetingWalls(part, deposit);
  if (deposit.mostIslands > MANY_ISLANDS) {
    cautions.push(
      `Up to ${deposit.mostIslands} islands in a layer: each start of the screw costs time and feedstock.`,
    );
  }
  if (feedstock.dryH > 0) cautions.push(dryCaution(feedstock, route));
  return cautions;
}

/** Where walls meet, by layer numbers, if that is more than a few layers. */
function meetingWalls(part: Part, { standing, bead }: Deposit): string[] {
  const measured = measuredStanding(part, standing.up);
  if (!measured?.cuts.some((cut) => wallsMeet(part, cut))) return [];
  const { runs, layers } = layerStack(part, standing.up, bead.layerHeightMm);
  const isMeant = ({ cut: place }: { readonly cut: number }): boolean => {
    const cut = measured.cuts[place];
    return cut !== undefined && wallsMeet(part, cut);
  };
  const ranges = layerRanges(runs, isMeant);
  if (layersIn(ranges) <= FEW_LAYERS * layers) return [];
  return [
    `Walls meet in ${layerWords(ranges)}: a bead along them crosses itself or stops, so plan its path by hand.`,
  ];
}

/** Share of the layers that is not worth a word. */
const FEW_LAYERS = 0.02;

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
