import { deposit } from "./deposit.ts";
import type { Deposit } from "./deposit.ts";
import { exactStack, layerStack } from "./layer-stack.ts";
import type { ExactCuts } from "./layer-stack.ts";
import { timedRuns } from "./pace.ts";
import type { PaceInput } from "./pace.ts";
import { layerTimeS } from "./print-time.ts";
import type { Route } from "./route.ts";
import { findStandings } from "./standings.ts";

/** One real layer of a build, from the bottom up. */
export interface LayerTime {
  /** 1 is the layer on the platform */
  readonly layer: number;
  /** top of the layer above the platform, mm */
  readonly zMm: number;
  /** deposition and travel in this layer for one copy, s */
  readonly workS: number;
  /** from its start to the start of the next: all copies, the change of layer, and waiting, s */
  readonly layerS: number;
  /** the part of `layerS` that is waiting for the layer below to cool, s */
  readonly waitS: number;
}

/** The layers of one build against the times between which they come out right. */
export interface LayerTimes {
  readonly copies: number;
  readonly layers: readonly LayerTime[];
  /** shortest layer time, s; shorter layers wait */
  readonly shortestLayerS: number;
  /** longest layer time, s; Infinity where no limit applies */
  readonly longestLayerS: number;
}

/** A route and what it was found with. */
interface LayerTimesInput extends PaceInput {
  readonly route: Route;
  /** the part's cuts at the route's layer height, where its mesh is at hand; else those of its measures are used */
  readonly exact?: ExactCuts;
}

/**
 * Every real layer of a build of so many copies: what it takes and how long it waits. By the same formulas as the route, layer
 * by layer instead of by groups, so that the sum is the deposition time within 1 % (without the machine's time factor).
 * Example: a box of 100 layers, 4 solid at either end, work 24.4 s and shortest 30 s: layer 5 waits 5.6 s for 1 copy.
 */
export function layerTimes(input: LayerTimesInput, copies: number): LayerTimes {
  const { part, route, exact } = input;
  const { layerHeightMm, shortestLayerS, longestLayerS } = route;
  const laid = depositOf(input);
  const stack = exact
    ? exactStack(part, exact, route.heightMm)
    : layerStack(part, route.orientation, layerHeightMm);
  const layers: LayerTime[] = [];
  for (const { count, workS } of timedRuns(input, laid, stack)) {
    const layerS = layerTimeS(route, workS, copies);
    const waitS = Math.max(0, layerS - copies * workS - route.layerChangeS);
    for (let n = 0; n < count; n++) {
      const layer = layers.length + 1;
      const zMm = Math.min(layer * layerHeightMm, route.heightMm);
      layers.push({ layer, zMm, workS, layerS, waitS });
    }
  }
  return { copies, layers, shortestLayerS, longestLayerS };
}

function depositOf({ part, machine, route }: LayerTimesInput): Deposit {
  const nozzle = machine.nozzles.find(({ id }) => id === route.nozzleId);
  const standing = findStandings(part, machine).standings.find(({ up }) => up === route.orientation);
  if (!nozzle || !standing) throw new RangeError(`not a route of ${part.id} on ${machine.id}`);
  const { beadWidthMm, layerHeightMm } = route;
  const bead = { beadWidthMm, layerHeightMm };
  return deposit({ part, process: machine.process, nozzle, standing, bead });
}
