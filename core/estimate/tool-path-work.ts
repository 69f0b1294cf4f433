import { directionsUp, measuredStanding } from "../shop/directions-up.ts";
import type { Process } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { MeasuredCut, MeasuredStanding } from "../shop/standing.ts";

/** From so many islands in a layer on, the paths of a screw extruder want planning by hand: common practice, no source. */
export const MANY_ISLANDS = 3;

/** What hard paths take over plain ones, and the share of the height up to which they count for nothing: common practice, no source. */
const HARD = 1.5;
const LITTLE = 0.02;

/**
 * How many times the usual hours the tool paths of a part take. A screw cannot stop at once, so on pellet machines a part
 * takes half as long again whose layers, whichever way it stands, have more than 3 islands or walls that meet; all others
 * take the usual hours. Example: a part on four legs by pellets: 1.5, by filament: 1.
 */
export function toolPathFactor(part: Part, process: Process): number {
  if (process === "filament") return 1;
  const { standings, layers } = part.geometry.measures;
  if (!standings) return hasManyIslands(layers ?? []) ? HARD : 1;
  const ways = directionsUp(part).flatMap((up) => measuredStanding(part, up) ?? []);
  return ways.length > 0 && ways.every((way) => isHard(part, way)) ? HARD : 1;
}

/**
 * Says of a cut whether walls meet in it, so that one bead cannot go all along them without crossing itself or stopping: its
 * walls leave no room for infill between them and close around more holes than it has islands.
 * Example: a box of thin walls with a rib across it: 2 holes in 1 island.
 */
export function wallsMeet(part: Part, { areaMm2, perimeterMm, islands, holes }: MeasuredCut): boolean {
  const thin = 2 * areaMm2 < 2 * part.shells * part.smallestFeatureMm * perimeterMm;
  return thin && holes > islands;
}

function isHard(part: Part, { cuts, heightMm }: MeasuredStanding): boolean {
  if (hasManyIslands(cuts)) return true;
  const meetMm = cuts.reduce((sum, cut, at) => {
    return wallsMeet(part, cut) ? sum + cut.zMm - (cuts[at - 1]?.zMm ?? 0) : sum;
  }, 0);
  return meetMm > LITTLE * heightMm;
}

function hasManyIslands(cuts: readonly { readonly islands: number }[]): boolean {
  return cuts.some(({ islands }) => islands > MANY_ISLANDS);
}
