import { measuredStanding } from "../shop/directions-up.ts";
import type { Deposit } from "./deposit.ts";
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
  const layers = isToBlame ? layersMeant(input, deposit, isToBlame) : null;
  if (layers === null) return reason;
  const sentence = `${reason.sentence} It is so in ${layers} of ${deposit.layerCount} with ${deposit.standing.up} up.`;
  return { ...reason, sentence, values: { ...reason.values, layers } };
}

/**
 * Layers of a deposit that are meant, told by their work in s, in words; null where no mesh tells them apart, and where all or
 * none are meant. Example: "layers 212 to 240".
 */
export function layersMeant(
  input: PaceInput,
  deposit: Deposit,
  isMeant: (workS: number) => boolean,
): string | null {
  const { standing, bead } = deposit;
  if (!measuredStanding(input.part, standing.up)) return null;
  const stack = layerStack(input.part, standing.up, bead.layerHeightMm);
  const ranges = layerRanges(timedRuns(input, deposit, stack), ({ workS }) => isMeant(workS));
  const count = layersIn(ranges);
  return count === 0 || count === stack.layers ? null : layerWords(ranges);
}
