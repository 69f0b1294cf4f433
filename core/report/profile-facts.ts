import { layerRanges, layerWords } from "../estimate/layer-numbers.ts";
import type { LayerTime, LayerTimes } from "../estimate/layer-times.ts";
import { countText, fixedText } from "./display.ts";
import { isTooSlow, isWaiting } from "./profile-bands.ts";

/**
 * A number of seconds for people: three digits that matter, at least. Example: 53.68 gives "53.7 s", 7.128 "7.13 s", 1234 "1 234 s".
 */
export function secondsText(seconds: number): string {
  return `${fixedText(seconds, seconds >= 100 ? 0 : seconds >= 10 ? 1 : 2)} s`;
}

/** The window in words. Example: 54 and 124 give "54.0 s to 124 s". */
export function windowText({ shortestLayerS, longestLayerS }: LayerTimes): string {
  const hasLongest = Number.isFinite(longestLayerS);
  if (shortestLayerS > 0 && hasLongest)
    return `${secondsText(shortestLayerS)} to ${secondsText(longestLayerS)}`;
  if (hasLongest) return `up to ${secondsText(longestLayerS)}`;
  return shortestLayerS > 0 ? `${secondsText(shortestLayerS)} or more` : "no limit";
}

/** What stands out of a build's layers, in sentences: how long they take, waiting, and layers that last too long. */
export function profileFacts(times: LayerTimes): string[] {
  const { layers, longestLayerS } = times;
  const seconds = layers.map(({ layerS }) => layerS);
  const waitS = layers.reduce((sum, layer) => sum + layer.waitS, 0);
  const range = `A layer takes ${secondsText(Math.min(...seconds))} to ${secondsText(Math.max(...seconds))}.`;
  const waiting = which(layers, isWaiting);
  const slow = which(layers, (layer) => isTooSlow(layer.layerS, longestLayerS));
  const facts = [range];
  if (waiting.count > 0) {
    facts.push(
      `${countText(waiting.count, "layer waits", "layers wait")} for the one below to cool (${waiting.words}), together ${fixedText(waitS / 60, 1)} min.`,
    );
  }
  if (slow.count > 0) {
    facts.push(`${countText(slow.count, "layer lasts", "layers last")} too long to bond: ${slow.words}.`);
  }
  return facts;
}

function which(layers: readonly LayerTime[], is: (layer: LayerTime) => boolean) {
  const runs = layers.map((layer) => ({ count: 1, isMeant: is(layer) }));
  const count = runs.filter(({ isMeant }) => isMeant).length;
  return { count, words: layerWords(layerRanges(runs, ({ isMeant }) => isMeant)) };
}
