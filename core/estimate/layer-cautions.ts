import type { CautionInput } from "./cautions.ts";
import { layersMeant } from "./layers-to-blame.ts";
import { slowestLayerS } from "./print-time.ts";
import { say } from "./say.ts";

/** Layer times past this share of the longest are near the edge of what the temperature model can tell: our own line. */
const NEAR_LIMIT = 0.9;

/**
 * What a person should know of a route's layer times: where one copy alone waits, where even a full build waits longer than
 * the machine bears, and on pellet machines where it comes near the longest. Layers are named by number where a mesh tells
 * them apart. Example: "One copy alone waits in layers 97 to 100: its quickest layer takes 2.1 s, the shortest is 10 s."
 */
export function layerCautions(input: CautionInput): string[] {
  const { route, machine } = input;
  const waits = waitCautions(input);
  const borne = borneCautions(input);
  if (machine.process === "filament") return [...waits, ...borne];
  const slowestS = slowestLayerS({ route, copies: 1 });
  const nearS = NEAR_LIMIT * route.longestLayerS;
  if (slowestS <= nearS) return [...waits, ...borne];
  const where = layersWhere(input, (workS) => workS + route.layerChangeS > nearS);
  const near = `A layer takes ${say(slowestS)} s of the ${say(route.longestLayerS)} s in which it bonds${where}: near the edge of what the temperature model can tell.`;
  return [...waits, ...borne, near];
}

function waitCautions(input: CautionInput): string[] {
  const { layerGroups, layerChangeS, shortestLayerS } = input.route;
  const quickestS = Math.min(...layerGroups.map(({ workS }) => workS)) + layerChangeS;
  if (quickestS >= shortestLayerS) return [];
  const where = layersWhere(input, (workS) => workS + layerChangeS < shortestLayerS);
  return [
    `One copy alone waits${where}: its quickest layer takes ${say(quickestS)} s, the shortest is ${say(shortestLayerS)} s.`,
  ];
}

/** The few quick layers that are no reason to refuse a part, but that somebody should watch. */
function borneCautions(input: CautionInput): string[] {
  const { copiesMin, layerGroups, layerChangeS, shortestLayerS } = input.route;
  const { maxWaitPerLayerS } = input.machine;
  if (maxWaitPerLayerS === undefined) return [];
  const leastS = (shortestLayerS - maxWaitPerLayerS - layerChangeS) / copiesMin - DUST_S;
  if (!layerGroups.some(({ workS }) => workS > 0 && workS < leastS)) return [];
  const where = layersWhere(input, (workS) => workS > 0 && workS < leastS);
  return [
    `Watch it${where}: so few that they are no reason against it, but they wait longer than the ${say(maxWaitPerLayerS)} s that the machine pauses, even with ${copiesMin} in a build.`,
  ];
}

const DUST_S = 1e-9;

/** Example: " in layers 212 to 240"; nothing where layers are not known one by one or all are meant. */
function layersWhere(input: CautionInput, isMeant: (workS: number) => boolean): string {
  const layers = layersMeant(input, input.deposit, isMeant);
  return layers === null ? "" : ` in ${layers}`;
}
