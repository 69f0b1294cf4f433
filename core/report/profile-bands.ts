import type { LayerTime, LayerTimes } from "../estimate/layer-times.ts";
import { type LogScale, logScale } from "./log-scale.ts";

/** Neighbouring layers put together, so that a drawing of a thousand layers stays small. */
export interface ProfileBand {
  readonly fromMm: number;
  readonly toMm: number;
  /** numbers of its first and last layer; 1 is the layer on the platform */
  readonly fromLayer: number;
  readonly toLayer: number;
  readonly quickestS: number;
  readonly slowestS: number;
  /** the quickest of its layers without waiting, s */
  readonly busyS: number;
  readonly waits: boolean;
  readonly tooSlow: boolean;
}

/**
 * Puts the layers of a build together into at most so many bands of equal height, from the bottom up.
 * Example: 100 layers and 20 bands: 5 layers in each.
 */
export function profileBands({ layers, longestLayerS }: LayerTimes, most: number): ProfileBand[] {
  const heightMm = layers.at(-1)?.zMm ?? 0;
  const bandMm = heightMm / Math.max(1, most);
  const bands: LayerTime[][] = [];
  for (const layer of layers) {
    const band = Math.min(most - 1, Math.floor((layer.zMm - DUST_MM) / bandMm));
    (bands[band] ??= []).push(layer);
  }
  let fromMm = 0;
  return Object.values(bands).map((inside) => {
    const band = bandOf(inside, fromMm, longestLayerS);
    fromMm = band.toMm;
    return band;
  });
}

/** A layer that ends where a band ends belongs to it. */
const DUST_MM = 1e-9;

function bandOf(inside: readonly LayerTime[], fromMm: number, longestLayerS: number): ProfileBand {
  const slowestS = Math.max(...inside.map(({ layerS }) => layerS));
  return {
    fromMm,
    toMm: inside.at(-1)?.zMm ?? fromMm,
    fromLayer: inside[0]?.layer ?? 0,
    toLayer: inside.at(-1)?.layer ?? 0,
    quickestS: Math.min(...inside.map(({ layerS }) => layerS)),
    slowestS,
    busyS: Math.min(...inside.map(({ layerS, waitS }) => layerS - waitS)),
    waits: inside.some(isWaiting),
    tooSlow: isTooSlow(slowestS, longestLayerS),
  };
}

/** Says whether a layer waits for the one below, dust of rounding apart. */
export function isWaiting({ waitS }: LayerTime): boolean {
  return waitS > LEAST_WAIT_S;
}

const LEAST_WAIT_S = 0.005;

/** Says whether a layer lasts too long to bond; times a hair over the limit by rounding do not count. */
export function isTooSlow(layerS: number, longestLayerS: number): boolean {
  return layerS > longestLayerS * (1 + ROUNDING);
}

const ROUNDING = 1e-9;

/** A scale of time that holds the bands and the ends of the window. An empty layer takes no time and is shown at 0.1 s. */
export function profileScale(times: LayerTimes, bands: readonly ProfileBand[]): LogScale {
  const limits = [times.shortestLayerS, times.longestLayerS].filter(
    (limit) => limit > 0 && Number.isFinite(limit),
  );
  const shown = bands.flatMap(({ busyS, slowestS }) => [busyS, slowestS]);
  return logScale([...shown.map((seconds) => Math.max(seconds, SHORTEST_S)), ...limits]);
}

const SHORTEST_S = 0.1;
