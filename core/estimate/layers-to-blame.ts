import { measuredStanding } from "../shop/directions-up.ts";
import { layerRanges, layersIn, layerWords } from "./layer-numbers.ts";
import { layerStack } from "./layer-stack.ts";
import { timedRuns } from "./pace.ts";
import type { PaceInput } from "./pace.ts";
import type { DepositRefusal } from "./route-attempt.ts";
import type { RouteReason } from "./route.ts";

/**
 * A refusal that says in which layers it is so, where a mesh tells them apart and not all are to blame.
 * Example: "a layer takes 159 s, ...: ... would cure it. It is so in layers 212 to 240 of 300."
 */
export function reasonWithLayers(input: PaceInput, refusal: DepositRefusal): RouteReason {
  const { reason, isToBlame, deposit } = refusal;
  const { standing, bead } = deposit;
  if (!isToBlame || !measuredStanding(input.part, standing.up)) return reason;
  const stack = layerStack(input.part, standing.up, bead.layerHeightMm);
  const ranges = layerRanges(timedRuns(input, deposit, stack), ({ workS }) => isToBlame(workS));
  const count = layersIn(ranges);
  if (count === 0 || count === stack.layers) return reason;
  const words = layerWords(ranges);
  const sentence = `${reason.sentence} It is so in ${words} of ${stack.layers} with ${standing.up} up.`;
  return { ...reason, sentence, values: { ...reason.values, layers: words } };
}
