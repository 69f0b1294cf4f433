import { fewestCopies, mostBondingCopies, quickestWorkS } from "./copies.ts";
import type { CopyLimits } from "./copies.ts";
import type { RouteReason } from "./route.ts";
import { say } from "./say.ts";

/** Why layer times do not work out, and by what factor they miss: the smaller, the closer. */
export interface LayerRefusal {
  readonly reason: RouteReason;
  readonly shortBy: number;
  /** says of a layer's work in s whether it is one of those that do not work out; none: no single layer is to blame */
  readonly isToBlame?: (workS: number) => boolean;
}

/**
 * Why no number of copies keeps the layer times within their limits, with what would cure it; null where some number does.
 * Example: a layer of 212 s that must be over in 124 s needs 1.71 times the deposition rate.
 */
export function layerRefusal(limits: CopyLimits): LayerRefusal | null {
  if (limits.shortestLayerS > limits.longestLayerS) return noWindow(limits);
  const most = mostBondingCopies(limits);
  if (most < 1) return tooSlow(limits);
  const fewest = fewestCopies(limits);
  if (fewest <= Math.min(most, limits.platformCopies)) return null;
  return tooFast(limits, fewest, most);
}

function noWindow({ shortestLayerS, longestLayerS }: CopyLimits): LayerRefusal {
  const sentence = `no layer time suits: a layer must cool for ${say(shortestLayerS)} s to carry the next, yet bonds only within ${say(longestLayerS)} s; check bondC, carryC and the feedstock's own layer limits.`;
  const values = { shortestLayerS, longestLayerS };
  return { reason: { code: "layer-too-slow", sentence, values }, shortBy: shortestLayerS / longestLayerS };
}

function tooSlow({ layerGroups, layerChangeS, longestLayerS }: CopyLimits): LayerRefusal {
  const workS = Math.max(...layerGroups.map((group) => group.workS));
  const roomS = longestLayerS - layerChangeS;
  const factor = roomS > 0 ? workS / roomS : Number.POSITIVE_INFINITY;
  const cure =
    roomS > 0
      ? `${say(factor)} times the deposition rate, warmer air around the part or a part split in pieces would cure it`
      : `the change of layer alone takes ${say(layerChangeS)} s`;
  const slowestLayerS = workS + layerChangeS;
  const sentence = `a layer takes ${say(slowestLayerS)} s, the next one bonds only within ${say(longestLayerS)} s: ${cure}.`;
  const values = { slowestLayerS, longestLayerS, rateFactor: factor };
  const isToBlame = (layerWorkS: number): boolean => layerWorkS > roomS;
  return { reason: { code: "layer-too-slow", sentence, values }, shortBy: factor, isToBlame };
}

function tooFast(limits: CopyLimits, fewest: number, most: number): LayerRefusal {
  const { shortestLayerS, longestWaitS, longestLayerS, platformCopies } = limits;
  const layerS = quickestWorkS(limits) + limits.layerChangeS;
  const limit =
    platformCopies <= most
      ? `the platform takes only ${platformCopies}`
      : `with more than ${most} a layer takes longer than the ${say(longestLayerS)} s in which it bonds`;
  const copiesPossible = Math.min(platformCopies, most);
  const sentence = `a layer is over in ${say(layerS)} s, must last ${say(shortestLayerS)} s, and the machine pauses at most ${say(longestWaitS)} s: ${fewest} copies at once would cure it, but ${limit}.`;
  const values = { layerS, shortestLayerS, longestWaitS, copiesNeeded: fewest, copiesPossible };
  const leastS = shortestLayerS - longestWaitS - limits.layerChangeS;
  return {
    reason: { code: "layer-too-fast", sentence, values },
    shortBy: fewest / copiesPossible,
    isToBlame: (workS) => workS > 0 && copiesPossible * workS < leastS,
  };
}
